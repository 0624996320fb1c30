/** The journal: everything made or thought of, as pictures with their lessons; and the line for a new idea. */
import type { FC } from 'hono/jsx';
import { PROJECT_STATES, type Project, type Series } from '#core/project/journal.ts';
import type { WorkingMeasures } from '#core/project/working-measures.ts';
import type { Design } from '#core/stash/stash.ts';
import type { Units } from '#shared/length.ts';
import type { JournalQuery } from '#shared/schemas/project.ts';
import type { Tag, TagUsed } from '#shared/tags.ts';
import { type Entry, Field, FormProblems } from '../common/field.tsx';
import { Once } from '../common/once.tsx';
import { EntryTile } from './entry-tile.tsx';
import { SAY_STATE } from './words.ts';

export interface JournalEntry {
  readonly project: Project;
  /** Undefined until its envelope is worked out. */
  readonly working: WorkingMeasures | undefined;
  /** The paper of its first envelope. */
  readonly design: Design | undefined;
  readonly tags: readonly Tag[];
}

export interface JournalView {
  readonly entries: readonly JournalEntry[];
  /** Whether there are more than are shown. */
  readonly more: boolean;
  readonly query: JournalQuery;
  readonly series: readonly Series[];
  /** Those used most. */
  readonly tags: readonly TagUsed[];
  /** Sets finished, and cards begun that wait for an envelope. */
  readonly sets: { readonly finished: number; readonly waiting: number };
}

interface Forms {
  readonly token: string;
  readonly entry: Entry;
}

interface Page {
  readonly view: JournalView;
  readonly units: Units;
  readonly forms: Forms;
}

export const Journal: FC<Page> = ({ view, units, forms }) => (
  <div class="journal-page">
    <div class="spread">
      <h1>Journal</h1>
      <IdeaForm {...forms} />
    </div>
    <Sets {...view.sets} />
    <Filter {...view} />
    <p class="quiet no-print">
      <a href="/series">Series</a> · <a href="/tags">Tags</a> · <a href="/put-away">Put away</a> ·{' '}
      <a href="/kept/new">Keep the measures of one made before</a>
    </p>
    <SeriesLine series={view.series.find(({ id }) => id === view.query.series)} />
    <Entries {...view} units={units} />
  </div>
);

/** The part that changes as she types. */
export const Entries: FC<Pick<JournalView, 'entries' | 'more' | 'query'> & { units: Units }> = ({
  entries,
  more,
  query,
  units,
}) => (
  <div id="entries">
    {entries.length === 0 ? <Nothing query={query} /> : null}
    <ul class="entries">
      {entries.map((entry) => (
        <EntryTile {...entry} units={units} />
      ))}
    </ul>
    {more ? (
      <p>
        <a class="button plain" href={`/projects?${moreQuery(query, entries.length)}`}>
          Show more
        </a>
      </p>
    ) : null}
  </div>
);

const IdeaForm: FC<Forms> = ({ token, entry }) => (
  <form method="post" action="/projects" class="row idea">
    <Once token={token} />
    <FormProblems entry={entry} fields={['title']} />
    <Field name="title" label="A new idea" entry={entry} />
    <button type="submit">Write it down</button>
  </form>
);

const Sets: FC<JournalView['sets']> = ({ finished, waiting }) =>
  finished + waiting === 0 ? null : (
    <p class="quiet">
      {finished === 1 ? 'One set is finished' : `${finished} sets are finished`}
      {sayWaiting(waiting)}
    </p>
  );

function sayWaiting(waiting: number): string {
  if (waiting === 0) return '.';
  return waiting === 1
    ? ', one card waits for its envelope.'
    : `, ${waiting} cards wait for their envelopes.`;
}

/** Its overview stands on a page of its own. */
const SeriesLine: FC<{ series: Series | undefined }> = ({ series }) =>
  series ? (
    <p>
      <a href={`/series/${series.id}`}>{series.name} at a glance</a>
    </p>
  ) : null;

const Filter: FC<JournalView> = ({ query, series, tags }) => (
  <form
    method="get"
    action="/projects"
    class="row filter"
    hx-get="/projects"
    hx-target="#entries"
    hx-push-url="true"
    hx-trigger="input changed delay:250ms from:#q, change, submit"
  >
    <label class="wide">
      Words
      <input id="q" name="q" type="search" value={query.q} autocomplete="off" />
    </label>
    <label>
      State
      <select name="state">
        <option value="">any</option>
        {PROJECT_STATES.map((state) => (
          <option value={state} selected={state === query.state}>
            {SAY_STATE[state]}
          </option>
        ))}
      </select>
    </label>
    {series.length > 0 ? (
      <label>
        Series
        <select name="series">
          <option value="">all</option>
          {series.map(({ id, name }) => (
            <option value={id} selected={id === query.series}>
              {name}
            </option>
          ))}
        </select>
      </label>
    ) : null}
    <TagFilter tags={tags} chosen={query.tag} />
    <button type="submit" class="plain small">
      Find
    </button>
  </form>
);

const TagFilter: FC<{ tags: readonly TagUsed[]; chosen: string | undefined }> = ({ tags, chosen }) => {
  const names = tags.map(({ name }) => name);
  const offered = chosen && !names.includes(chosen) ? [chosen, ...names] : names;
  return offered.length === 0 ? null : (
    <label>
      Tag
      <select name="tag">
        <option value="">any</option>
        {offered.map((name) => (
          <option value={name} selected={name === chosen}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
};

const Nothing: FC<{ query: JournalQuery }> = ({ query }) =>
  query.q !== '' || query.state || query.series || query.tag ? (
    <p class="lead">
      Nothing like that is written down. <a href="/projects">Show everything</a>
    </p>
  ) : (
    <p class="lead">
      Nothing is written down yet. Note an idea above, or <a href="/envelopes">start from a card</a>: what you
      take from the shelf for it opens a project here.
    </p>
  );

const moreQuery = ({ q, state, series, tag }: JournalQuery, shown: number): string =>
  new URLSearchParams({
    ...(q !== '' && { q }),
    ...(state && { state }),
    ...(series && { series: `${series}` }),
    ...(tag && { tag }),
    more: `${shown}`,
  }).toString();
