/**
 * Which pieces are looked at where more would do than can be planned from at once. Knows their sizes; what suits is said
 * by suits.ts.
 */
import type { Piece } from '#core/cutting/order.ts';
import { areaOf } from '#shared/size.ts';

/** More kinds of piece than this are not planned at once. */
const MOST_PIECES = 1500;

/** The pieces looked at, and how many would do; what is to be kept comes last and counts for neither. */
export interface Suitable<Offered extends Piece> {
  readonly pieces: readonly Offered[];
  readonly suitable: number;
}

/**
 * The pieces that suit some of so many parts. Where they are too many each part has an equal share, sheets before offcuts
 * and the smallest first, and what is left of the shares goes to the first of the others.
 */
export function suitableFor<Offered extends Piece>(
  parts: number,
  pieces: readonly Offered[],
  suits: (part: number, piece: Offered) => boolean,
): Suitable<Offered> {
  const numbers = Array.from({ length: parts }, (_, part) => part);
  const all = smallestFirst(pieces.filter((piece) => numbers.some((part) => suits(part, piece))));
  const [free, kept] = [all.filter(({ keep }) => !keep), all.filter(({ keep }) => keep)];
  const share = Math.floor(MOST_PIECES / Math.max(1, parts));
  const chosen = new Set(
    numbers.flatMap((part) => free.filter((piece) => suits(part, piece)).slice(0, share)),
  );
  for (const piece of free) if (chosen.size < MOST_PIECES) chosen.add(piece);
  const looked = [...free.filter((piece) => chosen.has(piece)), ...kept];
  return { pieces: looked.slice(0, MOST_PIECES), suitable: free.length };
}

const smallestFirst = <Offered extends Piece>(pieces: readonly Offered[]): Offered[] =>
  pieces.toSorted(
    (one, other) =>
      Number(other.kind === 'sheet') - Number(one.kind === 'sheet') || areaOf(one) - areaOf(other),
  );
