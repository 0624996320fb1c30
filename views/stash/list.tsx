/** The shelf as a list to print and hang beside it: offcuts place by place, sheets pad by pad. */

import type { FC } from 'hono/jsx';
import { alikeIn } from '#core/stash/alike.ts';
import type { Offcut, PadWithDesigns } from '#core/stash/stash.ts';
import { printExactSize, type Units } from '#shared/length.ts';
import { Pages, type PagesProps } from '#views/common/pages.tsx';
import { printDay } from '#views/common/when.tsx';
import { padFacts, sayStanding } from './words.ts';

interface Props {
  /** By place, the largest first; all of one place follow each other. */
  readonly offcuts: readonly Offcut[];
  readonly pages: PagesProps;
  /** How many there are in all, on all pages. */
  readonly counted: number;
  /** None where sheets have a list of their own. */
  readonly pads: readonly PadWithDesigns[];
  readonly at: string;
  readonly units: Units;
}

export const ShelfList: FC<Props> = ({ offcuts, pages, counted, pads, at, units }) => (
  <div class="shelf-list">
    <h1>The shelf on {printDay(at)}</h1>
    <p class="no-print">
      Print it and hang it up; cross out what goes. <a href="/stash">To the stash</a>
      {pads.length > 0 ? null : (
        <>
          {' · '}
          <a href="/stash/sheets">The list of sheets</a>
        </>
      )}
    </p>
    {counted > offcuts.length && offcuts.length > 0 ? (
      <p>
        Offcuts {pages.from + 1}–{pages.from + offcuts.length} of {counted.toLocaleString('en')}, by place;
        print page after page.
      </p>
    ) : null}
    <Pages {...pages} />
    {offcuts.length === 0 && pads.length === 0 ? <p class="answer">Nothing lies here.</p> : null}
    {[...byPlace(offcuts)].map(([place, there]) => (
      <section>
        <h2>{place || 'No place noted'}</h2>
        <OffcutTable offcuts={there} units={units} />
      </section>
    ))}
    {pads.length > 0 ? (
      <section>
        <h2>Sheets</h2>
        <SheetTable pads={pads} units={units} />
      </section>
    ) : null}
    <Pages {...pages} />
  </div>
);

/** Sheets pad by pad, where they are too many for one list with the offcuts. */
export const SheetList: FC<Pick<Props, 'pads' | 'pages' | 'at' | 'units'>> = ({ pads, pages, at, units }) => (
  <div class="shelf-list">
    <h1>Sheets on {printDay(at)}</h1>
    <p class="no-print">
      <a href="/stash/list">The list of offcuts</a> · <a href="/stash">To the stash</a>
    </p>
    {pads.length === 0 ? <p class="answer">There are no more.</p> : <SheetTable pads={pads} units={units} />}
    <Pages {...pages} />
  </div>
);

const OffcutTable: FC<{ offcuts: readonly Offcut[]; units: Units }> = ({ offcuts, units }) => (
  <table>
    <thead>
      <tr>
        <th>Code</th>
        <th>Size</th>
        <th>Alike</th>
        <th>Design and note</th>
      </tr>
    </thead>
    <tbody>
      {alikeIn(offcuts).map(({ offcuts: [first, ...others], count }) => (
        <tr>
          <td>
            <a class="code" href={`/offcuts/${first.id}`}>
              {first.code}
            </a>
            {others.map(({ code }) => ` ${code}`)}
          </td>
          <td class="size">{printExactSize(first, units)}</td>
          <td>{count}</td>
          <td>{sayPaper(first, others)}</td>
        </tr>
      ))}
    </tbody>
  </table>
);

const sayPaper = (first: Offcut, others: readonly Offcut[]): string =>
  [
    `${first.design.name}, ${first.design.pad.name}`,
    sayStanding(first),
    ...[first, ...others].map(({ note }) => note),
  ]
    .filter(Boolean)
    .join('; ');

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

function byPlace(offcuts: readonly Offcut[]): Map<string, Offcut[]> {
  const places = [...new Set(offcuts.map(({ place }) => place))];
  return new Map(places.map((place) => [place, offcuts.filter((offcut) => offcut.place === place)]));
}
