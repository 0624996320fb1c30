/**
 * Chooses pocket, seam, throat and flap for a card whose envelope has straight sides: on the ruler's finest step and
 * on a coarser one, opening on either side. Knows how much room a fit wants, not how the paper is cut.
 */
import {
  add,
  inches,
  type Length,
  length,
  type Rounding,
  roundToStep,
  subtract,
  times,
} from '#shared/length.ts';
import type { Size } from '#shared/size.ts';
import { idealClearance, leastClearance } from './fit.ts';
import type { Question } from './fold.ts';
import type { Want } from './recipe.ts';
import { axisOf, mouthOf, type Opening, RELIEF, type Straight } from './straight.ts';

/** Measures whose closing flap has no finish yet. */
export type Unfinished = Omit<Straight, 'finish'>;

/**
 * Every opening with every pocket worth a look; never empty. A limit on the outer size is kept where the card's own
 * size allows it.
 */
export function straightMeasures(question: Question): Unfinished[] {
  const { graduation } = question.notcher;
  const steps = [...new Set([graduation, coarserStep(graduation)])];
  const pockets = roomsFor(question).flatMap((room) =>
    steps.flatMap((step) => ROUNDINGS.map((how) => pocketFor(question, room, step, how))),
  );
  const once = [...new Map(pockets.map((pocket) => [`${pocket.width} ${pocket.height}`, pocket])).values()];
  return once.flatMap((pocket) => OPENINGS.map((opening) => measuresFor(pocket, opening, graduation)));
}

/**
 * Seam, throat and flap for a pocket, on the graduation where it isn't coarser than they are. Our own choice: a seam
 * of ½ in, less on a small pocket; a throat of a sixth of the way down, from ⅜ to 1 in; a flap that
 * covers it by at least ¾ in.
 */
export function measuresFor(pocket: Size, opening: Opening, graduation: Length): Unfinished {
  const [mouth, axis] = [mouthOf({ pocket, opening }), axisOf({ pocket, opening })];
  const seam = onScale(Math.min(SEAM, mouth / 4, axis / 5), graduation);
  const throat = onScale(Math.min(Math.max(axis / 6, LEAST_THROAT), MOST_THROAT, axis / 3), graduation);
  const wanted = Math.max(throat + COVER, axis * FLAP_SHARE);
  const depth = onScale(Math.min(wanted, axis - RELIEF), graduation);
  return { pocket, opening, seam, back: subtract(axis, throat), depth };
}

const OPENINGS: readonly Opening[] = ['top', 'right'];
const ROUNDINGS: readonly Rounding[] = ['up', 'down'];
const SEAM = inches(1 / 2);
const LEAST_THROAT = inches(3 / 8);
const MOST_THROAT = inches(1);
const COVER = inches(3 / 4);
const FLAP_SHARE = 0.4;
const COARSE_STEP = inches(1 / 8);

/** The clearances to aim at; under a limit with no fit named, the snuggest that goes in without force as well. */
function roomsFor({ want, limits }: Question): Length[] {
  const ideal = idealClearance(want.fit ?? 'easy', limits);
  return want.largestOuter && !want.fit ? [ideal, leastClearance('snug', limits)] : [ideal];
}

function pocketFor({ card, want, notcher }: Question, room: Length, step: Length, how: Rounding): Size {
  const limit = limitFor(card, want);
  const side = (of: 'width' | 'height'): Length => {
    const wanted = length(Math.max(step, roundToStep(add(card[of], card.bulk, room), step, how)));
    const most = roundToStep(limit[of] ?? wanted, notcher.graduation, 'down');
    return most < wanted && most > 0 ? most : wanted;
  };
  return { width: side('width'), height: side('height') };
}

/** The limit as the card lies; turned when both are given and it goes in only that way. */
function limitFor(card: Size, { largestOuter = {} }: Want): { width?: Length; height?: Length } {
  const { width, height } = largestOuter;
  if (width === undefined || height === undefined) return largestOuter;
  const fits = card.width < width && card.height < height;
  return fits ? largestOuter : { width: height, height: width };
}

/** Rounded down, or left as it is where one step would be all of it. */
function onScale(value: number, graduation: Length): Length {
  const rounded = roundToStep(value, graduation, 'down');
  return rounded > value / 2 ? rounded : length(Math.max(1, Math.floor(value)));
}

/** The graduation doubled while it stays within ⅛ in. */
const coarserStep = (graduation: Length): Length =>
  graduation * 2 > COARSE_STEP ? graduation : coarserStep(times(graduation, 2));
