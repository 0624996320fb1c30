/**
 * Where a cut can be worth making: the totals of part lengths laid end to end (normal patterns). Knows lengths only;
 * where there are too many totals it gives up exactness for a coarser grid and says so.
 */

/** Totals along one side of a piece, rising from 0, and the side itself, in multiples of `unit`; exact if that is 1. */
export interface Axis {
  readonly unit: number;
  readonly side: number;
  readonly marks: Float64Array;
}

/**
 * The totals up to `side` of any number of the lengths, at most `most` of them (Herz 1972). If there are more, lengths
 * and side are rounded down to a coarser unit: whatever fits the piece fits there too, so values found on it are upper
 * bounds. Undefined if a length would vanish.
 */
export function axisOf(lengths: readonly number[], side: number, most: number): Axis | undefined {
  const exact = totals(lengths, side, most);
  if (exact) return reduced({ unit: 1, side, marks: exact });
  const unit = Math.ceil(side / Math.max(1, most - 1));
  if (lengths.some((length) => length < unit)) return undefined;
  const coarse = lengths.map((length) => Math.floor(length / unit));
  const cells = Math.floor(side / unit);
  return reduced({ unit, side: cells, marks: totals(coarse, cells, cells + 1)! });
}

/** All totals up to `side`, so that shorter sides can be looked up too; undefined if there are more than `most`. */
export function everyTotal(lengths: readonly number[], side: number, most: number): Axis | undefined {
  const marks = totals(lengths, side, most);
  return marks && { unit: 1, side, marks };
}

/** What totals leave of the side, rounded down to a total: the reduced raster points of Scheithauer & Terno (1996). */
export const leftBy = ({ side, marks }: Axis): Float64Array =>
  Float64Array.from(new Set(marks.map((mark) => marks[floorIndex(marks, side - mark)]!))).sort();

/** The index of the last mark that is not above `value`; 0 if there is none. */
export function floorIndex(marks: Float64Array, value: number): number {
  let low = 0;
  let high = marks.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (marks[middle]! <= value) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Keeps what an exact recursion needs: totals up to half of the side and, beyond it, those that a total leaves. */
function reduced(axis: Axis): Axis {
  const kept = new Set(leftBy(axis));
  return { ...axis, marks: axis.marks.filter((mark) => 2 * mark <= axis.side || kept.has(mark)) };
}

function totals(lengths: readonly number[], side: number, most: number): Float64Array | undefined {
  const found = new Set([0]);
  for (const length of new Set(lengths)) {
    let fresh = [...found];
    while (fresh.length > 0) {
      fresh = fresh.map((total) => total + length).filter((total) => total <= side && !found.has(total));
      for (const total of fresh) found.add(total);
      if (found.size > most) return undefined;
    }
  }
  return Float64Array.from(found).sort();
}
