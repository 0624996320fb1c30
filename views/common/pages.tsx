/** The way on and back through a long list. Knows no list. */
import type { FC } from 'hono/jsx';

export interface PagesProps {
  readonly address: string;
  /** How many were passed over, and how many are shown at once. */
  readonly from: number;
  readonly size: number;
  readonly more: boolean;
}

export const Pages: FC<PagesProps> = ({ address, from, size, more }) =>
  from === 0 && !more ? null : (
    <nav class="row no-print" aria-label="Pages">
      {from > 0 ? (
        <a class="button plain small" href={`${address}?from=${Math.max(0, from - size)}`} rel="prev">
          Back
        </a>
      ) : null}
      {more ? (
        <a class="button plain small" href={`${address}?from=${from + size}`} rel="next">
          More
        </a>
      ) : null}
    </nav>
  );
