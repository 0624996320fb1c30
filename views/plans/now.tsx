/**
 * The cut sheet at the trimmer: one step of one setting, large, with what lies at the fence; Back, Next and a tick; and
 * the list of settings to see how far it has come. What is done shrinks to a line. Swapped by itself where scripts run.
 */
import type { Child, FC } from 'hono/jsx';
import type { Step } from '#core/cutting/cuts.ts';
import { settingsOfSteps } from '#core/cutting/steps.ts';
import { SAY_CAUTION } from '../making/say.ts';
import { Checks, Strips } from './first.tsx';
import { alike, LaidPictures, LaidWords } from './laid.tsx';
import { sayCuts } from './steps.tsx';
import type { PlanView } from './view.ts';
import { sayTrue } from './words.ts';

/** `at` counts from nought; as many as there are steps is the end. */
export type SheetView = PlanView & { readonly at: number; readonly places: readonly string[] };

export const SheetNow: FC<SheetView & { children?: Child }> = ({ children, ...view }) => {
  const step = view.plan.plan.steps[view.at];
  return (
    <div id="sheet-now" class="sheet-now no-print">
      <section aria-labelledby="now-title">
        {step ? <Current {...view} step={step} /> : <Done {...view}>{children}</Done>}
      </section>
      <SheetList {...view} />
    </div>
  );
};

const Current: FC<SheetView & { step: Step }> = ({ step, ...view }) => {
  const { plan, at, units } = view;
  const groups = alike(step, view);
  return (
    <>
      <p class="now-where">
        {sayWhere(view)}
        {isTicked(view, at) ? ' · cut' : ''}
        {' · '}
        <a href={stepAddress(plan.id, plan.plan.steps.length)}>to the end</a>
      </p>
      {at === 0 ? <First {...view} /> : null}
      <h2 id="now-title" class="now-set">
        Set <strong>{sayTrue(step.set, units)}</strong> <small>{sayCuts([step])}</small>
      </h2>
      <LaidPictures {...view} step={step} groups={groups} />
      <ul class="now-words">
        {groups.map((group) => (
          <li>
            <LaidWords {...view} group={group} />
          </li>
        ))}
      </ul>
      <p class="quiet">{SAY_CAUTION.blade} Measure the first before cutting the rest.</p>
      <nav class="step-links now-links" aria-label="Steps">
        <StepLink {...view} to={at - 1}>
          Back
        </StepLink>
        {plan.cut || isTicked(view, at) ? (
          <StepLink {...view} to={at + 1}>
            Next
          </StepLink>
        ) : (
          <>
            <StepLink {...view} to={at + 1} plain>
              Next
            </StepLink>
            <Tick {...view} step={step} />
          </>
        )}
      </nav>
      {!plan.cut && isTicked(view, at) ? <Tick {...view} step={step} /> : null}
    </>
  );
};

/** Before the first cut. */
const First: FC<PlanView> = (view) => (
  <>
    <Checks {...view} />
    <Strips {...view} />
  </>
);

/** `Step 4 of 20` */
export const sayWhere = ({ plan, at }: Pick<SheetView, 'plan' | 'at'>): string =>
  at < plan.plan.steps.length ? `Step ${at + 1} of ${plan.plan.steps.length}` : 'All cut';

const isTicked = ({ plan }: Pick<SheetView, 'plan'>, at: number): boolean =>
  plan.ticks.includes(plan.plan.steps[at]!.number);

/** Ticking goes on to the next that is not cut; taking a tick back stays. */
const Tick: FC<SheetView & { step: Step }> = ({ step, ...view }) => {
  const { plan, at } = view;
  const action = `/plans/${plan.id}/ticks`;
  const done = isTicked(view, at);
  return (
    <form method="post" action={action} hx-post={action} {...SWAPPED}>
      <input type="hidden" name="step" value={`${step.number}`} />
      {done ? <input type="hidden" name="_method" value="DELETE" /> : null}
      {done ? (
        <button type="submit" class="plain small">
          Not cut after all
        </button>
      ) : (
        <button type="submit" data-keys="Space" aria-describedby="now-title" autofocus>
          Cut, go on
        </button>
      )}
    </form>
  );
};

const SWAPPED = {
  'hx-target': '#sheet-now',
  'hx-swap': 'outerHTML show:#sheet-now:top',
  'hx-push-url': 'true',
} as const;

const StepLink: FC<SheetView & { to: number; plain?: boolean; children?: unknown }> = ({
  plan,
  at,
  to,
  plain = to < at,
  children,
}) => {
  if (to < 0) return <span />;
  const href = stepAddress(plan.id, to);
  const on = to > at;
  return (
    <a
      class={plain ? 'button plain' : 'button'}
      href={href}
      rel={on ? 'next' : 'prev'}
      data-keys={on ? `ArrowRight${plain ? '' : ' Space'}` : 'ArrowLeft'}
      autofocus={plain ? undefined : true}
      hx-get={href}
      {...SWAPPED}
    >
      {children as string}
    </a>
  );
};

/** Readers count from one. */
const stepAddress = (plan: number, at: number): string => `/plans/${plan}/sheet?step=${at + 1}`;

const Done: FC<SheetView & { children?: Child }> = ({ children, ...view }) => {
  const { plan, at } = view;
  const left = plan.plan.steps.filter(({ number }) => !plan.ticks.includes(number)).length;
  return (
    <>
      <h2 id="now-title" class="now-set">
        {plan.plan.steps.length === 0
          ? 'Nothing is cut: every part is a whole piece.'
          : 'That was the last cut.'}
      </h2>
      {plan.plan.steps.length === 0 ? <First {...view} /> : null}
      {left > 0 && !plan.cut ? <p>{left === 1 ? 'One step is' : `${left} steps are`} not ticked.</p> : null}
      {children}
      <nav class="step-links" aria-label="Steps">
        <StepLink {...view} to={at - 1}>
          Back
        </StepLink>
      </nav>
    </>
  );
};

/** Each setting a line and a way to its first step; what is done is one line together. */
const SheetList: FC<SheetView> = (view) => {
  const { plan, at, units } = view;
  const { steps } = plan.plan;
  const settings = settingsOfSteps(steps);
  const isDone = (setting: readonly Step[]): boolean =>
    setting.every(({ number }) => plan.ticks.includes(number)) && !setting.includes(steps[at]!);
  const done = settings.filter(isDone);
  const line = (setting: readonly Step[]) => (
    <li>
      <a
        href={stepAddress(plan.id, steps.indexOf(setting[0]!))}
        aria-current={setting.includes(steps[at]!) ? 'step' : undefined}
      >
        <b>{sayTrue(setting[0]!.set, units)}</b> <span>{sayCuts(setting)}</span>
      </a>
    </li>
  );
  return steps.length === 0 ? null : (
    <section class="sheet-list" aria-labelledby="list-title">
      <h2 id="list-title">Settings</h2>
      {done.length === 0 ? null : (
        <details>
          <summary>{done.length === 1 ? 'One is done' : `${done.length} are done`}</summary>
          <ol>{done.map(line)}</ol>
        </details>
      )}
      <ol>{settings.filter((setting) => !isDone(setting)).map(line)}</ol>
    </section>
  );
};
