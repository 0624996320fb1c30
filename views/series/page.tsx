/** A series at a glance: its note, then its projects in the order in which they were begun; the form to change it. */

import type { FC } from 'hono/jsx';
import type { SeriesTold } from '#core/project/journal.ts';
import type { Units } from '#shared/length.ts';
import type { Standing } from '#shared/put-away.ts';
import { InPlace } from '#views/common/in-place.tsx';
import { AwayNote, PutAway } from '../common/away.tsx';
import { type Entry, Field, FormProblems, TextArea } from '../common/field.tsx';
import { Pages, type PagesProps } from '../common/pages.tsx';
import { sayTold } from './list.tsx';
import { type SeriesProject, SeriesRow } from './project.tsx';

interface Props {
  readonly series: SeriesTold;
  readonly standing: Standing | undefined;
  readonly projects: readonly SeriesProject[];
  readonly pages: PagesProps;
  readonly entry: Entry;
  readonly units: Units;
}

export const SeriesPage: FC<Props> = ({ series, standing, projects, pages, entry, units }) => (
  <article>
    <p class="no-print">
      <a href="/series">Series</a>
    </p>
    <InPlace kind="series-name" id={series.id} text={series.name} />
    <AwayNote standing={standing} />
    <p class="quiet">{sayTold(series)}</p>
    {series.note ? <p class="notes lead">{series.note}</p> : null}
    {projects.length === 0 ? <p>No project is in it.</p> : null}
    <ol class="series-projects" start={pages.from + 1}>
      {projects.map((one) => (
        <SeriesRow {...one} units={units} />
      ))}
    </ol>
    <Pages {...pages} />
    <details class="no-print" open={entry.problems.length > 0}>
      <summary>Change the name and note of this series</summary>
      <form method="post" action={`/series/${series.id}`}>
        <input type="hidden" name="_method" value="PUT" />
        <FormProblems entry={entry} fields={['name', 'note']} />
        <Field name="name" label="Name" entry={entry} value={series.name} />
        <TextArea name="note" label="Note" entry={entry} value={series.note} />
        <button type="submit">Save</button>
      </form>
    </details>
    <PutAway standing={standing} />
  </article>
);
