/** Where an envelope was made otherwise than its recipe says, and which came out alike. Knows no words. */
import type { Finishes, FlapLetter, Recipe } from '#core/envelope/recipe.ts';
import type { Length } from '#shared/length.ts';
import type { Envelope, Outcome } from './journal.ts';

/** Only what differs is there. `start` is what the ruler read; `twin` says that it was measured from the other corner. */
export interface AsMade {
  readonly square?: Length;
  readonly start?: Length;
  readonly twin: boolean;
  readonly finishes?: Finishes;
}

/** Undefined where nothing differs from the recipe in use. */
export function asMade(recipe: Recipe, { asMade: measures, twin, finishes }: Outcome): AsMade | undefined {
  const square = measures && measures.square !== recipe.blank.width ? measures.square : undefined;
  const start = measures && measures.start !== recipe.starts[twin ? 1 : 0] ? measures.start : undefined;
  const own = finishes && otherFinishes(recipe, finishes);
  if (square === undefined && start === undefined && !own) return undefined;
  return {
    twin,
    ...(square !== undefined && { square }),
    ...(start !== undefined && { start }),
    ...(own && { finishes: own }),
  };
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

const tale = ({ state, trial, outcome }: Envelope): string =>
  JSON.stringify([state, trial, outcome && { ...outcome, at: '' }]);
