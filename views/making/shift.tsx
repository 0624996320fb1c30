/** A trial that was tight or wouldn't go: what another start would do on the same square. */
import type { FC } from 'hono/jsx';
import type { Recipe } from '#core/envelope/recipe.ts';
import type { Project } from '#core/project/journal.ts';
import { printExact, printLength, subtract, typedLength, type Units } from '#shared/length.ts';
import { printPocket, printPocketSide } from '#shared/pocket.ts';
import { type Entry, Field, FormProblems } from '../common/field.tsx';

export interface ShiftView {
  readonly project: Project;
  readonly recipe: Recipe;
  /** One graduation less and one more, as far as they leave a pocket. */
  readonly others: readonly Recipe[];
  readonly units: Units;
  readonly entry: Entry;
}

export const Shift: FC<ShiftView> = ({ project, recipe, others, units, entry }) => (
  <article class="making">
    <p class="making-heading">
      <a href={`/projects/${project.id}`}>{project.title}</a>
    </p>
    {others.length > 0 ? (
      <>
        <h1 class="instruction">Which way is it tight?</h1>
        <p class="how">
          Another start gives room one way and takes as much the other. The square stays, so blanks already
          cut are good.
        </p>
      </>
    ) : (
      <h1 class="instruction">It needs more paper.</h1>
    )}
    <ul class="shifts">
      {others.map((other) => (
        <Option project={project} from={recipe} to={other} units={units} />
      ))}
      <li class="sheet">
        <h2>{others.length > 0 ? 'Both ways' : 'Whichever way it is tight'}</h2>
        <p>{others.length > 0 ? 'No start helps then: it' : 'It'} takes a larger blank, or a thinner card.</p>
        <a class="button plain" href={`/envelopes?project=${project.id}`}>
          Look for a larger one
        </a>
      </li>
    </ul>
    <p>
      <a href={`/projects/${project.id}`}>Leave it as it is and go on</a>
    </p>
    {others.length > 0 ? <OwnStart project={project} entry={entry} /> : null}
  </article>
);

const OwnStart: FC<Pick<ShiftView, 'project' | 'entry'>> = ({ project, entry }) => (
  <details open={entry.problems.length > 0}>
    <summary>Another start</summary>
    <form method="post" action={`/projects/${project.id}/start`} class="fields">
      <input type="hidden" name="_method" value="PUT" />
      <FormProblems entry={entry} fields={['start']} />
      <Field name="start" label="Start for the rest" kind="length" entry={entry} />
      <div class="field">
        <span class="label">&nbsp;</span>
        <button type="submit" class="plain">
          Use it
        </button>
      </div>
    </form>
  </details>
);

/** The start is what the pocket's height comes from: more of it is a taller, narrower pocket. */
const Option: FC<{ project: Project; from: Recipe; to: Recipe; units: Units }> = ({
  project,
  from,
  to,
  units,
}) => {
  const [grows, shrinks] =
    to.starts[0] > from.starts[0] ? (['height', 'width'] as const) : (['width', 'height'] as const);
  return (
    <li class="sheet">
      <h2>
        Along its {grows}, {printPocketSide(from.pocket[grows], units)}
      </h2>
      <p>
        Start {printExact(to.starts[0], units)} makes the pocket {printPocket(to.pocket, units)}:{' '}
        {printLength(subtract(to.pocket[grows], from.pocket[grows]), units)} more along the {grows}, as much
        less along the {shrinks}.
      </p>
      <form method="post" action={`/projects/${project.id}/start`}>
        <input type="hidden" name="_method" value="PUT" />
        <input type="hidden" name="start" value={typedLength(to.starts[0], units)} />
        <button type="submit">Use {printExact(to.starts[0], units)} for the rest</button>
      </form>
    </li>
  );
};
