/**
 * One part alone on one piece: how many come off in plain rows, what cut that takes, and how large it could be. Knows no
 * plan and no other part.
 */
import { areaOf } from '#shared/size.ts';
import type { Part, Sides } from '../order.ts';

/** One way for a part to lie, and the place of its corner on the piece, where it has one. */
export interface Lone extends Sides {
  readonly turned: boolean;
  readonly x: number;
  readonly y: number;
  readonly pinned: boolean;
}

/** As it is, and on its side where it may be turned. */
export function waysToLie({ width, height, pin }: Part, turning: boolean): Lone[] {
  const { x, y } = pin && 'x' in pin ? pin : { x: 0, y: 0 };
  const asIs = { width, height, turned: false, x, y, pinned: pin !== undefined };
  return turning ? [asIs, { ...asIs, width: height, height: width, turned: true }] : [asIs];
}

/** How many copies a piece gives in plain rows, lying either way; one where pinned. */
export const inRows = (ways: readonly Lone[], piece: Sides, longestCut: number): number =>
  ways.reduce((most, way) => Math.max(most, rowsOf(way, piece, longestCut)), 0);

function rowsOf(way: Lone, piece: Sides, longestCut: number): number {
  if (cutFor(way, piece) > longestCut) return 0;
  return way.pinned ? 1 : Math.floor(piece.width / way.width) * Math.floor(piece.height / way.height);
}

/** The longest cut that takes the part from a whole piece; infinite where it does not fit. */
export const cutNeeded = (ways: readonly Lone[], piece: Sides): number =>
  ways.reduce((least, way) => Math.min(least, cutFor(way, piece)), Number.POSITIVE_INFINITY);

/** Of the two ways to go about it: all cuts across one side of the piece first, or all across the other. */
function cutFor({ width, height, x, y }: Lone, piece: Sides): number {
  if (x + width > piece.width || y + height > piece.height) return Number.POSITIVE_INFINITY;
  const besides = width < piece.width;
  const beyond = height < piece.height;
  const downFirst = Math.max(besides ? piece.height : 0, beyond ? width : 0);
  const acrossFirst = Math.max(beyond ? piece.width : 0, besides ? height : 0);
  return Math.min(downFirst, acrossFirst);
}

/** The size, side by side, to which the part could be cut down to come from the piece; undefined where there is none. */
export function sizeThatFits(ways: readonly Lone[], piece: Sides, longestCut: number): Sides | undefined {
  let best: Sides | undefined;
  for (const way of ways) {
    const width = Math.min(way.width, piece.width - way.x);
    const height = Math.min(way.height, piece.height - way.y);
    if (width <= 0 || height <= 0 || cutFor({ ...way, width, height }, piece) > longestCut) continue;
    if (!best || width * height > areaOf(best))
      best = way.turned ? { width: height, height: width } : { width, height };
  }
  return best;
}
