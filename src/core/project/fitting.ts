/**
 * An envelope for a card as the maker asks for it: found, or with the measures and flap finishes she gave. Joins solver
 * and finishes; knows no shelf.
 */
import { checkMeasures } from '#core/envelope/door.ts';
import { checkFinishes, finishFlaps } from '#core/envelope/finish.ts';
import type { Look, LookPaper } from '#core/envelope/fold.ts';
import { foldOf } from '#core/envelope/folds.ts';
import type { Card, Finishes, FitLimits, Notcher, Recipe, Want } from '#core/envelope/recipe.ts';
import { tryMeasures } from '#core/envelope/recipes.ts';
import { solvedEnvelope } from '#core/envelope/solved.ts';
import type { BlankWanted } from '#core/stash/shelf-search.ts';
import { accept, type Checked, refuse } from '#shared/checked.ts';
import type { Finish, FoldName } from '#shared/fold.ts';
import { type Length, length, type Units } from '#shared/length.ts';
import { type FinishTyped, finishField } from '#shared/schemas/finish.ts';
import type { Size } from '#shared/size.ts';

export interface FittingAsked {
  readonly card: Card;
  readonly notcher: Notcher;
  readonly want: Want;
  readonly limits: FitLimits;
  /** The fold she chose, with the blank of the recipe meant where there are several. */
  readonly fold?: FoldName | undefined;
  readonly blank?: Partial<Size> | undefined;
  /** Both or neither: measures of her own for the diagonal fold instead of the ones found. */
  readonly square?: Length | undefined;
  readonly start?: Length | undefined;
  readonly flapC: FinishTyped<Finish['shape'] | 'as proposed'>;
  readonly flapD: FinishTyped<Finish['shape'] | 'as proposed'>;
}

export interface Fitting {
  readonly recipe: Recipe;
  /** Best first; the recipe is among them unless she gave measures of her own. */
  readonly found: readonly Recipe[];
}

/**
 * What the shelf is searched for, the recipe's own blank unless another of its blanks is named. A square folded on the
 * diagonal may be cut with its print along or across, since it comes out at 45° either way; other folds show the print
 * as the recipe says. A look that shows the printed border needs it on the blank.
 */
export const blankWanted = (recipe: Recipe, look?: Look, blank: Size = recipe.blank): BlankWanted => ({
  width: blank.width,
  height: blank.height,
  mayTurn: recipe.fold === 'diagonal',
  ...(look?.border && { border: true }),
});

/** The looks that a paper can have, and the one picked; a printed border is left off until she picks where it shows. */
export function looksOn(
  recipe: Recipe,
  paper: LookPaper,
  picked?: string,
): { readonly looks: readonly Look[]; readonly look: Look | undefined } {
  const looks = foldOf(recipe).looks(recipe, paper);
  const plainest = paper.print.direction === 'one edge' ? undefined : looks[0];
  return { looks, look: looks.find(({ id }) => id === picked) ?? plainest };
}

/** Problems stand beside `square`, `start`, `cDepth`, `cMore`, `dDepth` and `dMore`. */
export function fitEnvelope(asked: FittingAsked, units: Units): Checked<Fitting> {
  const found = solvedEnvelope(asked);
  const measured = measuredRecipe(asked, chosenOf(found, asked), units);
  if (!measured.ok) return measured;
  const own = readFinishes(asked);
  if (!own.ok) return own;
  const checked = checkFinishes(measured.value, own.value, units);
  if (!checked.ok) return checked;
  const plain = Object.keys(own.value).length === 0;
  return accept({ recipe: plain ? measured.value : finishFlaps(measured.value, own.value), found });
}

/** Whether two envelopes are cut and set alike. */
export const sameMeasures = (one: Recipe, other: Recipe): boolean =>
  one.fold === other.fold &&
  one.blank.width === other.blank.width &&
  one.blank.height === other.blank.height &&
  one.starts[0] === other.starts[0];

/** The best, of the chosen fold where there is one, or the very one with the chosen blank while it is still among them. */
function chosenOf(found: readonly Recipe[], { fold: chosen, blank, square, start }: FittingAsked): Recipe {
  const fold = chosen ?? (square !== undefined || start !== undefined ? 'diagonal' : undefined);
  const ofFold = found.filter((one) => fold === undefined || one.fold === fold);
  const same = (one: Recipe): boolean =>
    one.blank.width === blank?.width && one.blank.height === blank.height;
  return ofFold.find(same) ?? ofFold[0] ?? found[0]!;
}

function measuredRecipe(asked: FittingAsked, best: Recipe, units: Units): Checked<Recipe> {
  const { card, notcher, square, start, limits } = asked;
  const fold = asked.fold ?? 'diagonal';
  if (fold !== 'diagonal' || (square === undefined && start === undefined)) return accept(best);
  if (square === undefined) return refuse('square', 'How long is the square’s side?');
  if (start === undefined) return refuse('start', 'Where does the first notch go?');
  const known = best.blank.width === square && best.starts[0] === start;
  if (known) return accept(best);
  const checked = checkMeasures({ card, notcher, square, start, limits }, units);
  return checked.ok ? accept(tryMeasures(checked.value)) : checked;
}

function readFinishes({ flapC, flapD }: FittingAsked): Checked<Finishes> {
  const [c, d] = [readFinish(flapC, 'c'), readFinish(flapD, 'd')];
  const problems = [c, d].flatMap((one) => (one.ok ? [] : one.problems));
  if (!c.ok || !d.ok) return { ok: false, problems };
  return accept({ ...(c.value && { C: c.value }), ...(d.value && { D: d.value }) });
}

function readFinish(
  { shape, depth, more }: FittingAsked['flapC'],
  flap: 'c' | 'd',
): Checked<Finish | undefined> {
  if (shape === 'as proposed') return accept(undefined);
  if (shape === 'pointed') return accept({ shape });
  if (shape === 'rounded') {
    return more === undefined
      ? refuse(finishField(flap, 'More'), 'Which radius?')
      : accept({ shape, radius: more });
  }
  if (depth === undefined) return refuse(finishField(flap, 'Depth'), 'How far from the score is it cut?');
  return accept(shape === 'straight' ? { shape, depth } : { shape, depth, taper: more ?? length(0) });
}
