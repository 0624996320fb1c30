/** The stash: what there is in one line, the shelf of offcuts under its search, the newest pads, then the quiet rest. */
import type { FC } from 'hono/jsx';
import type { LowList } from '#core/stash/low.ts';
import type { ReadyMade } from '#core/stash/ready-made.ts';
import type { PadWithDesigns } from '#core/stash/stash.ts';
import type { Units } from '#shared/length.ts';
import { howMany } from '#views/common/words.ts';
import { ReadyMadeList } from '../ready-made/list.tsx';
import { howManyLow, lowName } from './low.tsx';
import { PadRows } from './pads.tsx';
import { CodeSearch, ShelfSearch, type ShelfSearchProps } from './search.tsx';

export interface StashProps {
  /** The newest of which anything is left; `more` of them are on a page of their own. */
  readonly pads: readonly PadWithDesigns[];
  readonly more: boolean;
  /** No pad was ever noted, or all are put away. */
  readonly empty: boolean;
  readonly low: LowList;
  readonly tally: { readonly pads: number; readonly sheets: number; readonly offcuts: number };
  readonly readyMade: readonly ReadyMade[];
  readonly search: ShelfSearchProps;
  readonly units: Units;
}

export const Stash: FC<StashProps> = ({ pads, more, empty, low, tally, readyMade, search, units }) => {
  if (empty) return <EmptyStash readyMade={readyMade} units={units} />;
  return (
    <>
      <div class="spread">
        <h1>Stash</h1>
        <p class="row">
          <a class="button" href="/offcuts/new">
            Add offcuts
          </a>
          <a class="button plain" href="/pads/new">
            Add a pad
          </a>
        </p>
      </div>
      <Tally tally={tally} readyMade={readyMade} />
      <LowOnes low={low} />
      <section aria-labelledby="offcuts">
        <div class="spread">
          <h2 id="offcuts">Offcuts</h2>
          <CodeSearch entry={search.entry} />
        </div>
        <ShelfSearch {...search} />
      </section>
      <section aria-labelledby="pads">
        <h2 id="pads">{more ? 'The newest pads' : 'Pads'}</h2>
        <PadRows pads={pads} units={units} />
        <p class="no-print">
          <a href="/pads">{more ? 'All pads, page by page' : 'Pads, with those used up'}</a>
        </p>
      </section>
      <ReadyMadeList all={readyMade} units={units} />
      <section class="no-print">
        <p>
          <a href="/stash/list">A list of the shelf, place by place, to print</a>
          <br />
          <a href="/put-away">Paper and else that is put away</a>
        </p>
        <p>
          <a href="/stash/shopping">What to buy, to print or copy</a> ·{' '}
          <a href="/year">A year’s paper, drawn</a> · <a href="/stash/waiting">What waits to be used</a>
        </p>
      </section>
    </>
  );
};

/** What there is, in one line. */
const Tally: FC<Pick<StashProps, 'tally' | 'readyMade'>> = ({ tally, readyMade }) => {
  const bought = readyMade.reduce((sum, { count }) => sum + count, 0);
  return (
    <p class="answer">
      <strong>{howMany(tally.sheets, 'sheet')}</strong> in <a href="#pads">{howMany(tally.pads, 'pad')}</a>,
      {bought > 0 ? ' ' : ' and '}
      <a href="#offcuts">{howMany(tally.offcuts, 'offcut')}</a>
      {bought > 0 ? (
        <>
          {' '}
          and <a href="#ready-made">{howMany(bought, 'bought envelope')}</a>
        </>
      ) : null}
      .
    </p>
  );
};

const LowOnes: FC<Pick<StashProps, 'low'>> = ({ low }) =>
  low.low.length === 0 ? null : (
    <p class="lead">
      <a href="/stash/low">{howManyLow(low)}</a>: {low.low.map(lowName).join(', ')}
      {low.pads + low.designs > low.low.length ? ' and more' : ''}.
    </p>
  );

const EmptyStash: FC<Pick<StashProps, 'readyMade' | 'units'>> = ({ readyMade, units }) => (
  <section>
    <h1>Stash</h1>
    <p class="answer">Nothing lies on the shelf yet.</p>
    <p class="lead">
      Start with the pad you reach for most: what it is called, how large a sheet is, and which designs it
      has. Offcuts come after, one line each.
    </p>
    <p>
      <a class="button" href="/pads/new">
        Add your first pad
      </a>
    </p>
    <ReadyMadeList all={readyMade} units={units} />
  </section>
);
