/** A project's working measures as plain text, to be copied or written off. Knows no markup. */
import { foldOf } from '#core/envelope/folds.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import { startMoves } from '#core/project/in-use.ts';
import type { WorkingMeasures } from '#core/project/working-measures.ts';
import type { Units } from '#shared/length.ts';
import { inBoth, sizeInBoth } from '../common/both-units.ts';
import { finely } from '../common/finely.ts';
import { sayFinish } from '../common/finish.ts';
import { SAY_FIT } from '../common/fit.ts';
import { SAY_KNOWN } from './words.ts';

export function measuresText(title: string, working: WorkingMeasures, units: Units): string {
  const { recipe, pocket, fit, known } = working;
  const { card } = recipe;
  return [
    title,
    `Card: ${sizeInBoth(card, units)}, ${finely(card.bulk, units)} thick`,
    ...cutAndSet(recipe, units),
    ...recipe.flaps
      .filter(({ finish }) => finish.shape !== 'pointed')
      .map(({ letter, finish }) => `Flap ${letter}: ${sayFinish(finish, units)}`),
    `Pocket: ${sizeInBoth(pocket, units)}`,
    `The card ${SAY_FIT[fit]}; ${SAY_KNOWN[known]}.`,
  ].join('\n');
}

const cutAndSet = (recipe: Recipe, units: Units): string[] => [
  ...foldOf(recipe)
    .blanks(recipe)
    .map((blank) =>
      blank.width === blank.height
        ? `Square: ${inBoth(blank.width, units)}`
        : `Blank: ${sizeInBoth(blank, units)}`,
    ),
  ...(startMoves(recipe)
    ? [`Start: ${inBoth(recipe.starts[0], units)}, twin ${inBoth(recipe.starts[1], units)}`]
    : []),
];
