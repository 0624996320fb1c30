/** Pads as rows of swatches, each with the sheets left. Knows no offcuts. */
import type { FC } from 'hono/jsx';
import { designRunsLow, runsLow } from '#core/stash/low.ts';
import type { Design, PadWithDesigns } from '#core/stash/stash.ts';
import type { Units } from '#shared/length.ts';
import { Pages, type PagesProps } from '#views/common/pages.tsx';
import { howMany } from '#views/common/words.ts';
import { SwatchChip } from '#views/diagrams/swatch.tsx';
import { padFacts } from './words.ts';

export const PadRows: FC<{ pads: readonly PadWithDesigns[]; units: Units }> = ({ pads, units }) => (
  <ul class="list">
    {pads.map((one) => (
      <PadRow {...one} units={units} />
    ))}
  </ul>
);

const PadRow: FC<PadWithDesigns & { units: Units }> = ({ pad, designs, sheets, units }) => (
  <li class="pad">
    <div>
      <h3>
        <a href={`/pads/${pad.id}`}>{pad.name}</a>
      </h3>
      <p class="quiet">
        {padFacts(pad, units)}
        {designs.length > MOST_SWATCHES ? ` · ${designs.length} designs` : null}
      </p>
      {runsLow({ pad, sheets }) ? <p class="low">runs low</p> : null}
    </div>
    {designs.length === 0 ? (
      <p>
        <a href={`/pads/${pad.id}/designs/new`}>Say which designs it has</a>
      </p>
    ) : (
      <Swatches designs={designs.slice(0, MOST_SWATCHES)} />
    )}
    <p class="left">
      <b>{sheets.toLocaleString('en-GB')}</b> {sheets === 1 ? 'sheet' : 'sheets'}
    </p>
  </li>
);

/** A page of them, those of which something is left or those used up. */
export const PadsPage: FC<{
  pads: readonly PadWithDesigns[];
  used: boolean;
  pages: PagesProps;
  units: Units;
}> = ({ pads, used, pages, units }) => (
  <>
    <div class="spread">
      <h1>{used ? 'Pads used up' : 'Pads'}</h1>
      <a class="button plain no-print" href="/pads/new">
        Add a pad
      </a>
    </div>
    <p class="no-print">
      {used ? (
        <a href="/pads">Those of which something is left</a>
      ) : (
        <a href="/pads?used=yes">Those used up</a>
      )}
      {' · '}
      <a href="/stash">To the stash</a>
    </p>
    {pads.length === 0 ? <p class="answer">{used ? 'None is used up.' : 'There are no more.'}</p> : null}
    <PadRows pads={pads} units={units} />
    <Pages {...pages} />
  </>
);

/** More of one pad stand on its own page. */
const MOST_SWATCHES = 8;

export const Swatches: FC<{ designs: readonly Design[] }> = ({ designs }) => (
  <ul class="swatches">
    {designs.map((design) => (
      <li class={design.sheets === 0 ? 'none' : undefined}>
        <a
          href={`/designs/${design.id}`}
          title={`${design.name}: ${howMany(design.sheets, 'sheet')}${designRunsLow(design) ? ', runs low' : ''}`}
        >
          <SwatchChip id={`chip-${design.id}`} swatch={design.swatch} name={design.name} />
          <span class={designRunsLow(design) ? 'low' : undefined}>
            {design.sheets}
            <span class="hidden"> {design.sheets === 1 ? 'sheet' : 'sheets'}</span>
            {designRunsLow(design) ? ' low' : null}
          </span>
        </a>
      </li>
    ))}
  </ul>
);
