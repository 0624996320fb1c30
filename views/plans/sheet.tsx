/** The cut sheet: steps to tick beside the drawings, what comes of it, and the button that writes it down. */
import type { FC } from 'hono/jsx';
import { Field } from '../common/field.tsx';
import { Once } from '../common/once.tsx';
import { SAY_CAUTION } from '../making/say.ts';
import { Checks, Strips } from './first.tsx';
import { Pieces } from './pieces.tsx';
import { Result } from './result.tsx';
import { Steps } from './steps.tsx';
import { Take } from './take.tsx';
import type { PlanView } from './view.ts';
import { sayPaper } from './words.ts';

export const SheetPage: FC<PlanView & { places: readonly string[] }> = ({ places, ...view }) => {
  const { plan, project } = view;
  return (
    <article class="cut-sheet">
      <p class="no-print">
        <a href={`/projects/${project.id}`}>{project.title}</a> · <a href={`/plans/${plan.id}`}>the plan</a>
      </p>
      <h1>{plan.trial ? 'Cut the trial piece' : 'Cut sheet'}</h1>
      <p class="lead">
        Take {sayPaper(plan, view)} <span class="print-only">· {project.title}</span>
      </p>
      <Take {...view} />
      <Checks {...view} />
      <div class="sheet-body">
        <section>
          <Pieces {...view} width={250} height={240} settings />
        </section>
        <Result {...view} />
        <section class="sheet-steps">
          {plan.plan.steps.length === 0 ? (
            <>
              <Strips {...view} />
              <p>Nothing is cut: every part is a whole piece.</p>
            </>
          ) : (
            <>
              <p class="caution">
                {SAY_CAUTION.blade} Measure the first piece of each setting before cutting the rest.
              </p>
              <p class="how-to">
                What you keep lies against the fence, and what falls off is the rest, whatever it measures.
                Lay the last of a size to the fence too: a sheet is never quite what its label says, and the
                knife takes what is over. Sheets cut alike go one after another at one setting, or as many at
                once as your trimmer cuts cleanly.
              </p>
              <Strips {...view} />
              <Steps {...view} />
            </>
          )}
        </section>
      </div>
      {plan.cut ? <p class="done">This is cut and written down.</p> : <WriteDown {...view} places={places} />}
    </article>
  );
};

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
