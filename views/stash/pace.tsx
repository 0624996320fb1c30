/** How fast a paper goes and what it was for, in words. Knows no ledger; the figures come summed up. */
import type { FC } from 'hono/jsx';
import { batchesLeft, type MonthUse, type Pace, type ProjectUse } from '#core/stash/pace.ts';
import { howMany } from '#views/common/words.ts';

export interface PaperUse {
  /** In the last twelve months. */
  readonly batches: number;
  /** Undefined while too little is known. */
  readonly pace: Pace | undefined;
  /** The last few, newest first. */
  readonly projects: readonly ProjectUse[];
}

export interface DesignUse extends PaperUse {
  readonly months: readonly MonthUse[];
}

export const PaceLine: FC<{ sheets: number; use: PaperUse }> = ({ sheets, use }) => (
  <p>{sayPace(sheets, use)}</p>
);

/** `About 2 more batches at your pace: 3 sheets for each, 1.5 a month.` */
export function sayPace(sheets: number, { batches, pace }: PaperUse): string {
  if (!pace) {
    const taken = batches === 0 ? 'No sheet of it was taken' : 'Taken for one batch';
    return `${taken} in the last twelve months: too little to say how long it lasts.`;
  }
  const each = `about ${rounded(pace.perBatch)} ${rounded(pace.perBatch) === 1 ? 'sheet' : 'sheets'} for each`;
  const monthly = pace.perMonth === null ? '' : `, ${rounded(pace.perMonth)} a month`;
  const more = batchesLeft(sheets, pace);
  const left =
    more === 0 ? 'Not enough for another batch' : `About ${howMany(more, 'more batch', 'more batches')}`;
  return `${left} at your pace: ${each}${monthly}.`;
}

export const UsedFor: FC<{ projects: readonly ProjectUse[] }> = ({ projects }) =>
  projects.length === 0 ? null : (
    <p>
      Used for{' '}
      {projects.map(({ project, title }, index) => (
        <>
          {index > 0 ? ', ' : ''}
          <a href={`/projects/${project}`}>{title}</a>
        </>
      ))}
      .
    </p>
  );

/** Month by month and project by project, one tap behind. */
export const UseDetails: FC<DesignUse> = ({ months, projects }) =>
  projects.length === 0 ? null : (
    <details>
      <summary>How it goes</summary>
      {months.length === 0 ? null : (
        <table>
          <caption>Sheets taken in the last twelve months</caption>
          <thead>
            <tr>
              <th>Month</th>
              <th class="number">Sheets</th>
              <th class="number">Batches</th>
            </tr>
          </thead>
          <tbody>
            {months.map(({ month, sheets, batches }) => (
              <tr>
                <td>{printMonth(month)}</td>
                <td class="number">{sheets}</td>
                <td class="number">{batches}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <table>
        <caption>The last projects it was taken for</caption>
        <thead>
          <tr>
            <th>Project</th>
            <th class="number">Sheets</th>
          </tr>
        </thead>
        <tbody>
          {projects.map(({ project, title, sheets }) => (
            <tr>
              <td>
                <a href={`/projects/${project}`}>{title}</a>
              </td>
              <td class="number">{sheets === 0 ? 'offcuts only' : sheets}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );

const MONTH = new Intl.DateTimeFormat('en-GB', { month: 'long', year: 'numeric', timeZone: 'UTC' });

const printMonth = (month: string): string => MONTH.format(new Date(`${month}-01T00:00:00Z`));

const rounded = (number: number): number => Math.round(number * 10) / 10;
