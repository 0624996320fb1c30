/** What is noted about a series, above its projects, with the form to change it. */
import type { FC } from 'hono/jsx';
import type { Series } from '#core/project/journal.ts';
import { type Entry, Field, FormProblems, TextArea } from '../common/field.tsx';

export const SeriesNote: FC<{ series: Series | undefined; entry: Entry }> = ({ series, entry }) =>
  series ? (
    <section class="series-note">
      <h2>{series.name}</h2>
      {series.note ? <p class="notes">{series.note}</p> : null}
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
    </section>
  ) : null;
