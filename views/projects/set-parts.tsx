/** All parts of a project's set in one table: what size, how many, how many are still missing. */
import type { FC } from 'hono/jsx';
import type { SetRow } from '#core/batch/set-parts.ts';
import { printExactSize, type Units } from '#shared/length.ts';
import { capital } from '../common/words.ts';

export const SetParts: FC<{ rows: readonly SetRow[]; units: Units }> = ({ rows, units }) =>
  rows.length === 0 ? null : (
    <table class="set-parts">
      <caption>All parts of the set</caption>
      <thead>
        <tr>
          <th scope="col">Part</th>
          <th scope="col">Size</th>
          <th scope="col">How many</th>
          <th scope="col">Still missing</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr>
            <th scope="row">{row.name === undefined ? 'Envelope' : capital(row.name)}</th>
            <td>{printExactSize(row, units)}</td>
            <td>{row.count}</td>
            <td>{row.missing === 0 ? 'none' : <strong>{row.missing}</strong>}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
