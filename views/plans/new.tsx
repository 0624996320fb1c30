/** The form of a batch: how many envelopes from which paper, parts beside them, and what is to stay on the shelf. */
import type { FC } from 'hono/jsx';
import type { PaperGone } from '#core/batch/again-from.ts';
import type { Plan } from '#core/batch/planned.ts';
import type { Suggestion } from '#core/batch/suggest.ts';
import type { Project } from '#core/project/journal.ts';
import type { Piece } from '#core/stash/stash.ts';
import type { Units } from '#shared/length.ts';
import { partsIn } from '#shared/schemas/plan.ts';
import { type Entry, Field, FormProblems } from '../common/field.tsx';
import { Once } from '../common/once.tsx';
import { When } from '../common/when.tsx';
import { LessonsHere, type LessonsShown } from '../lessons/shown.tsx';
import { KeepChoice } from './keep.tsx';
import { PaperChoice, type PapersOffered } from './paper-choice.tsx';
import { PapersGone } from './papers-gone.tsx';
import { PartRow, partFields } from './part-row.tsx';

export interface NewPlanView extends PapersOffered {
  readonly project: Project;
  readonly missing: number;
  readonly others: readonly { readonly project: Project; readonly missing: number }[];
  /** A plan that waits to be cut. */
  readonly last: Plan | undefined;
  /** Paper of the project it was made again from that is used up. */
  readonly gone: readonly PaperGone[];
  /** What stays on the shelf, and what is likely to be cut first. */
  readonly kept: readonly Piece[];
  readonly likely: readonly Piece[];
  readonly suggestions: readonly Suggestion[];
  readonly lessons: LessonsShown;
  readonly entry: Entry;
  readonly units: Units;
  readonly token: string;
}

export const NewPlanPage: FC<NewPlanView> = (view) => {
  const { project, last, entry, token } = view;
  const rows = partsIn(entry.typed);
  return (
    <article class="batch">
      <p>
        <a href={`/projects/${project.id}`}>{project.title}</a>
      </p>
      <h1>What shall be cut together?</h1>
      {last ? (
        <p class="lead">
          There is{' '}
          <a href={`/plans/${last.id}`}>
            a plan from <When at={last.askedAt} />
          </a>{' '}
          that is not cut yet.
        </p>
      ) : null}
      <LessonsHere {...view.lessons} />
      <PapersGone gone={view.gone} />
      <form method="post" action={`/projects/${project.id}/plans`}>
        <Once token={token} />
        <button type="submit" name="do" value="plan" class="hidden" tabindex={-1}>
          Plan it
        </button>
        <FormProblems
          entry={entry}
          fields={['blanks', 'paper', 'paperNamed', 'keepNamed', ...rows.flatMap(partFields)]}
        />
        <Envelopes {...view} />
        <section>
          <h2>Beside the envelopes</h2>
          {rows.map((number) => (
            <PartRow {...view} number={number} />
          ))}
          <Add {...view} />
        </section>
        {rows.length > 0 || project.recipe ? <Matching entry={entry} /> : null}
        <KeepChoice {...view} />
        <p class="row press">
          <button type="submit" name="do" value="plan" class="large">
            Plan the cuts
          </button>
          <a href={`/projects/${project.id}`}>Not now</a>
        </p>
      </form>
    </article>
  );
};

const Envelopes: FC<NewPlanView> = ({ project, missing, others, entry, ...view }) =>
  project.recipe ? (
    <fieldset>
      <legend>Envelopes</legend>
      <div class="fields">
        <Field
          name="blanks"
          label="How many"
          kind="count"
          entry={entry}
          value={`${missing}`}
          hint={sayMissing(missing)}
        />
        <PaperChoice name="paper" label="From which paper" entry={entry} {...view} />
      </div>
      {others.length > 0 ? (
        <div class="others">
          <p class="label">Together with others of {project.series?.name ?? 'the series'}</p>
          {others.map((other) => (
            <label>
              <input
                type="checkbox"
                name={`with.${other.project.id}`}
                checked={entry.typed[`with.${other.project.id}`] === 'on'}
              />
              {other.project.title} ({other.missing} missing)
            </label>
          ))}
        </div>
      ) : null}
    </fieldset>
  ) : (
    <p>
      This project has no envelope yet, so only parts are cut.{' '}
      <a href={`/envelopes?project=${project.id}`}>Choose its envelope</a> first if it is to have one.
    </p>
  );

const Add: FC<NewPlanView> = ({ suggestions }) => (
  <div class="row add">
    {suggestions.map((one) => (
      <button type="submit" name="do" value={`add-${one}`} class="plain small">
        {SUGGESTED[one]}
      </button>
    ))}
    <button type="submit" name="do" value="add" class="plain small">
      Something else
    </button>
  </div>
);

const SUGGESTED: Record<Suggestion, string> = {
  base: '+ Card base',
  front: '+ Front panel',
  mat: '+ Mat and front',
  inside: '+ Inside panel',
  liner: '+ Envelope liner',
};

const Matching: FC<{ entry: Entry }> = ({ entry }) => (
  <fieldset>
    <legend>Designs</legend>
    <div class="choices">
      {MATCHES.map(([value, words]) => (
        <label>
          <input
            type="radio"
            name="match"
            value={value}
            checked={(entry.typed.match ?? 'each set') === value}
          />
          {words}
        </label>
      ))}
    </div>
  </fieldset>
);

const MATCHES = [
  ['each set', 'each set may have its own design'],
  ['all alike', 'everything that matches from one design'],
] as const;

function sayMissing(missing: number): string {
  if (missing === 0) return 'none is missing; type how many more';
  return missing === 1 ? 'one is still missing' : `${missing} are still missing`;
}
