/**
 * Works the measures of a straight-sided envelope out into a whole recipe, and back. What differs from one such fold
 * to the next comes as its form; knows no form in particular.
 */
import { type Polygon, point } from '#core/geometry/point.ts';
import { area, extent } from '#core/geometry/polygon.ts';
import type { Finish } from '#shared/fold.ts';
import { add, inches, type Length, length, PER_INCH, roundLength, subtract } from '#shared/length.ts';
import type { FrontLie } from '#shared/print.ts';
import { type Size, turned } from '#shared/size.ts';
import { goesFreely, gradePocket } from './fit.ts';
import type { FinishProblem, Question } from './fold.ts';
import type { Setting } from './pocket.ts';
import { byRank, rankOf } from './ranking.ts';
import type { Finishes, Flap, FlapLetter, Recipe, Seam, Slip } from './recipe.ts';
import { survivesOf } from './slips.ts';
import {
  axisOf,
  closingReach,
  mouthOf,
  type Opening,
  pocketShape,
  RELIEF,
  type Straight,
  straightSides,
} from './straight.ts';
import { finishProblems } from './straight-check.ts';
import { bandOf, type Form, glueOf } from './straight-form.ts';
import { placeSheet } from './straight-layout.ts';
import { straightMeasures } from './straight-search.ts';
import { warningsOf } from './warnings.ts';

/** Recipes for a card, best first; where it goes freely into some, the others are left out. */
export function straightRecipes(form: Form, question: Question): Recipe[] {
  const all = straightMeasures(question).map((one) =>
    straightRecipe(form, { ...one, finish: form.closingFinish(one) }, question, question.want.front),
  );
  const free = all.filter(({ fit }) => goesFreely(fit));
  return (free.length > 0 ? free : all)
    .map((recipe) => ({ recipe, rank: rankOf(recipe, question) }))
    .sort((one, other) => byRank(one.rank, other.rank))
    .map(({ recipe }) => recipe)
    .slice(0, HANDFUL);
}

/** All measures of one envelope. Its print runs up the pocket unless `front` asks for the other way. */
export function straightRecipe(form: Form, one: Straight, setting: Setting, front?: FrontLie): Recipe {
  const { card, notcher, limits } = setting;
  const lies = front === 'along' || front === 'across' ? front : uprightLie(one.pocket);
  const slips = slipsOf(one, setting);
  const recipe = {
    fold: form.name,
    card,
    notcher,
    limits,
    blank: largest(blanksOf(form, one, lies)),
    starts: startsOf(form, one, setting),
    pocket: one.pocket,
    ...gradePocket(one.pocket, card, limits),
    cardTurned: false,
    front: lies,
    flaps: flapsOf(form, one),
    seam: seamOf(form, one),
    slips,
    survives: survivesOf(slips),
  };
  return { ...recipe, warnings: warningsOf(recipe, { pocket: pocketShape(one), flaps: form.stack(one) }) };
}

/** The same envelope with her own closing flap, or its back cut to another depth. */
export function finishStraight(form: Form, recipe: Recipe, own: Finishes): Recipe {
  const one = straightOf(recipe);
  const back = own.C && 'depth' in own.C ? own.C.depth : one.back;
  const finish = own.D ?? form.closingFinish(one);
  return straightRecipe(form, { ...one, back, finish }, recipe, recipe.front);
}

/** Tabs have one shape, the back is cut straight across, and the closing flap has to cover the throat. */
export function straightFinishProblem(
  recipe: Recipe,
  letter: FlapLetter,
  finish: Finish,
): FinishProblem | undefined {
  const one = straightOf(recipe);
  if (letter === 'D') return finishProblems({ ...one, finish })[0];
  const atDepth = (message: string): FinishProblem => ({ measure: 'depth', message });
  if (letter !== 'C') return atDepth('The tabs of this fold have one shape.');
  if (!('depth' in finish)) return atDepth('The back of this fold is cut straight across.');
  const shut = finish.depth > axisOf(one) - closingReach(one) && finish.depth <= axisOf(one);
  return shut
    ? undefined
    : atDepth('The back has to reach under the closing flap, and no further than the pocket.');
}

/** The pieces to cut, their height along the print, the one with the closing flap first. */
export const blanksOf = (form: Form, one: Straight, front: FrontLie): Size[] =>
  form
    .sheets(one)
    .map((sheet) => placeSheet(sheet).blank)
    .map((blank) => (front === uprightLie(one.pocket) ? blank : turned(blank)));

/** The measures that a recipe was worked out from. */
export function straightOf({ pocket, flaps }: Pick<Recipe, 'pocket' | 'flaps'>): Straight {
  const [a, , c, d] = flaps as readonly [Flap, Flap, Flap, Flap];
  const opening: Opening = d.side === 'top' ? 'top' : 'right';
  return { pocket, opening, seam: a.reach, back: c.depth, depth: d.depth, finish: d.finish };
}

/** The way that a print runs up the pocket, told against the longer side. */
export const uprightLie = (pocket: Size): FrontLie => (pocket.width >= pocket.height ? 'across' : 'along');

const HANDFUL = 6;
const SCORE_SLIP = inches(1 / 16);
const BLANK_SLIP = inches(1 / 32);
const SQUARE_INCH = PER_INCH * PER_INCH;

const largest = (blanks: readonly Size[]): Size =>
  blanks.reduce((one, other) => (other.width * other.height > one.width * one.height ? other : one));

/** The closing flap's score, as the ruler reads it from the edge that the flap ends at, and from the other one. */
function startsOf(form: Form, one: Straight, { notcher }: Setting): [Length, Length] {
  const { blank } = placeSheet(form.sheets(one)[0]!);
  const along = one.opening === 'top' ? blank.height : blank.width;
  return [subtract(one.depth, notcher.zeroOffset), length(along - one.depth - notcher.zeroOffset)];
}

function flapsOf(form: Form, one: Straight): Flap[] {
  const sides = straightSides(one.opening);
  const [mouth, axis] = [mouthOf(one), axisOf(one)];
  const tab = { depth: one.seam, reach: one.seam, overrun: NONE, score: length(axis - 2 * RELIEF) };
  const finish = { shape: 'tapered', depth: one.seam, taper: form.tabTaper(one.seam) } as const;
  const overrun = (reach: Length): Length => (reach > axis ? subtract(reach, axis) : NONE);
  const [c, d] = [one.back, closingReach(one)];
  return [
    { letter: 'A', side: sides.A, ...tab, finish },
    { letter: 'B', side: sides.B, ...tab, finish },
    {
      letter: 'C',
      side: sides.C,
      score: mouth,
      depth: c,
      overrun: overrun(c),
      finish: form.backFinish(one),
      reach: c,
    },
    {
      letter: 'D',
      side: sides.D,
      score: mouth,
      depth: one.depth,
      overrun: overrun(one.depth),
      finish: one.finish,
      reach: d,
    },
  ];
}

const NONE = length(0);

function seamOf(form: Form, one: Straight): Seam {
  const joints = form.joints(one);
  const bands = joints.map(bandOf);
  const glues = joints.map(glueOf);
  const whole = bands.reduce((sum, band) => sum + area(band), 0) / SQUARE_INCH;
  return {
    width: form.seamWidth(one.seam),
    area: whole,
    areaUncut: whole,
    glueArea: glues.reduce((sum, spot) => sum + area(spot), 0) / SQUARE_INCH,
    glueWidth: roundLength(Math.min(...glues.map(widthOf)), 'down'),
  };
}

/** Across a band along a side: the smaller of its extents; 0 where there is none. */
const widthOf = (glue: Polygon): number => Math.min(extent(glue, point(1, 0)), extent(glue, point(0, 1)));

/** A blank cut a little off changes a tab; a score a little off changes one of the pocket's sides. */
function slipsOf(one: Straight, { card, limits }: Setting): Slip[] {
  const slip = (off: Slip['off'], by: Length, pocket: Size): Slip => {
    const { clearance, fit } = gradePocket(pocket, card, limits);
    return { off, by, pocket, clearance, fit };
  };
  const both = (by: Length): Length[] => [length(0 - by), by];
  return [
    ...both(BLANK_SLIP).map((by) => slip('square', by, one.pocket)),
    ...both(SCORE_SLIP).flatMap((by) =>
      (['width', 'height'] as const).map((side) =>
        slip('start', by, { ...one.pocket, [side]: add(one.pocket[side], by) }),
      ),
    ),
  ];
}
