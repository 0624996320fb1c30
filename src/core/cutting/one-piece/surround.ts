/**
 * The most that can still come from the rest of a piece when a block of a given size is part of it: the bound by which
 * a search gives blocks up. Knows sizes only, neither what is in the block nor how many copies are left.
 */
import { type Axis, floorIndex, leftBy } from './normal-patterns.ts';
import type { FillTable } from './unlimited.ts';

/** The bound for a block is `values[atX[trunc(width * scaleX)] + atY[trunc(height * scaleY)]]`. */
export interface Surround {
  readonly values: Float64Array;
  readonly atX: Int32Array;
  readonly atY: Int32Array;
  readonly scaleX: number;
  readonly scaleY: number;
}

// Untuned, taken as reasonable.
/** Longer sides are looked up in as many bins, a little less sharply. */
const BINS = 16_384;
/** Blocks that leave more than this of the two sides together are bounded by area alone, where it is as good. */
const REACH = 0.8;
const SMALL = 40_000;

/**
 * By dynamic programming outwards from the whole piece: each neighbour that makes a block longer or higher is worth
 * what the table says (the bound of Viswanathan & Bagchi 1993). Undefined if stopped on the way.
 */
export function surroundOf(
  table: FillTable,
  width: number,
  height: number,
  shouldStop: () => boolean,
): Surround | undefined {
  const restX = leftBy(table.x);
  const restY = leftBy(table.y);
  const values = outwards(table, restX, restY, shouldStop);
  const ofX = (length: number): number => rankOf(table.x, restX, length) * restY.length;
  const ofY = (length: number): number => rankOf(table.y, restY, length);
  return values && { values, ...lookup(width, ofX, 'X'), ...lookup(height, ofY, 'Y') };
}

/** No bound at all, for a search that looks at areas only. */
export const openSurround: Surround = {
  values: Float64Array.of(Infinity),
  atX: Int32Array.of(0),
  atY: Int32Array.of(0),
  scaleX: 0,
  scaleY: 0,
};

function lookup<S extends 'X' | 'Y'>(side: number, of: (length: number) => number, name: S) {
  const scale = Math.min(1, BINS / side);
  const bins = Int32Array.from({ length: Math.floor(side * scale) + 2 }, (_, bin) =>
    of(Math.floor(bin / scale)),
  );
  return { [`at${name}`]: bins, [`scale${name}`]: scale } as Record<`at${S}`, Int32Array> &
    Record<`scale${S}`, number>;
}

/** Which of the rests bounds what stands beside a block of this length. */
function rankOf({ unit, side, marks }: Axis, rests: Float64Array, length: number): number {
  const left = marks[floorIndex(marks, side - Math.floor(length / unit))]!;
  return Math.min(floorIndex(rests, left - 0.5) + (left > 0 ? 1 : 0), rests.length - 1);
}

function outwards(
  table: FillTable,
  restX: Float64Array,
  restY: Float64Array,
  shouldStop: () => boolean,
): Float64Array | undefined {
  const { x, y, columns, rows, density, whole } = table;
  const across = restX.length;
  const down = restY.length;
  const values = new Float64Array(across * down);
  const turned = new Float64Array(across * down);
  const afterX = after(restX, x.marks);
  const afterY = after(restY, y.marks);
  const rowAt = Array.from(restY, (rest) => floorIndex(y.marks, y.side - rest) * columns);
  const lineAt = Array.from(restX, (rest) => floorIndex(x.marks, x.side - rest) * rows);
  const stepsX = rowAt.map((row) => risesOf(table.byRow, row, columns));
  const stepsY = lineAt.map((line) => risesOf(table.byColumn, line, rows));
  const reach = across * down > SMALL ? REACH : 2;
  for (let k = 0; k < across; k += 1) {
    if (shouldStop()) return undefined;
    const line = lineAt[k]!;
    for (let l = 0; l < down; l += 1) {
      const area = density * (x.side * y.side - (x.side - restX[k]!) * (y.side - restY[l]!));
      const most = whole ? Math.floor(area) : area;
      if (restX[k]! / x.side + restY[l]! / y.side > reach) {
        values[k * down + l] = most;
        continue;
      }
      const row = rowAt[l]!;
      let best = Math.max(k > 0 ? turned[l * across + k - 1]! : 0, l > 0 ? values[k * down + l - 1]! : 0);
      best = grown(turned, l * across, table.byRow, row, stepsX[l]!, afterX, k * columns, best, most);
      best = grown(values, k * down, table.byColumn, line, stepsY[k]!, afterY, l * rows, best, most);
      values[k * down + l] = best;
      turned[l * across + k] = best;
    }
  }
  return values;
}

/** For rest `k` and a neighbour `p` marks long, the rest that is then left, at `[k * marks + p]`; -1 if it is too long. */
function after(rests: Float64Array, marks: Float64Array): Int16Array {
  const list = new Int16Array(rests.length * marks.length);
  rests.forEach((rest, k) => {
    let left = k;
    for (let p = 0; p < marks.length; p += 1) {
      while (left >= 0 && rests[left]! > rest - marks[p]!) left -= 1;
      list[k * marks.length + p] = left;
    }
  });
  return list;
}

/** The marks at which the values of one line rise. */
function risesOf(values: Float64Array, line: number, length: number): Int16Array {
  const rises: number[] = [];
  for (let p = 1; p < length; p += 1) if (values[line + p]! > values[line + p - 1]!) rises.push(p);
  return Int16Array.from(rises);
}

function grown(
  outer: Float64Array,
  outerLine: number,
  inner: Float64Array,
  innerLine: number,
  steps: Int16Array,
  rest: Int16Array,
  restLine: number,
  known: number,
  most: number,
): number {
  let best = known;
  for (let s = 0; s < steps.length && best < most; s += 1) {
    const p = steps[s]!;
    const left = rest[restLine + p]!;
    if (left < 0) break;
    const value = outer[outerLine + left]! + inner[innerLine + p]!;
    if (value > best) best = value;
  }
  return best;
}
