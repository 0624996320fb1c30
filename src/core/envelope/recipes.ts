/**
 * From a card and a tool to envelopes, best first; and from any chart's measures to the pocket they really give. The
 * public door of the solver: it checks what comes in, asks the folds named and ranks across them.
 */
import { FOLD_NAMES, type FoldName } from '#shared/fold.ts';
import { type Length, length } from '#shared/length.ts';
import { diagonalRecipe, nearestBetter } from './diagonal-recipe.ts';
import { assertCard, assertLimits, assertMeasures, assertNotcher, assertWant } from './door.ts';
import { DEFAULT_LIMITS } from './fit.ts';
import { FOLDS } from './folds.ts';
import { fitEitherWay } from './pocket.ts';
import { byRank, rankOf } from './ranking.ts';
import type { Card, FitLimits, Notcher, Recipe, Want } from './recipe.ts';
import { wishWarnings } from './warnings.ts';

export interface Asked {
  readonly card: Card;
  readonly notcher: Notcher;
  readonly want?: Want;
  readonly limits?: FitLimits;
  /** The folds to choose from; all of them when absent, the notcher's own before the others where they do as well. */
  readonly folds?: readonly FoldName[];
}

export interface Tried {
  readonly card: Card;
  readonly notcher: Notcher;
  readonly square: Length;
  readonly start: Length;
  readonly limits?: FitLimits;
}

/**
 * Recipes best first, at most a dozen for each fold, with every length an integer of 25 nm. The card lies as given:
 * pocket width along card width. Without a wish, easy is wanted. When nothing can be made the nearest come back with
 * warnings. Throws on what is not a card or a tool.
 */
export function solveEnvelope({
  card,
  notcher,
  want = {},
  limits = DEFAULT_LIMITS,
  folds = FOLD_NAMES,
}: Asked): Recipe[] {
  assertCard(card);
  assertNotcher(notcher);
  assertLimits(limits);
  assertWant(want);
  const taste = { want, limits, notcher };
  return folds
    .flatMap((fold) => FOLDS[fold].recipes({ card, notcher, want, limits }))
    .map((recipe) => ({ recipe: withWishes(recipe, want), rank: rankOf(recipe, taste) }))
    .sort((one, other) => byRank(one.rank, other.rank))
    .map(({ recipe }) => recipe);
}

/**
 * The pocket that a square and a start on the ruler really give, with `better`: the nearest start on the graduation
 * that fits as well as this square can, where that is better. A card that only goes in after a quarter turn is graded
 * that way round, with a warning. Throws where no pocket is left; `checkMeasures` asks first.
 */
export function tryMeasures({ card, notcher, square, start, limits = DEFAULT_LIMITS }: Tried): Recipe {
  assertMeasures({ card, notcher, square, start });
  assertLimits(limits);
  const setting = { card, notcher, limits };
  const found = fitEitherWay(length(square), length(start), setting);
  const better = nearestBetter(found, setting);
  return { ...diagonalRecipe(found, setting), ...(better && { better: diagonalRecipe(better, setting) }) };
}

const withWishes = (recipe: Recipe, want: Want): Recipe => ({
  ...recipe,
  warnings: [...recipe.warnings, ...wishWarnings(recipe, want)],
});
