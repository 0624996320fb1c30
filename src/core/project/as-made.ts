/** Where an envelope was made otherwise than its recipe says, and which came out alike. Knows no words. */
import { checkFinishes, finishFlaps, openBackOf } from '#core/envelope/finish.ts';
import type { Finishes, FlapLetter, Recipe, Warning } from '#core/envelope/recipe.ts';
import type { Length } from '#shared/length.ts';
import { recipeInUse, recipeOf } from './in-use.ts';
import type { Envelope, Project } from './journal.ts';

/** Only what differs is there. `start` is what the ruler read; `twin` says that it was measured from the other corner. */
export interface AsMade {
  readonly square?: Length;
  readonly start?: Length;
  readonly twin: boolean;
  readonly finishes?: Finishes;
}

/** Undefined where nothing differs from `recipe`, which is the one in use unless another is named. */
export function asMade(
  project: Project,
  envelope: Envelope,
  recipe: Recipe | null = recipeInUse(project),
): AsMade | undefined {
  const own = recipeOf(project, envelope);
  if (!recipe || !own) return undefined;
  const { asMade: measures = null, twin = false, finishes = null } = envelope.outcome ?? {};
  const corner = twin ? 1 : 0;
  const square = measures?.square ?? recipe.blank.width;
  const start = measures?.start ?? own.starts[corner];
  const others = finishes && otherFinishes(recipe, finishes);
  const differs = {
    ...(square !== recipe.blank.width && { square }),
    ...(start !== recipe.starts[corner] && { start }),
    ...(others && { finishes: others }),
  };
  return Object.keys(differs).length > 0 ? { twin, ...differs } : undefined;
}

/** Where an envelope's back is open, as its recipe finishes the flaps or as hers really came out. */
export function leftOpen(project: Project, envelope: Envelope): Warning | undefined {
  const recipe = recipeOf(project, envelope);
  const finishes = recipe && asMade(project, envelope)?.finishes;
  if (!recipe || !finishes) return recipe ? openBackOf(recipe) : undefined;
  const all = {
    ...Object.fromEntries(recipe.flaps.map(({ letter, finish }) => [letter, finish])),
    ...finishes,
  };
  return checkFinishes(recipe, all, { unit: 'mm' }).ok ? openBackOf(finishFlaps(recipe, all)) : undefined;
}

/** Neighbours of one state whose outcomes read the same, so that a batch is told in a line or two. */
export function alike(envelopes: readonly Envelope[]): Envelope[][] {
  const groups: Envelope[][] = [];
  for (const envelope of envelopes) {
    const last = groups.at(-1);
    if (last && tale(last[0]!) === tale(envelope)) last.push(envelope);
    else groups.push([envelope]);
  }
  return groups;
}

function otherFinishes(recipe: Recipe, finishes: Finishes): Finishes | undefined {
  const other = Object.entries(finishes).filter(
    ([letter, finish]) => JSON.stringify(finishOf(recipe, letter as FlapLetter)) !== JSON.stringify(finish),
  );
  return other.length > 0 ? Object.fromEntries(other) : undefined;
}

const finishOf = (recipe: Recipe, letter: FlapLetter) =>
  recipe.flaps.find((flap) => flap.letter === letter)?.finish;

/** The start in use says nothing beside the one that was really read. */
const tale = ({ state, trial, start, outcome }: Envelope): string =>
  JSON.stringify([state, trial, outcome?.asMade ? null : start, outcome && { ...outcome, at: '' }]);
