/**
 * Works a square and a start out into a whole recipe for the diagonal fold: flaps, seam, slips and warnings. Knows no
 * other measures than those it is given.
 */
import { add, type Length, roundToStep, times } from '#shared/length.ts';
import type { Fit } from '#shared/outcome.ts';
import { worseFit } from '#shared/outcome.ts';
import { flapsOf } from './flaps.ts';
import { fitEitherWay, type Pocketed, type Setting, twinOf } from './pocket.ts';
import type { Finishes, Recipe } from './recipe.ts';
import { seamOf } from './seam.ts';
import { slipsOf, survivesOf } from './slips.ts';
import { turnedSquareOf } from './turned-square.ts';
import { warningsOf } from './warnings.ts';

const WIDEST_SEARCH = 400;

export function diagonalRecipe(found: Pocketed, setting: Setting, own: Finishes = {}): Recipe {
  const { square, start, pocket, clearance, fits, fit, cardTurned } = found;
  const { card, notcher, limits } = setting;
  const flaps = flapsOf(pocket, notcher, own);
  const measured = {
    blank: { width: square, height: square },
    starts: [start, twinOf(square, start, notcher)] as const,
    notcher,
  };
  const slips = slipsOf(found, setting);
  const recipe = {
    fold: 'diagonal' as const,
    card,
    limits,
    ...measured,
    pocket,
    clearance,
    fits,
    fit,
    cardTurned,
    front: 'diagonal' as const,
    flaps,
    seam: seamOf(turnedSquareOf(measured), flaps),
    slips,
    survives: survivesOf(slips),
  };
  return { ...recipe, warnings: warningsOf(recipe) };
}

/**
 * The start on the graduation that fits as well as any on the same square does, the nearest to the one given;
 * undefined where none fits better.
 */
export function nearestBetter(found: Pocketed, setting: Setting): Pocketed | undefined {
  const others = startsFrom(found, setting).map((start) => fitEitherWay(found.square, start, setting));
  const best = others.reduce<Fit>((fit, other) => betterFit(fit, other.fit), found.fit);
  return best === found.fit ? undefined : others.find(({ fit }) => fit === best);
}

/** Every start on the graduation that leaves a pocket, nearest first. */
function startsFrom({ square, start }: Pocketed, { notcher }: Setting): Length[] {
  const { graduation, inset, zeroOffset } = notcher;
  const [first, last] = [Math.max(0, inset - zeroOffset + 1), square - inset - zeroOffset - 1];
  const middle = roundToStep(start, graduation, 'nearest');
  return Array.from({ length: 2 * WIDEST_SEARCH + 1 }, (_, index) =>
    add(middle, times(graduation, index - WIDEST_SEARCH)),
  )
    .filter((other) => other >= first && other <= last)
    .sort((one, other) => Math.abs(one - start) - Math.abs(other - start));
}

const betterFit = (one: Fit, other: Fit): Fit => (worseFit(one, other) === one ? other : one);
