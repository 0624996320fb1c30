/**
 * One part alone on one piece: how many come off in plain rows, what cut that takes, and how large it could be. Knows no
 * plan and no other part.
 */
import { mayTurn, type Part, type Piece } from './order.ts';

interface Sides {
  readonly width: number;
  readonly height: number;
}

/** How many copies a piece gives in plain rows, lying either way; one where they are pinned. */
export function inRows(part: Part, piece: Piece, turning: boolean, longestCut: number): number {
  const rows = (width: number, height: number): number => {
    if (cutFor(width, height, part, piece) > longestCut) return 0;
    return part.pin ? 1 : Math.floor(piece.width / width) * Math.floor(piece.height / height);
  };
  const asIs = rows(part.width, part.height);
  return turning ? Math.max(asIs, rows(part.height, part.width)) : asIs;
}

/** The longest cut that takes the part from a whole piece; infinite where it does not fit. */
export function cutNeeded(part: Part, piece: Piece, turning: boolean): number {
  const asIs = cutFor(part.width, part.height, part, piece);
  return turning ? Math.min(asIs, cutFor(part.height, part.width, part, piece)) : asIs;
}

/** Of the two ways to go about it: all cuts across one side of the piece first, or all across the other. */
function cutFor(width: number, height: number, { pin }: Part, piece: Piece): number {
  const { x, y } = pin && 'x' in pin ? pin : { x: 0, y: 0 };
  if (x + width > piece.width || y + height > piece.height) return Number.POSITIVE_INFINITY;
  const [besides, beyond] = [width < piece.width, height < piece.height];
  const downFirst = Math.max(besides ? piece.height : 0, beyond ? width : 0);
  const acrossFirst = Math.max(beyond ? piece.width : 0, besides ? height : 0);
  return Math.min(downFirst, acrossFirst);
}

/** The largest size, by area, to which the part could be cut down, side by side, on some piece. */
export function largestThatFits(part: Part, pieces: readonly Piece[], longestCut: number): Sides | undefined {
  const { x, y } = part.pin && 'x' in part.pin ? part.pin : { x: 0, y: 0 };
  let best: Sides | undefined;
  for (const piece of pieces) {
    const [wide, high] = [piece.width - x, piece.height - y];
    const asIs = { width: Math.min(part.width, wide), height: Math.min(part.height, high) };
    const turned = { width: Math.min(part.width, high), height: Math.min(part.height, wide) };
    const ways = [
      { size: asIs, cut: cutFor(asIs.width, asIs.height, part, piece) },
      ...(mayTurn(part, piece)
        ? [{ size: turned, cut: cutFor(turned.height, turned.width, part, piece) }]
        : []),
    ];
    for (const { size, cut } of ways) {
      if (cut > longestCut || wide <= 0 || high <= 0) continue;
      if (!best || areaOf(size) > areaOf(best)) best = size;
    }
  }
  return best;
}

const areaOf = ({ width, height }: Sides): number => width * height;
