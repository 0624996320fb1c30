/**
 * What an envelope is known by once it was made: the measures that worked, how they are known and how the card sat.
 * Every page, template and later project takes them from here. Knows no words and no database.
 */
import { checkMeasures } from '#core/envelope/door.ts';
import { checkFinishes, finishFlaps } from '#core/envelope/finish.ts';
import { goesFreely, gradePocket } from '#core/envelope/fit.ts';
import type { Finishes, Recipe } from '#core/envelope/recipe.ts';
import type { Length } from '#shared/length.ts';
import { FITS, FITS_FROM_BEST, type Fit, WANTED_FITS } from '#shared/outcome.ts';
import { type Size, turned } from '#shared/size.ts';
import { sameMeasures } from './fitting.ts';
import { ownFinishes, recipeInUse, recipeOf, startMoves, withMeasures } from './in-use.ts';
import type { Envelope, Outcome, Project, ProjectSoFar } from './journal.ts';

/** *Worked out*: nothing was made to these measures yet. *Didn't work*: made, and the card went in only tight or not at all. */
export type Known = 'made and measured' | 'made' | 'worked out' | "didn't work";

export interface WorkingMeasures {
  /** With the square, the start and the finishes that stand; what follows from them is worked out on the project's tool. */
  readonly recipe: Recipe;
  readonly known: Known;
  /** As measured where it was, else worked out. */
  readonly pocket: Size;
  /** As felt, else as the measured pocket grades, else worked out. */
  readonly fit: Fit;
  /** The envelope whose outcome stands; none where they are worked out. */
  readonly envelope: Envelope | undefined;
}

/**
 * Those of the best outcome, as made; else those in use, which are the newest changed start or the recipe. Undefined
 * while there is no recipe.
 *
 * Only envelopes that the card went into without force count as outcomes that worked. The best of them, in this order:
 * a fit that was felt or measured before one only worked out; any before one with trouble noted whose start she then
 * left; the fit nearest to the one wanted, which is the one the recipe promised; one with the start in use; a measured
 * pocket before none; the one made last.
 */
export function workingMeasures({ project, envelopes }: ProjectSoFar): WorkingMeasures | undefined {
  const inUse = recipeInUse(project);
  if (!inUse) return undefined;
  const made = madeOf(project, envelopes);
  const order = byWorth(inUse, wantedOf(project.recipe!));
  const best = made.filter(({ fit }) => goesFreely(fit)).sort(order)[0];
  const tried = made.filter(({ recipe }) => sameMeasures(recipe, inUse)).sort(order)[0];
  return best ?? tried ?? { recipe: inUse, known: 'worked out', ...worked(inUse), envelope: undefined };
}

/**
 * What the next envelope of the project is made to: a start that she changed for the rest, else the working measures,
 * as long as they are of the square that its blanks are cut to.
 */
export function recipeToMake({ project, envelopes }: ProjectSoFar): Recipe | null {
  const inUse = recipeInUse(project);
  if (project.start !== null || !inUse) return inUse;
  const { recipe } = workingMeasures({ project, envelopes })!;
  return recipe.blank.width === inUse.blank.width ? recipe : inUse;
}

/** The same as the start that a new envelope is marked with; null where it is the recipe's. */
export function startToMake(full: ProjectSoFar): Length | null {
  const { recipe, start } = full.project;
  const next = recipeToMake(full)?.starts[0];
  return start ?? (next === undefined || next === recipe?.starts[0] ? null : next);
}

/** Whether the card went in without force, or nothing was made that says otherwise. */
export const didWork = ({ known }: Pick<WorkingMeasures, 'known'>): boolean => known !== "didn't work";

interface Made extends WorkingMeasures {
  readonly envelope: Envelope;
  /** Felt, or graded by a measured pocket. */
  readonly told: boolean;
}

/** One of which nothing is noted says nothing new where another was made to the same measures and tells how it came out. */
function madeOf(project: Project, envelopes: readonly Envelope[]): Made[] {
  const made = envelopes
    .filter(({ state }) => state === 'made')
    .map((one) => madeTo(project, one))
    .sort(newestFirst);
  const told = made.filter((one) => one.told);
  return [
    ...told,
    ...made.filter((one) => !one.told && !told.some(({ recipe }) => sameMeasures(recipe, one.recipe))),
  ];
}

const newestFirst = ({ envelope: one }: Made, { envelope: other }: Made): number =>
  (other.outcome?.at ?? '').localeCompare(one.outcome?.at ?? '') || other.number - one.number;

function madeTo(project: Project, envelope: Envelope): Made {
  const { outcome } = envelope;
  const recipe = asReallyMade(recipeOf(project, envelope)!, outcome);
  const pocket = outcome?.pocket ?? recipe.pocket;
  const card = recipe.cardTurned ? { ...recipe.card, ...turned(recipe.card) } : recipe.card;
  const fit = outcome?.felt ?? (outcome?.pocket ? gradePocket(pocket, card, recipe.limits).fit : recipe.fit);
  const told = Boolean(outcome?.felt || outcome?.pocket);
  const known = told && !goesFreely(fit) ? "didn't work" : outcome?.pocket ? 'made and measured' : 'made';
  return { recipe, known, pocket, fit, envelope, told };
}

/** Measures that leave no pocket on the tool can't have been those, and finishes that can't be cut are left out. */
function asReallyMade(own: Recipe, outcome: Outcome | null): Recipe {
  const { asMade = null, twin = false, finishes = null } = outcome ?? {};
  const measured = asMade && startMoves(own) ? withStartRead(own, asMade, twin) : own;
  return finishes ? finishedSo(measured, { ...ownFinishes(measured), ...finishes }) : measured;
}

function withStartRead(
  own: Recipe,
  { square, start }: NonNullable<Outcome['asMade']>,
  twin: boolean,
): Recipe {
  const { card, notcher } = own;
  if (!checkMeasures({ card, notcher, square, start }, { unit: 'mm' }).ok) return own;
  const read = withMeasures(own, { square, start });
  return twin ? withMeasures(own, { square, start: read.starts[1] }) : read;
}

const finishedSo = (recipe: Recipe, finishes: Finishes): Recipe =>
  checkFinishes(recipe, finishes, { unit: 'mm' }).ok ? finishFlaps(recipe, finishes) : recipe;

const worked = ({ pocket, fit }: Recipe) => ({ pocket, fit });

const wantedOf = ({ fit }: Recipe): Fit => WANTED_FITS.find((one) => one === fit) ?? 'easy';

function byWorth(inUse: Recipe, wanted: Fit): (one: Made, other: Made) => number {
  const marks = (one: Made): number[] => [
    one.told ? 0 : 1,
    one.envelope.outcome?.wrong && !sameMeasures(one.recipe, inUse) ? 1 : 0,
    Math.abs(FITS.indexOf(one.fit) - FITS.indexOf(wanted)),
    FITS_FROM_BEST.indexOf(one.fit),
    sameMeasures(one.recipe, inUse) ? 0 : 1,
    one.envelope.outcome?.pocket ? 0 : 1,
  ];
  return (one, other) => {
    const [mine, theirs] = [marks(one), marks(other)];
    return mine.map((mark, at) => mark - theirs[at]!).find((less) => less !== 0) ?? 0;
  };
}
