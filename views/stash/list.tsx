/** The shelf as a list to print and hang beside it: offcuts place by place, then sheets pad by pad. */

import type { FC } from 'hono/jsx';
import type { Offcut, PadWithDesigns } from '#core/stash/stash.ts';
import { printExactSize, type Units } from '#shared/length.ts';
import { areaOf } from '#shared/size.ts';
import { printDay } from '#views/common/when.tsx';
import { howMany } from '#views/common/words.ts';
import { padFacts, sayStanding } from './words.ts';

interface Props {
  readonly offcuts: readonly Offcut[];
  /** There are older ones that are not on it. */
  readonly more: boolean;
  readonly pads: readonly PadWithDesigns[];
  readonly at: string;
  readonly units: Units;
}

export const ShelfList: FC<Props> = ({ offcuts, more, pads, at, units }) => (
  <div class="shelf-list">
    <h1>The shelf on {printDay(at)}</h1>
    <p class="no-print">
      Print it and hang it up; cross out what goes. <a href="/stash">To the stash</a>
    </p>
    {more ? <p>Only the {howMany(offcuts.length, 'newest offcut')} are on this list.</p> : null}
    {[...byPlace(offcuts)].map(([place, there]) => (
      <section>
        <h2>{place || 'No place noted'}</h2>
        <OffcutTable offcuts={there} units={units} />
      </section>
    ))}
    <section>
      <h2>Sheets</h2>
      <SheetTable pads={pads.filter((one) => one.sheets > 0)} units={units} />
    </section>
  </div>
);

const OffcutTable: FC<{ offcuts: readonly Offcut[]; units: Units }> = ({ offcuts, units }) => (
  <table class="offcuts">
    <thead>
      <tr>
        <th>Code</th>
        <th>Size</th>
        <th class="number">Alike</th>
        <th>Design</th>
        <th>Note</th>
      </tr>
    </thead>
    <tbody>
      {offcuts.map((offcut) => (
        <tr>
          <td>
            <a class="code" href={`/offcuts/${offcut.id}`}>
              {offcut.code}
            </a>
          </td>
          <td class="size">{printExactSize(offcut, units)}</td>
          <td class="number">{offcut.count}</td>
          <td>
            {offcut.design.name} <span class="quiet">{offcut.design.pad.name}</span>
          </td>
          <td class="quiet">{[sayStanding(offcut), offcut.note].filter(Boolean).join('; ')}</td>
        </tr>
      ))}
    </tbody>
  </table>
);

const SheetTable: FC<{ pads: readonly PadWithDesigns[]; units: Units }> = ({ pads, units }) => (
  <table>
    <thead>
      <tr>
        <th>Pad</th>
        <th>Designs</th>
        <th class="number">Sheets</th>
      </tr>
    </thead>
    <tbody>
      {pads.map(({ pad, designs, sheets }) => (
        <tr>
          <td>
            <a href={`/pads/${pad.id}`}>{pad.name}</a> <span class="quiet">{padFacts(pad, units)}</span>
          </td>
          <td>
            {designs
              .filter((design) => design.sheets > 0)
              .map((design) => `${design.name} ${design.sheets}`)
              .join(', ')}
          </td>
          <td class="number">{sheets}</td>
        </tr>
      ))}
    </tbody>
  </table>
);

/** Places in order, those without one last; in each the largest first. */
function byPlace(offcuts: readonly Offcut[]): Map<string, Offcut[]> {
  const places = [...new Set(offcuts.map((offcut) => offcut.place))].sort(
    (a, b) => Number(a === '') - Number(b === '') || a.localeCompare(b, 'en', { numeric: true }),
  );
  return new Map(
    places.map((place) => [
      place,
      offcuts.filter((offcut) => offcut.place === place).sort((a, b) => areaOf(b) - areaOf(a)),
    ]),
  );
}
