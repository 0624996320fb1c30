/** Making one envelope: a single enormous instruction beside the sheet as it lies, with Back and Next as links. */
import type { FC } from 'hono/jsx';
import type { Drawing } from '#core/drawing/drawing.ts';
import { makingDrawing } from '#core/drawing/making.ts';
import type { PaperLaid } from '#core/drawing/print-laid.ts';
import { openBackOf } from '#core/envelope/finish.ts';
import type { FlatLayout, Step } from '#core/envelope/fold.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import { describeWarning } from '#core/envelope/warnings.ts';
import type { Envelope, Project } from '#core/project/journal.ts';
import type { Units } from '#shared/length.ts';
import { Picture } from '../diagrams/picture.tsx';
import { LessonsHere, type LessonsShown } from '../lessons/shown.tsx';
import { SAY_CAUTION, sayStep } from './say.ts';

export interface MakingView {
  readonly project: Project;
  readonly envelope: Envelope;
  readonly recipe: Recipe;
  /** One for each of the fold’s blanks. */
  readonly layouts: readonly FlatLayout[];
  readonly steps: readonly Step[];
  /** The print of the blank, where it is known. */
  readonly paper: PaperLaid | undefined;
  readonly units: Units;
}

export const MakingStep: FC<MakingView & { at: number; lessons: LessonsShown | undefined }> = (view) => {
  const { steps, at, recipe, units, lessons } = view;
  const step = steps[at]!;
  const { what, how } = sayStep(step, recipe, units);
  return (
    <article id="making" class="making">
      <MakingHeading {...view} />
      <div class="making-body">
        <div class="making-words">
          <p class="quiet">
            Step {at + 1} of {steps.length}
            {' · '}
            <a href={stepAddress(view, steps.length + 1)}>to the end</a>
          </p>
          <h1 class="instruction">{what}</h1>
          <p class="how">{how}</p>
        </div>
        {step.kind === 'trim' ? <OpenBack recipe={recipe} units={units} /> : null}
        {step.caution ? <p class="caution">{SAY_CAUTION[step.caution]}</p> : null}
        {lessons ? <LessonsHere {...lessons} /> : null}
        <div class="making-picture">
          <Picture drawing={sheetAt(view, step)} id="making-sheet" grows />
        </div>
      </div>
      <StepLinks {...view} at={at} />
    </article>
  );
};

/** Told at the blade, while the flap can still be left longer. */
const OpenBack: FC<Pick<MakingView, 'recipe' | 'units'>> = ({ recipe, units }) => {
  const open = openBackOf(recipe);
  return open ? <p class="caution">{describeWarning(open, units)}</p> : null;
};

/** The blank that the step is done on, as the steps on that blank have left it. */
function sheetAt({ recipe, layouts, steps, paper, units }: MakingView, step: Step): Drawing {
  const sheet = step.sheet ?? 0;
  const here = steps.filter((one) => (one.sheet ?? 0) === sheet);
  const at = here.indexOf(step);
  const drawing = makingDrawing(recipe, layouts[sheet]!, { steps: here, at, paper }, units);
  return { ...drawing, title: `Step ${steps.indexOf(step) + 1} of ${steps.length}` };
}

export const MakingHeading: FC<Pick<MakingView, 'project' | 'envelope'>> = ({ project, envelope }) => (
  <p class="spread making-heading">
    <span>
      <a href={`/projects/${project.id}`}>{project.title}</a>
      {' · '}
      {envelope.trial && envelope.cut === null ? 'trial piece from scrap' : `envelope ${envelope.number}`}
    </span>
    <a href={`/projects/${project.id}/spoiled?envelope=${envelope.number}`} class="quiet">
      It’s spoiled
    </a>
  </p>
);

/** The last step leads on to trying the card. */
const StepLinks: FC<MakingView & { at: number }> = ({ at, ...view }) => (
  <nav class="step-links" aria-label="Steps">
    {at > 0 ? (
      <StepLink {...view} to={at} rel="prev">
        Back
      </StepLink>
    ) : (
      <span />
    )}
    <StepLink {...view} to={at + 2} rel="next">
      Next
    </StepLink>
  </nav>
);

/** `to` counts from one, as readers do. */
export const StepLink: FC<
  Pick<MakingView, 'project' | 'envelope'> & { to: number; rel: 'prev' | 'next'; children?: unknown }
> = ({ project, envelope, to, rel, children }) => {
  const href = stepAddress({ project, envelope }, to);
  return (
    <a
      class={rel === 'next' ? 'button' : 'button plain'}
      href={href}
      rel={rel}
      data-keys={rel === 'next' ? 'ArrowRight Space' : 'ArrowLeft'}
      hx-get={href}
      hx-target="#making"
      hx-swap="outerHTML show:top"
      hx-push-url="true"
      autofocus={rel === 'next' ? true : undefined}
    >
      {children as string}
    </a>
  );
};

const stepAddress = ({ project, envelope }: Pick<MakingView, 'project' | 'envelope'>, to: number): string =>
  `/projects/${project.id}/make?envelope=${envelope.number}&step=${to}`;
