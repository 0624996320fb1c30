/** At which making steps lessons come up: at the first of each kind, in every fold. */
import { expect, test } from 'vitest';
import { foldOf } from '#core/envelope/folds.ts';
import { solveEnvelope } from '#core/envelope/recipes.ts';
import { momentAt } from '#core/project/lesson-moments.ts';
import { FOLD_NAMES } from '#shared/fold.ts';
import { CARD, RECIPE } from '#tests/support/cast.ts';

test.each(FOLD_NAMES)('in a %s fold each moment comes once, at its own kind of step', (fold) => {
  const recipe = solveEnvelope({ card: CARD, notcher: RECIPE.notcher }).find((one) => one.fold === fold)!;
  const steps = foldOf(recipe).steps(recipe, 'clockwise');
  const moments = steps.flatMap((step, at) => {
    const moment = momentAt(steps, at);
    if (moment) expect(step.kind).toBe(moment);
    return moment ?? [];
  });
  expect(moments).toEqual([...new Set(moments)]);
  expect(moments).toEqual(expect.arrayContaining(['cut', 'score', 'fold', 'glue']));
  expect(moments.includes('notch')).toBe(fold === 'diagonal');
});
