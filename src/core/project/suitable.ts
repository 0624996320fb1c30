/**
 * Which pieces an order may be cut from, and which of them are looked at where there are too many to plan at once. Knows
 * sizes and paper; plans nothing.
 */
import { mayTurn, type Part, type Piece, suits } from '#core/cutting/order.ts';
import { areaOf } from '#shared/size.ts';

/** More kinds of piece than this are not planned at once. */
const MOST_PIECES = 1500;

/** The pieces looked at, and how many would do; what is to be kept comes last and counts for neither. */
export interface Suitable {
  readonly pieces: readonly Piece[];
  readonly suitable: number;
}

/**
 * The pieces that some part may come from. Where they are too many each part has an equal share, sheets before offcuts
 * and the smallest first, and what is left of the shares goes to the first of the others.
 */
export function suitableFor(parts: readonly Part[], pieces: readonly Piece[]): Suitable {
  const all = smallestFirst(pieces.filter((piece) => parts.some((part) => canHold(part, piece))));
  const [free, kept] = [all.filter(({ keep }) => !keep), all.filter(({ keep }) => keep)];
  const share = Math.floor(MOST_PIECES / Math.max(1, parts.length));
  const chosen = new Set(
    parts.flatMap((part) => free.filter((piece) => canHold(part, piece)).slice(0, share)),
  );
  for (const piece of free) if (chosen.size < MOST_PIECES) chosen.add(piece);
  const looked = [...free.filter((piece) => chosen.has(piece)), ...kept];
  return { pieces: looked.slice(0, MOST_PIECES), suitable: free.length };
}

/** Whether the part comes out of the piece as far as paper and size go. */
export function canHold(part: Part, piece: Piece): boolean {
  if (!suits(part, piece)) return false;
  const { x, y } = part.pin && 'x' in part.pin ? part.pin : { x: 0, y: 0 };
  const holds = (width: number, height: number): boolean =>
    x + width <= piece.width && y + height <= piece.height;
  return holds(part.width, part.height) || (mayTurn(part, piece) && holds(part.height, part.width));
}

const smallestFirst = (pieces: readonly Piece[]): Piece[] =>
  pieces.toSorted(
    (one, other) =>
      Number(other.kind === 'sheet') - Number(one.kind === 'sheet') || areaOf(one) - areaOf(other),
  );
