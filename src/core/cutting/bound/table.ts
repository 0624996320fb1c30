/**
 * The most that every size of block can hold at given prices, each part any number of times, cut edge to edge. Knows one
 * set of prices at a time.
 */
import { everyTotal, floorIndex } from '../one-piece/normal-patterns.ts';
import { fillTable, tableCost } from '../one-piece/unlimited.ts';

/** One way for a part to lie, and its price. */
export interface PricedWay {
  readonly width: number;
  readonly height: number;
  readonly price: number;
}

/** Larger tables are not worth their time. Untuned, taken as reasonable. */
const MOST_MARKS = 2000;
const MOST_STEPS = 3_000_000;

/** A function that says what a block holds; undefined where the table would be too large. */
export function priceTable(
  ways: readonly PricedWay[],
  widest: number,
  highest: number,
): ((width: number, height: number) => number) | undefined {
  const side = (name: 'width' | 'height'): number[] => ways.map((way) => way[name]);
  const x = everyTotal(side('width'), widest, MOST_MARKS);
  const y = everyTotal(side('height'), highest, MOST_MARKS);
  if (!x || !y || tableCost(x, y) > MOST_STEPS) return undefined;
  const lays = ways
    .filter(({ width, height }) => width <= widest && height <= highest)
    .map(({ price, ...sides }, part) => ({ ...sides, part, turned: false, value: price }));
  const { byColumn, rows } = fillTable(x, y, lays, () => false)!;
  return (width, height) => byColumn[floorIndex(x.marks, width) * rows + floorIndex(y.marks, height)]!;
}
