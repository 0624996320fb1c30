/** What a project is being made to by now: its recipe with the start in use, and the look of its print. */
import { checkFinishes, finishFlaps } from '#core/envelope/finish.ts';
import type { Look } from '#core/envelope/fold.ts';
import { foldOf } from '#core/envelope/folds.ts';
import type { Finishes, Flap, Recipe, Turning } from '#core/envelope/recipe.ts';
import { tryMeasures } from '#core/envelope/recipes.ts';
import type { Design } from '#core/stash/stash.ts';
import type { Length } from '#shared/length.ts';
import type { Print } from '#shared/print.ts';
import type { Size } from '#shared/size.ts';
import type { Swatch } from '#shared/swatch.ts';
import type { Envelope, Project } from './journal.ts';

/** The recipe as planned, or with the pocket that a start changed after the trial piece really gives. */
export function recipeInUse({ recipe, start }: Pick<Project, 'recipe' | 'start'>): Recipe | null {
  return recipe && start !== null ? withStart(recipe, start) : recipe;
}

/** The same square with another start, her own finishes kept where they still can be cut. Throws where no pocket is left. */
export const withStart = (recipe: Recipe, start: Length): Recipe =>
  withMeasures(recipe, { square: recipe.blank.width, start });

/** Another square or start on the same tool, for the diagonal fold alone; otherwise as `withStart`. */
export function withMeasures(
  recipe: Recipe,
  { square, start }: { readonly square: Length; readonly start: Length },
): Recipe {
  if (square === recipe.blank.width && start === recipe.starts[0]) return recipe;
  const { card, notcher, limits } = recipe;
  const tried = tryMeasures({ card, notcher, square, start, limits });
  const own = ownFinishes(recipe);
  return checkFinishes(tried, own, { unit: 'in', step: 32 }).ok ? finishFlaps(tried, own) : tried;
}

/** The recipe that an envelope was really folded to, or will be. */
export const recipeOf = ({ recipe, start }: Project, envelope: Envelope): Recipe | null =>
  recipeInUse({ recipe, start: envelope.state === 'made' ? envelope.start : start });

/** Whether another start moves room from one side of the pocket to the other: so it is only on a diagonal fold. */
export const startMoves = ({ fold }: Recipe): boolean => fold === 'diagonal';

export const turningOf = ({ notcher }: Recipe): Turning => notcher.turning ?? 'clockwise';

/** A design as it shows on a project's envelopes. */
export interface PaperInUse {
  readonly look: Look;
  readonly piece: { readonly blank: Size; readonly print: Print; readonly swatch: Swatch };
}

/**
 * The chosen look, else the plainest. A printed border is on the blank only where the chosen look shows it: without
 * one the blanks are cut clear of it. Undefined where the fold has no look for such paper.
 */
export function paperInUse(
  { look: chosen }: Pick<Project, 'look'>,
  recipe: Recipe,
  design: Design,
): PaperInUse | undefined {
  const print: Print =
    design.print.direction === 'one edge' && !chosen?.border ? { direction: 'upright' } : design.print;
  const looks = foldOf(recipe).looks(recipe, { print, doubleSided: design.doubleSided });
  const look = looks.find(({ id }) => id === chosen?.id) ?? looks[0];
  return look && { look, piece: { blank: recipe.blank, print, swatch: design.swatch } };
}

/** What she finished otherwise than proposed. */
export function ownFinishes(recipe: Recipe): Finishes {
  const proposed = finishFlaps(recipe, {}).flaps;
  const differs = ({ letter, finish }: Flap): boolean =>
    JSON.stringify(proposed.find((one) => one.letter === letter)?.finish) !== JSON.stringify(finish);
  return Object.fromEntries(recipe.flaps.filter(differs).map(({ letter, finish }) => [letter, finish]));
}
