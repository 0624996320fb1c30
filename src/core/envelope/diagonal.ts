/** The diagonal fold: a square with its corners folded to the middle. Joins its parts behind the one interface. */
import { diagonalFinishProblem } from './diagonal-finish.ts';
import { diagonalFlat, diagonalFolded } from './diagonal-layout.ts';
import { diagonalRecipe } from './diagonal-recipe.ts';
import { findMeasures } from './diagonal-search.ts';
import { diagonalSteps } from './diagonal-steps.ts';
import type { Fold } from './fold.ts';
import { diagonalLooks } from './looks.ts';
import { flapAt } from './turned-square.ts';

export const diagonal: Fold = {
  name: 'diagonal',
  fronts: ['diagonal'],
  recipes: (question) => findMeasures(question).map((found) => diagonalRecipe(found, question)),
  blanks: ({ blank }) => [blank],
  flat: (recipe, turning = recipe.notcher.turning ?? 'anticlockwise') => [diagonalFlat(recipe, turning)],
  folded: diagonalFolded,
  steps: diagonalSteps,
  looks: diagonalLooks,
  finish: (recipe, own) =>
    diagonalRecipe({ ...recipe, square: recipe.blank.width, start: recipe.starts[0] }, recipe, own),
  finishProblem: (recipe, letter, finish, units) =>
    diagonalFinishProblem(flapAt(recipe.flaps, letter), finish, units),
};
