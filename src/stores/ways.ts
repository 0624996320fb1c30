/** What the shelf has for each fold's best envelope. Verb: `findWays(db, shelf, firsts)`. */
import { foldOf } from '#core/envelope/folds.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import { blankWanted } from '#core/project/fitting.ts';
import type { Choice } from '#core/stash/shelf-search.ts';
import type { Piece } from '#core/stash/stash.ts';
import { type Way, withMate } from '#core/stash/ways.ts';
import type { Size } from '#shared/size.ts';
import type { Database } from './database.ts';
import { findInEach, type Shelf } from './search.ts';

/** An envelope with what its first blank may be cut from, best first. */
export interface First {
  readonly recipe: Recipe;
  readonly choices: readonly Choice[];
}

/** In the order asked. All blanks of an envelope come from one design, each from a piece of its own. */
export async function findWays(db: Database, shelf: Shelf, firsts: readonly First[]): Promise<Way[]> {
  const ways: Way[] = [];
  for (const { recipe, choices } of firsts) {
    const [, second] = foldOf(recipe).blanks(recipe);
    const pieces = choices.map(({ piece }) => piece);
    ways.push({
      recipe,
      pieces: second ? await withMateOn(db, shelf, { recipe, second, pieces }) : pieces.slice(0, 1),
    });
  }
  return ways;
}

async function withMateOn(
  db: Database,
  shelf: Shelf,
  {
    recipe,
    second,
    pieces,
  }: { readonly recipe: Recipe; readonly second: Size; readonly pieces: readonly Piece[] },
): Promise<readonly Piece[]> {
  if (pieces.length === 0) return [];
  const designs = [...new Set(pieces.map(({ design }) => design.id))];
  const mates = await findInEach(db, shelf, { ...blankWanted(recipe, undefined, second), designs });
  return withMate(pieces, ({ id }) => mates.filter((mate) => mate.design.id === id));
}
