/**
 * One part alone on one piece: how many come off in plain rows, what cut that takes, and how large it could be. Knows no
 * plan and no other part.
 */
import { areaOf } from '#shared/size.ts';
import type { Part } from '../order.ts';

/** A part and the place of its corner on the piece, where it has one. */
export interface Lone {
  readonly width: number;
  readonly height: number;
  readonly x: number;
  readonly y: number;
  readonly pinned: boolean;
}

export function lone({ width, height, pin }: Part): Lone {
  const { x, y } = pin && 'x' in pin ? pin : { x: 0, y: 0 };
  return { width, height, x, y, pinned: pin !== undefined };
}

/** How many copies a piece of so much width and height gives in plain rows, lying either way; one where pinned. */
export function inRows(part: Lone, turning: boolean, wide: number, high: number, longestCut: number): number {
  const asIs = rowsOf(part.width, part.height, part, wide, high, longestCut);
  return turning ? Math.max(asIs, rowsOf(part.height, part.width, part, wide, high, longestCut)) : asIs;
}

function rowsOf(
  width: number,
  height: number,
  { x, y, pinned }: Lone,
  wide: number,
  high: number,
  longestCut: number,
): number {
  if (cutFor(width, height, x, y, wide, high) > longestCut) return 0;
  return pinned ? 1 : Math.floor(wide / width) * Math.floor(high / height);
}

/** The longest cut that takes the part from a whole piece; infinite where it does not fit. */
export function cutNeeded(part: Lone, turning: boolean, wide: number, high: number): number {
  const { width, height, x, y } = part;
  const asIs = cutFor(width, height, x, y, wide, high);
  return turning ? Math.min(asIs, cutFor(height, width, x, y, wide, high)) : asIs;
}

/** Of the two ways to go about it: all cuts across one side of the piece first, or all across the other. */
function cutFor(width: number, height: number, x: number, y: number, wide: number, high: number): number {
  if (x + width > wide || y + height > high) return Number.POSITIVE_INFINITY;
  const besides = width < wide;
  const beyond = height < high;
  const downFirst = Math.max(besides ? high : 0, beyond ? width : 0);
  const acrossFirst = Math.max(beyond ? wide : 0, besides ? height : 0);
  return Math.min(downFirst, acrossFirst);
}

interface Sides {
  readonly width: number;
  readonly height: number;
}

/** The size, side by side, to which the part could be cut down to come from the piece; undefined where there is none. */
export function sizeThatFits(
  part: Lone,
  turning: boolean,
  wide: number,
  high: number,
  longestCut: number,
): Sides | undefined {
  const [w, h] = [wide - part.x, high - part.y];
  const asIs = { width: Math.min(part.width, w), height: Math.min(part.height, h) };
  const turned = { width: Math.min(part.width, h), height: Math.min(part.height, w) };
  const cuts = (one: Lone): boolean => cutNeeded(one, false, wide, high) <= longestCut;
  if (w <= 0 || h <= 0) return undefined;
  const first = cuts({ ...part, ...asIs }) ? asIs : undefined;
  const other = { ...part, width: turned.height, height: turned.width };
  if (!turning || !cuts(other)) return first;
  return first && areaOf(first) >= areaOf(turned) ? first : turned;
}
