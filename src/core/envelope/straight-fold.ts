/** Makes a form with straight sides into a fold: everything but the order of work follows from the form. */
import type { Fold, Look, Step } from './fold.ts';
import type { Recipe } from './recipe.ts';
import type { Form } from './straight-form.ts';
import { flatLayouts, foldedLayout } from './straight-layout.ts';
import { straightLooks } from './straight-looks.ts';
import {
  blanksOf,
  finishStraight,
  straightFinishProblem,
  straightOf,
  straightRecipes,
} from './straight-recipe.ts';

export const straightFold = (form: Form, steps: (recipe: Recipe, look?: Look) => readonly Step[]): Fold => ({
  name: form.name,
  fronts: ['across', 'along'],
  recipes: (question) => straightRecipes(form, question),
  blanks: (recipe) => blanksOf(form, straightOf(recipe), recipe.front),
  flat: (recipe) => flatLayouts(form, straightOf(recipe)),
  folded: (recipe) => foldedLayout(form, straightOf(recipe), recipe),
  steps: (recipe, _turning, look) => steps(recipe, look),
  finish: (recipe, own) => finishStraight(form, recipe, own),
  finishProblem: straightFinishProblem,
  looks: (recipe, paper) => straightLooks(form, recipe, paper),
});
