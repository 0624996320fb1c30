/** All series by name, with how much is in each. */
import type { FC } from 'hono/jsx';
import type { SeriesTold } from '#core/project/journal.ts';
import { Pages, type PagesProps } from '../common/pages.tsx';
import { howMany } from '../common/words.ts';

export const SeriesList: FC<{ series: readonly SeriesTold[]; pages: PagesProps }> = ({ series, pages }) => (
  <>
    <h1>Series</h1>
    {series.length === 0 ? (
      <p class="lead">
        None yet. Give a project a series among its words, and the same name to others that belong with it.
      </p>
    ) : null}
    <ul class="list">
      {series.map((one) => (
        <li>
          <a href={`/series/${one.id}`}>
            <strong>{one.name}</strong>
          </a>{' '}
          <span class="quiet">{sayTold(one)}</span>
          {one.note ? <p class="notes">{one.note}</p> : null}
        </li>
      ))}
    </ul>
    <Pages {...pages} />
  </>
);

/** `4 projects, 11 envelopes made` */
export const sayTold = ({ projects, made }: Pick<SeriesTold, 'projects' | 'made'>): string =>
  made === 0
    ? howMany(projects, 'project')
    : `${howMany(projects, 'project')}, ${howMany(made, 'envelope')} made`;
