/** Finishes a recipe's flaps as the maker likes and shows what that does to the seam. Knows no measures of her choosing. */
import { accept, type Checked, type Problem } from '#shared/checked.ts';
import type { Units } from '#shared/length.ts';
import { finishField } from '#shared/schemas/finish.ts';
import { FLAP_LETTERS } from './flaps.ts';
import type { FinishProblem } from './fold.ts';
import { foldOf } from './folds.ts';
import { openBack } from './open-back.ts';
import type { Finishes, FlapLetter, Recipe, Warning } from './recipe.ts';
import { WISH_WARNINGS } from './warnings.ts';

/** The same recipe with her own finishes; flaps she does not name keep the proposed one. Throws on an impossible one. */
export function finishFlaps(recipe: Recipe, own: Finishes): Recipe {
  const finished = foldOf(recipe).finish(recipe, own);
  const wishes = recipe.warnings.filter(({ kind }) => WISH_WARNINGS.includes(kind));
  return {
    ...finished,
    warnings: [...finished.warnings, ...wishes],
    ...(recipe.better && { better: recipe.better }),
  };
}

/** Where its finishes leave its back open, told of recipes kept before they carried this warning too. */
export const openBackOf = (recipe: Recipe): Warning | undefined =>
  openBack(foldOf(recipe).folded(recipe).back);

/** Whether such finishes can be cut at all; problems stand beside `cDepth`, `cMore` and the like. */
export function checkFinishes(recipe: Recipe, own: Finishes, units: Units): Checked<Finishes> {
  const problems = FLAP_LETTERS.flatMap((letter) => {
    const finish = own[letter];
    const wrong = finish && foldOf(recipe).finishProblem(recipe, letter, finish, units);
    return wrong ? [besideMeasure(letter, wrong)] : [];
  });
  return problems.length > 0 ? { ok: false, problems } : accept(own);
}

const besideMeasure = (letter: FlapLetter, { measure, message }: FinishProblem): Problem => ({
  field: finishField(letter, measure === 'depth' ? 'Depth' : 'More'),
  message,
});
