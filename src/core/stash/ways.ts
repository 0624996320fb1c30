/**
 * Ranks across folds by what the shelf holds: a side-seam from a strip that lies there may beat a diagonal that opens a
 * sheet. Knows no fold's measures.
 */
import type { Recipe } from '#core/envelope/recipe.ts';
import type { FoldName } from '#shared/fold.ts';
import type { Design, Piece } from './stash.ts';

/** An envelope with a piece for each of its blanks; none where the shelf cannot give them all. */
export interface Way {
  readonly recipe: Recipe;
  readonly pieces: readonly Piece[];
}

/** The best recipe of each fold, in the solver's order: what the shelf is asked about. */
export const firstOfEachFold = (found: readonly Recipe[]): readonly Recipe[] =>
  [...new Map<FoldName, Recipe>([...found].reverse().map((recipe) => [recipe.fold, recipe])).values()].sort(
    (one, other) => found.indexOf(one) - found.indexOf(other),
  );

/**
 * As wanted before otherwise, as the solver has them; among those that fit alike, what can be made at all, what opens
 * no sheet, then the solver's order.
 */
export function rankWays(ways: readonly Way[]): readonly Way[] {
  const best = ways[0]?.recipe.fit;
  const rank = ({ recipe, pieces }: Way): number =>
    (recipe.fit === best && recipe.warnings.length === 0 ? 0 : 4) +
    (pieces.length === 0 ? 2 : 0) +
    (opensSheet(pieces) ? 1 : 0);
  return [...ways].sort((one, other) => rank(one) - rank(other));
}

export const opensSheet = (pieces: readonly Piece[]): boolean => pieces.some(({ offcut }) => offcut === null);

/** The first piece that has another of its design beside it for the second blank, with that one; none where none has. */
export function withMate(
  firsts: readonly Piece[],
  matesIn: (design: Design) => readonly Piece[],
): readonly Piece[] {
  for (const first of firsts) {
    const isFirst = (piece: Piece): boolean => piece.offcut?.id === first.offcut?.id;
    const mate = matesIn(first.design).find((piece) => !isFirst(piece) || piece.count > 1);
    if (mate) return [first, mate];
  }
  return [];
}
