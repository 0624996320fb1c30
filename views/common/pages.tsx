/** The way on and back through a long list. Knows no list. */
import type { FC } from 'hono/jsx';

export interface PagesProps {
  /** May hold a query of its own. */
  readonly address: string;
  /** Where another list on the page is paged too. */
  readonly name?: string;
  readonly label?: string;
  /** How many were passed over, and how many are shown at once. */
  readonly from: number;
  readonly size: number;
  readonly more: boolean;
}

export const Pages: FC<PagesProps> = ({ address, name = 'from', label = 'Pages', from, size, more }) =>
  from === 0 && !more ? null : (
    <nav class="row no-print" aria-label={label}>
      {from > 0 ? (
        <a class="button plain small" href={pageFrom(address, name, Math.max(0, from - size))} rel="prev">
          Back
        </a>
      ) : null}
      {more ? (
        <a class="button plain small" href={pageFrom(address, name, from + size)} rel="next">
          More
        </a>
      ) : null}
    </nav>
  );

const pageFrom = (address: string, name: string, from: number): string =>
  `${address}${address.includes('?') ? '&' : '?'}${name}=${from}`;
