/** Finishes a recipe's flaps as the maker likes and shows what that does to the seam. Knows no measures of her choosing. */
import { accept, type Checked, type Problem } from '#shared/checked.ts';
import { printLength, type Units } from '#shared/length.ts';
import { diagonalRecipe } from './diagonal-recipe.ts';
import { FLAP_LETTERS } from './flaps.ts';
import type { Finish, Finishes, Flap, Recipe } from './recipe.ts';
import { WISH_WARNINGS } from './warnings.ts';

/** The same recipe with her own finishes; flaps she does not name keep the proposed one. Throws on an impossible one. */
export function finishFlaps(recipe: Recipe, own: Finishes): Recipe {
  const [start] = recipe.starts;
  const finished = diagonalRecipe({ ...recipe, square: recipe.blank.width, start }, recipe, own);
  const wishes = recipe.warnings.filter(({ kind }) => WISH_WARNINGS.includes(kind));
  return {
    ...finished,
    warnings: [...finished.warnings, ...wishes],
    ...(recipe.better && { better: recipe.better }),
  };
}

/** Whether such finishes can be cut at all; problems stand beside the flap's letter. */
export function checkFinishes(recipe: Recipe, own: Finishes, units: Units): Checked<Finishes> {
  const problems = FLAP_LETTERS.flatMap((letter) => {
    const flap = recipe.flaps.find((one) => one.letter === letter)!;
    const finish = own[letter];
    const message = finish && problemWith(finish, flap, units);
    return message ? [{ field: letter, message } satisfies Problem] : [];
  });
  return problems.length > 0 ? { ok: false, problems } : accept(own);
}

function problemWith(finish: Finish, flap: Flap, units: Units): string | undefined {
  if (finish.shape === 'pointed') return undefined;
  if (finish.shape === 'rounded') {
    const most = Math.floor(flap.score / Math.SQRT2);
    return finish.radius > 0 && finish.radius <= most
      ? undefined
      : 'The radius has to be smaller than the flap.';
  }
  if (finish.depth <= 0 || finish.depth > flap.depth) {
    return `The cut has to lie within ${printLength(flap.depth, units, 'down')} of the score.`;
  }
  if (finish.shape === 'straight' || (finish.taper >= 0 && finish.taper <= cutEnd(flap, finish.depth) / 2))
    return undefined;
  return 'The taper takes more than there is at the cut’s end.';
}

/** How wide the flap is at a depth: it narrows by two for every one beyond its shoulders. */
const cutEnd = (flap: Flap, depth: number): number => Math.min(flap.score, 2 * (flap.depth - depth));
