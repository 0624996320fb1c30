/** Pads as rows of swatches, each with the sheets left. Knows no offcuts. */
import type { FC } from 'hono/jsx';
import { designRunsLow, runsLow } from '#core/stash/low.ts';
import type { Design, PadWithDesigns } from '#core/stash/stash.ts';
import type { Units } from '#shared/length.ts';
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
      <p class="quiet">{padFacts(pad, units)}</p>
      {runsLow({ pad, sheets }) ? <p class="low">runs low</p> : null}
    </div>
    {designs.length === 0 ? (
      <p>
        <a href={`/pads/${pad.id}/designs/new`}>Say which designs it has</a>
      </p>
    ) : (
      <Swatches designs={designs} />
    )}
    <p class="left">
      <b>{sheets.toLocaleString('en-GB')}</b> {sheets === 1 ? 'sheet' : 'sheets'}
    </p>
  </li>
);

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
