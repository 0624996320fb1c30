/** The fields that say how a pad's sheets differ from the size they are sold by, and what there is to ask about them. */
import type { Problem } from '../checked.ts';
import { type Length, printExact, type Units } from '../length.ts';
import { SHEET_EDGES, type SheetAsIs, type SheetEdge, sideAcross, wholeSheet } from '../sheet.ts';
import type { Size } from '../size.ts';
import { choiceField, optionalLengthField } from './fields.ts';

export const NO_STRIP = 'none';

export const asIsFields = (units: Units) => ({
  measuredWidth: optionalLengthField(units),
  measuredHeight: optionalLengthField(units),
  stripEdge: choiceField([NO_STRIP, ...SHEET_EDGES], NO_STRIP),
  stripDepth: optionalLengthField(units),
});

interface AsIsTyped {
  readonly measuredWidth: Length | undefined;
  readonly measuredHeight: Length | undefined;
  readonly stripEdge: SheetEdge | typeof NO_STRIP;
  readonly stripDepth: Length | undefined;
}

export const readAsIs = (sheet: Size, typed: AsIsTyped): SheetAsIs => ({
  sheet,
  measured: {
    ...(typed.measuredWidth !== undefined && { width: typed.measuredWidth }),
    ...(typed.measuredHeight !== undefined && { height: typed.measuredHeight }),
  },
  strip:
    typed.stripEdge === NO_STRIP || typed.stripDepth === undefined
      ? null
      : { edge: typed.stripEdge, depth: typed.stripDepth },
});

/** What its paper would differ by at most from the size it is sold by, as a share of the side. */
const MOST_OFF = 1 / 10;

/** Whether a measured side may be that of a sheet sold by this size. */
const isLikely = (measured: Length, sold: Length): boolean => Math.abs(measured - sold) <= sold * MOST_OFF;

/** Each beside its field: sides far off, a strip half described, a strip that leaves no paper. */
export const asIsProblems = (asIs: SheetAsIs, typed: AsIsTyped, units: Units): Problem[] => [
  ...offProblems(asIs, units),
  ...stripProblems(asIs, typed, units),
];

const offProblems = (asIs: SheetAsIs, units: Units): Problem[] =>
  (['width', 'height'] as const).flatMap((side) => {
    const message = sayOff(side, asIs, units);
    return message === undefined ? [] : [{ field: FIELD[side], message }];
  });

const FIELD = { width: 'measuredWidth', height: 'measuredHeight' } as const;

function sayOff(side: 'width' | 'height', { sheet, measured }: SheetAsIs, units: Units): string | undefined {
  const one = measured[side];
  if (one === undefined || isLikely(one, sheet[side])) return undefined;
  const other = side === 'width' ? 'height' : 'width';
  const sold = printExact(sheet[side], units);
  if (isLikely(one, sheet[other]))
    return `That is about its other side; this one is ${sold} by its size above.`;
  return `That is far off the ${sold} of its size above. Put right whichever of the two is wrong.`;
}

function stripProblems(asIs: SheetAsIs, { stripEdge, stripDepth }: AsIsTyped, units: Units): Problem[] {
  if (stripEdge === NO_STRIP) {
    if (stripDepth === undefined) return [];
    return [{ field: 'stripEdge', message: 'Along which edge is this strip?' }];
  }
  if (stripDepth === undefined) return [{ field: 'stripDepth', message: 'How deep is the strip?' }];
  const side = sideAcross({ edge: stripEdge, depth: stripDepth });
  const whole = wholeSheet(asIs)[side];
  if (stripDepth < whole) return [];
  const wide = `${printExact(whole, units)} ${side === 'width' ? 'wide' : 'high'}`;
  return [{ field: 'stripDepth', message: `That leaves no paper: the sheet is only ${wide}.` }];
}
