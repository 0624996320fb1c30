/**
 * The side-seam fold: one strip of paper becomes front, back and closing flap, with a tab on either side of the front.
 * The tabs fold in and the back is glued onto them. Knows its own shapes; the rest it shares with straight folds.
 */

import { rectangle } from '#core/geometry/polygon.ts';
import { applyToAll, foldOver } from '#core/geometry/transform.ts';
import { length, subtract } from '#shared/length.ts';
import type { Fold, Look, Step } from './fold.ts';
import type { Recipe } from './recipe.ts';
import {
  axisOf,
  BACK_TAPER,
  closingShape,
  foldedIn,
  hingeOn,
  mouthOf,
  pocketShape,
  type Straight,
  straightSides,
  tabShape,
  taperedShape,
} from './straight.ts';
import { straightFold } from './straight-fold.ts';
import { bandOf, type Form, glueOf, type Joint, type Sheet, type SheetFlap } from './straight-form.ts';
import { sheetSteps } from './straight-steps.ts';

/** Tabs taper by half their width; the back is a hair narrower at the throat than the pocket. */
export const sideSeamForm: Form = {
  name: 'side-seam',
  seamWidth: (seam) => subtract(seam, BACK_TAPER),
  tabTaper: (seam) => length(Math.floor(seam / 2)),
  closingFinish: ({ depth, seam }) => ({ shape: 'tapered', depth, taper: length(Math.floor(seam / 2)) }),
  backFinish: ({ back }) => ({ shape: 'tapered', depth: back, taper: BACK_TAPER }),
  sheets: (one) => [sheetOf(one)],
  stack: (one) =>
    [...flapsOf(one)]
      .sort((a, b) => (a.letter < b.letter ? -1 : 1))
      .map((flap) => ({ letter: flap.letter, shape: foldedOf(flap) })),
  joints: jointsOf,
};

export const sideSeam: Fold = straightFold(sideSeamForm, stepsOf);

/** The scores along the strip come first, then those across it. */
function flapsOf(one: Straight): SheetFlap[] {
  const sides = straightSides(one.opening);
  const [mouth, axis, seam] = [mouthOf(one), axisOf(one), one.seam];
  const taper = sideSeamForm.tabTaper(seam);
  const hinge = (letter: SheetFlap['letter']) => hingeOn(pocketShape(one), sides[letter]);
  const tab = (letter: 'A' | 'B'): SheetFlap => ({
    letter,
    hinge: hinge(letter),
    shape: tabShape(axis, seam, taper),
    strip: rectangle(0, 0, axis, seam),
    finish: { shape: 'tapered', depth: seam, taper },
  });
  const strip = (depth: number) => rectangle(-seam, 0, mouth + 2 * seam, depth);
  return [
    tab('A'),
    tab('B'),
    { letter: 'D', hinge: hinge('D'), shape: closingShape(one), strip: strip(one.depth), finish: one.finish },
    {
      letter: 'C',
      hinge: hinge('C'),
      shape: taperedShape(mouth, one.back, BACK_TAPER),
      strip: strip(one.back),
      finish: sideSeamForm.backFinish(one),
    },
  ];
}

function sheetOf(one: Straight): Sheet {
  const open = foldOver(hingeOn(pocketShape(one), straightSides(one.opening).C));
  const joints = jointsOf(one);
  return {
    panel: pocketShape(one),
    flaps: flapsOf(one),
    seams: joints.map((joint) => applyToAll(open, bandOf(joint))),
    glue: joints.map((joint) => applyToAll(open, glueOf(joint))),
    mirrored: false,
  };
}

const foldedOf = (flap: SheetFlap) => applyToAll(foldedIn(flap.hinge), flap.shape);

function jointsOf(one: Straight): Joint[] {
  const flaps = flapsOf(one);
  const folded = (letter: SheetFlap['letter']) => foldedOf(flaps.find((flap) => flap.letter === letter)!);
  return (['A', 'B'] as const).map((letter) => ({ under: folded(letter), over: folded('C') }));
}

function stepsOf(recipe: Recipe, look?: Look): Step[] {
  const [layout] = sideSeam.flat(recipe);
  const turns = 0;
  return [
    ...sheetSteps(layout!, 0, look),
    { kind: 'fold', flaps: ['A', 'B'], lit: { flaps: ['A', 'B'] }, turns },
    { kind: 'fold', flaps: ['C'], lit: { flaps: ['C'] }, turns },
    { kind: 'glue', flap: 'C', onto: ['A', 'B'], lit: { flaps: ['C'] }, turns, caution: 'adhesive' },
    { kind: 'close', flap: 'D', lit: { flaps: ['D'] }, turns },
  ];
}
