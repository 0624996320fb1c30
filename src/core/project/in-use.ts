/** What a project is being made to by now: its recipe with the start in use, and the look of its print. */
import { checkFinishes, finishFlaps } from '#core/envelope/finish.ts';
import type { Look } from '#core/envelope/fold.ts';
import { foldOf } from '#core/envelope/folds.ts';
import type { Finishes, Flap, Recipe, Turning } from '#core/envelope/recipe.ts';
import { tryMeasures } from '#core/envelope/recipes.ts';
import type { Length } from '#shared/length.ts';
import type { Print } from '#shared/print.ts';
import type { CutRecord, Project } from './journal.ts';
import { type Design, ENVELOPE_PART } from './stash.ts';

/** The recipe as planned, or with the pocket that a start changed after the trial piece really gives. */
export function recipeInUse({ recipe, start }: Pick<Project, 'recipe' | 'start'>): Recipe | null {
  return recipe && start !== null ? withStart(recipe, start) : recipe;
}

/** The same square with another start, her own finishes kept where they still can be cut. Throws where no pocket is left. */
export function withStart(recipe: Recipe, start: Length): Recipe {
  if (start === recipe.starts[0]) return recipe;
  const { card, notcher, blank, limits } = recipe;
  const tried = tryMeasures({ card, notcher, square: blank.width, start, limits });
  const own = ownFinishes(recipe);
  return checkFinishes(tried, own, { unit: 'in', step: 32 }).ok ? finishFlaps(tried, own) : tried;
}

export const turningOf = ({ notcher }: Recipe): Turning => notcher.turning ?? 'clockwise';

/** The chosen look, which a project keeps by its id, alone or inside a whole look; else the plainest one. */
export function lookInUse(
  { look }: Pick<Project, 'look'>,
  recipe: Recipe,
  paper: Pick<Design, 'print' | 'doubleSided'>,
): Look | undefined {
  const chosen = typeof look === 'string' ? look : (look as { id?: unknown } | null)?.id;
  const looks = foldOf(recipe).looks(recipe, paper);
  return looks.find(({ id }) => id === chosen) ?? looks[0];
}

/** How the print lies on the blank: a border is only on one that was cut from the piece's bottom edge. */
export function printOnBlank({ print }: Design, cut: CutRecord | undefined): Print {
  if (print.direction !== 'one edge') return print;
  const atEdge = cut?.pieces.some(({ height, parts }) =>
    parts.some((one) => one.part === ENVELOPE_PART && !one.turned && one.y + one.height === height),
  );
  return atEdge ? print : { direction: 'upright' };
}

/** What she finished otherwise than proposed. */
function ownFinishes(recipe: Recipe): Finishes {
  const proposed = finishFlaps(recipe, {}).flaps;
  const differs = ({ letter, finish }: Flap): boolean =>
    JSON.stringify(proposed.find((one) => one.letter === letter)?.finish) !== JSON.stringify(finish);
  return Object.fromEntries(recipe.flaps.filter(differs).map(({ letter, finish }) => [letter, finish]));
}
