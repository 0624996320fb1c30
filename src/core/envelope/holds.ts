/**
 * The other way round: what a piece of paper can hold, folded diagonally on the maker's tool. Knows pieces by their
 * size only, not where they lie or how often.
 */
import { type Length, length, roundLength, roundToStep, times } from '#shared/length.ts';
import type { WantedFit } from '#shared/outcome.ts';
import { areaOf, type Size, shorter } from '#shared/size.ts';
import { diagonalRecipe } from './diagonal-recipe.ts';
import { searchStep } from './diagonal-search.ts';
import { assertCard, assertLimits, assertNotcher } from './door.ts';
import { DEFAULT_LIMITS, leastClearance, THIN_BULK } from './fit.ts';
import { fitLying, isPocket, pocketOf, type Setting } from './pocket.ts';
import { EASY } from './ranking.ts';
import type { Card, FitLimits, Notcher, Recipe } from './recipe.ts';
import { solveEnvelope } from './recipes.ts';

export interface Holding {
  readonly piece: Size;
  readonly notcher: Notcher;
  readonly fit?: WantedFit;
  readonly limits?: FitLimits;
}

/** Which of these cards find an envelope of the wanted fit in the piece, with the best recipe for each; in their order. */
export function cardsHeld<T extends Card>(
  cards: readonly T[],
  { piece, notcher, fit = EASY, limits = DEFAULT_LIMITS }: Holding,
): { readonly card: T; readonly recipe: Recipe }[] {
  const square = largestSquare(piece, notcher);
  if (square <= 0) return [];
  return cards.flatMap((card) => {
    const recipes = solveEnvelope({
      card,
      notcher: { ...notcher, largestSheet: square },
      want: { fit },
      limits,
      folds: ['diagonal'],
    });
    const recipe = recipes.find((one) => one.fit === fit && one.blank.width <= square);
    return recipe ? [{ card, recipe: { ...recipe, notcher } }] : [];
  });
}

/**
 * The largest card of a proportion that the piece holds at the wanted fit, on the ruler's graduation; without a
 * proportion, the one with the greatest area. Undefined when there is no room for any.
 */
export function largestCard({
  piece,
  notcher,
  fit = EASY,
  limits = DEFAULT_LIMITS,
  bulk = THIN_BULK,
  like,
}: Holding & { readonly bulk?: Length; readonly like?: Size }): Recipe | undefined {
  assertNotcher(notcher);
  assertLimits(limits);
  const square = largestSquare(piece, notcher);
  const least = leastClearance(fit, limits);
  const cards = possibleStarts(square, notcher).map((start) => {
    const pocket = pocketOf(square, start, notcher);
    const room = { width: pocket.width - least - bulk, height: pocket.height - least - bulk };
    return { start, card: { ...largestIn(room, like), bulk } };
  });
  const [best] = cards.sort((one, other) => areaOf(other.card) - areaOf(one.card));
  if (!best || areaOf(best.card) === 0) return undefined;
  assertCard(best.card);
  const setting: Setting = { card: best.card, notcher, limits };
  return diagonalRecipe(fitLying(square, best.start, setting, false), setting);
}

const largestSquare = (piece: Size, { largestSheet, graduation }: Notcher): Length =>
  roundToStep(Math.min(shorter(piece), largestSheet), graduation, 'down');

function possibleStarts(square: Length, notcher: Notcher): Length[] {
  const step = searchStep(notcher);
  const count = Math.max(0, Math.floor((square - notcher.zeroOffset) / step));
  return Array.from({ length: count }, (_, index) => times(step, index)).filter((start) =>
    isPocket(square, start, notcher),
  );
}

/** The largest rectangle of a proportion in the room there is; nothing where there is none. */
function largestIn(room: { width: number; height: number }, like?: Size): Size {
  const [width, height] = [Math.max(0, room.width), Math.max(0, room.height)];
  if (!like) return { width: length(width), height: length(height) };
  const scale = Math.min(width / like.width, height / like.height);
  return { width: roundLength(like.width * scale, 'down'), height: roundLength(like.height * scale, 'down') };
}
