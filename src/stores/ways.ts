/** What the shelf has for each fold's best envelope. Verb: `findWays(db, recipes)`. */
import { foldOf } from '#core/envelope/folds.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import { blankWanted } from '#core/project/fitting.ts';
import type { Piece } from '#core/stash/stash.ts';
import { rankWays, type Way } from '#core/stash/ways.ts';
import type { Size } from '#shared/size.ts';
import type { Database } from './database.ts';
import { findPieces } from './search.ts';

/** Best first. All blanks of an envelope come from one design, each from a piece of its own. */
export async function findWays(db: Database, recipes: readonly Recipe[]): Promise<readonly Way[]> {
  const ways: Way[] = [];
  for (const recipe of recipes) ways.push({ recipe, pieces: await piecesFor(db, recipe) });
  return rankWays(ways);
}

async function piecesFor(db: Database, recipe: Recipe): Promise<readonly Piece[]> {
  const [first, second] = foldOf(recipe).blanks(recipe);
  const { choices } = await findPieces(db, blankWanted(recipe, undefined, first));
  if (!second) return choices.slice(0, 1).map(({ piece }) => piece);
  for (const { piece } of choices) {
    const other = await otherPiece(db, recipe, second, piece);
    if (other) return [piece, other];
  }
  return [];
}

async function otherPiece(
  db: Database,
  recipe: Recipe,
  blank: Size,
  first: Piece,
): Promise<Piece | undefined> {
  const wanted = { ...blankWanted(recipe, undefined, blank), designs: [first.design.id] };
  const { choices } = await findPieces(db, wanted);
  const isFirst = (piece: Piece): boolean => piece.offcut?.id === first.offcut?.id;
  return choices.map(({ piece }) => piece).find((piece) => !isFirst(piece) || piece.count > 1);
}
