/** The cut sheet: on screen one step at a time, on paper all of it; what to fetch, the patterns, and writing it down. */
import type { Child, FC } from 'hono/jsx';
import { Field } from '../common/field.tsx';
import { Once } from '../common/once.tsx';
import { SAY_CAUTION } from '../making/say.ts';
import { Checks, Strips } from './first.tsx';
import { SheetNow, type SheetView } from './now.tsx';
import { Pieces } from './pieces.tsx';
import { Result } from './result.tsx';
import { Steps } from './steps.tsx';
import { Take } from './take.tsx';
import type { PlanView } from './view.ts';
import { sayPaper } from './words.ts';

export const SheetPage: FC<SheetView> = (view) => {
  const { plan, project, at } = view;
  const { steps } = plan.plan;
  return (
    <article class="cut-sheet">
      <p class="no-print">
        <a href={`/projects/${project.id}`}>{project.title}</a> · <a href={`/plans/${plan.id}`}>the plan</a>
      </p>
      <h1>{plan.trial ? 'Cut the trial piece' : 'Cut sheet'}</h1>
      <SheetUnderWay {...view} />
      <Folded title={`Fetch ${sayPaper(plan, view)}`} open={plan.ticks.length === 0 && at === 0}>
        <p class="lead on-paper">
          Take {sayPaper(plan, view)} · {project.title}
        </p>
        <Take {...view} />
      </Folded>
      <div class="on-paper">
        <Checks {...view} />
      </div>
      <Folded title="The patterns, and what comes of it">
        <Pieces {...view} width={250} height={240} settings />
        <Result {...view} />
      </Folded>
      {steps.length === 0 ? null : <AllSteps {...view} />}
    </article>
  );
};

/** The part of the page that steps change; at its end the cut is written down. */
export const SheetUnderWay: FC<SheetView> = (view) => (
  <SheetNow {...view}>
    <Written {...view} />
  </SheetNow>
);

/** Folded on screen, where one step stands before all; on paper always there. */
const Folded: FC<{ title: string; open?: boolean; children?: Child }> = ({
  title,
  open = false,
  children,
}) => (
  <details class="whole-on-paper" open={open}>
    <summary>{title}</summary>
    {children}
  </details>
);

const AllSteps: FC<PlanView> = (view) => (
  <>
    <details class="no-print">
      <summary>How to lay it</summary>
      <HowTo />
    </details>
    <div class="on-paper">
      <p class="caution">
        {SAY_CAUTION.blade} Measure the first piece of each setting before cutting the rest.
      </p>
      <HowTo />
      <Strips {...view} />
      <Steps {...view} />
    </div>
  </>
);

const HowTo: FC = () => (
  <p class="how-to">
    What you keep lies against the fence, and what falls off is the rest, whatever it measures. Lay the last
    of a size to the fence too: a sheet is never quite what its label says, and the knife takes what is over.
    Sheets cut alike go one after another at one setting, or as many at once as your trimmer cuts cleanly.
  </p>
);

const Written: FC<SheetView> = (view) =>
  view.plan.cut ? <p class="done">This is cut and written down.</p> : <WriteDown {...view} />;

const WriteDown: FC<PlanView & { places: readonly string[] }> = ({ plan, entry, token, places }) => {
  const fromSheets = plan.plan.used.some(
    (one) => one.leftovers.length > 0 && plan.pieces.find(({ id }) => id === one.piece)?.kind === 'sheet',
  );
  return (
    <form method="post" action={`/plans/${plan.id}/cuts`} class="write-down">
      <Once token={token} />
      {fromSheets ? (
        <>
          <Field
            name="place"
            label="Where do the new offcuts go?"
            entry={entry}
            optional
            list="places"
            hint="those of older offcuts go back where they came from"
          />
          <datalist id="places">
            {places.map((place) => (
              <option value={place} />
            ))}
          </datalist>
        </>
      ) : null}
      <button type="submit" class="large">
        It’s cut: write it down
      </button>
    </form>
  );
};
