/** What the shelf has for each fold's best envelope. Verb: `findWays(db, shelf, firsts)`. */
import { foldOf } from '#core/envelope/folds.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import { blankWanted } from '#core/project/fitting.ts';
import type { Choice } from '#core/stash/shelf-search.ts';
import type { Design } from '#core/stash/stash.ts';
import { type Way, withMate } from '#core/stash/ways.ts';
import type { Database } from './database.ts';
import { findChoices, type Shelf } from './search.ts';

/** An envelope with what its first blank may be cut from, best first. */
export interface First {
  readonly recipe: Recipe;
  readonly choices: readonly Choice[];
}

/** In the order asked. All blanks of an envelope come from one design, each from a piece of its own. */
export async function findWays(db: Database, shelf: Shelf, firsts: readonly First[]): Promise<Way[]> {
  const second = ({ recipe }: First) => foldOf(recipe).blanks(recipe)[1];
  const asked = firsts.flatMap((first) => {
    const blank = second(first);
    if (!blank) return [];
    const wanted = blankWanted(first.recipe, undefined, blank);
    return designsOf(first).map((design) => ({ first, design, wanted: { ...wanted, designs: [design.id] } }));
  });
  const found = await findChoices(
    db,
    shelf,
    asked.map(({ wanted }) => wanted),
    { limit: 2 },
  );
  const matesOf = (first: First) => (design: Design) =>
    (found[asked.findIndex((one) => one.first === first && one.design.id === design.id)]?.choices ?? []).map(
      ({ piece }) => piece,
    );
  return firsts.map((first) => {
    const pieces = first.choices.map(({ piece }) => piece);
    return {
      recipe: first.recipe,
      pieces: second(first) ? withMate(pieces, matesOf(first)) : pieces.slice(0, 1),
    };
  });
}

const designsOf = ({ choices }: First): Design[] => [
  ...new Map(choices.map(({ piece }) => [piece.design.id, piece.design])).values(),
];
