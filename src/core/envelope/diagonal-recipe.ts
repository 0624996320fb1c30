/**
 * Works a square and a start out into a whole recipe for the diagonal fold: flaps, seam, slips and warnings. Knows no
 * other measures than those it is given.
 */
import { add, type Length, roundToStep, times } from '#shared/length.ts';
import { worseFit } from '#shared/outcome.ts';
import { flapsOf } from './flaps.ts';
import { fitEitherWay, isPocket, type Pocketed, type Setting, twinOf } from './pocket.ts';
import type { Finishes, Recipe } from './recipe.ts';
import { seamOf } from './seam.ts';
import { slipsOf, survivesOf } from './slips.ts';
import { backOf, turnedSquareOf } from './turned-square.ts';
import { warningsOf } from './warnings.ts';

const MOST_STEPS = 500;

export function diagonalRecipe(found: Pocketed, setting: Setting, own: Finishes = {}): Recipe {
  const { square, start, pocket, clearance, fits, fit, cardTurned } = found;
  const { card, notcher, limits } = setting;
  const flaps = flapsOf(pocket, notcher, own);
  const measured = {
    blank: { width: square, height: square },
    starts: [start, twinOf(square, start, notcher)] as const,
    notcher,
  };
  const place = turnedSquareOf(measured);
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
    seam: seamOf(place, flaps),
    slips,
    survives: survivesOf(slips),
  };
  return { ...recipe, warnings: warningsOf(recipe, backOf(place, flaps)) };
}

/**
 * The start on the graduation that fits as well as any on the same square does, the nearest to the one given;
 * undefined where none fits better.
 */
export function nearestBetter(found: Pocketed, setting: Setting): Pocketed | undefined {
  let best = found;
  for (const start of startsFrom(found, setting)) {
    const other = fitEitherWay(found.square, start, setting);
    if (worseFit(best.fit, other.fit) !== other.fit) best = other;
  }
  return best === found ? undefined : best;
}

/** Every start on the graduation that leaves a pocket, nearest first; the ruler is not searched beyond its use. */
function startsFrom({ square, start }: Pocketed, { notcher }: Setting): Length[] {
  const { graduation } = notcher;
  const middle = roundToStep(start, graduation, 'nearest');
  const steps = Math.min(MOST_STEPS, Math.ceil(square / graduation));
  const away = Array.from({ length: steps }, (_, index) => index);
  return away
    .flatMap((index) => [add(middle, times(graduation, -index)), add(middle, times(graduation, index))])
    .filter((other) => other >= 0 && isPocket(square, other, notcher))
    .sort((one, other) => Math.abs(one - start) - Math.abs(other - start));
}
