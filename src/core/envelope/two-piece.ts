/**
 * The two-piece fold: a piece with three tabs and a piece with the closing flap, glued onto each other, so that two
 * small offcuts make an envelope. C is the panel with the tabs, E the tab at its foot. The address goes on the piece with the flap, whose face stays whole.
 */
import type { Polygon } from '#core/geometry/point.ts';
import { rectangle } from '#core/geometry/polygon.ts';
import { applyToAll } from '#core/geometry/transform.ts';
import { inches, length } from '#shared/length.ts';
import type { Fold, Look, Step } from './fold.ts';
import type { Recipe } from './recipe.ts';
import {
  backPanel,
  closingShape,
  foldedIn,
  hingeOn,
  mouthOf,
  pocketShape,
  type Straight,
  straightSides,
  tabShape,
} from './straight.ts';
import { straightFold } from './straight-fold.ts';
import { bandOf, type Form, glueOf, type Joint, type Sheet, type SheetFlap } from './straight-form.ts';
import { sheetSteps } from './straight-steps.ts';

/** A corner rounder's usual size; a choice of ours. */
const ROUNDING = inches(3 / 8);

/** Tabs are mitred, so that no two of them lie on each other in the corners. */
export const twoPieceForm: Form = {
  name: 'two-piece',
  seamWidth: (seam) => seam,
  tabTaper: (seam) => seam,
  closingFinish: (one) => ({
    shape: 'rounded',
    radius: length(Math.max(1, Math.min(ROUNDING, Math.floor(Math.min(one.depth, mouthOf(one)) / 3)))),
  }),
  backFinish: ({ back }) => ({ shape: 'straight', depth: back }),
  sheets: (one) => [flapSheet(one), tabSheet(one)],
  stack: (one) => [
    ...(['A', 'B'] as const).map((letter) => ({ letter, shape: foldedTab(one, letter) })),
    { letter: 'C', shape: backPanel(one) },
    { letter: 'D', shape: applyToAll(foldedIn(closingFlap(one).hinge), closingShape(one)) },
  ],
  joints: jointsOf,
};

export const twoPiece: Fold = straightFold(twoPieceForm, stepsOf);

const closingFlap = (one: Straight): SheetFlap => ({
  letter: 'D',
  hinge: hingeOn(pocketShape(one), straightSides(one.opening).D),
  shape: closingShape(one),
  strip: rectangle(0, 0, mouthOf(one), one.depth),
  finish: one.finish,
});

/** Each on its side of the piece with the tabs; the one opposite the opening takes both corners of its strip. */
function tabOf(one: Straight, letter: Tab): SheetFlap {
  const foot = letter === 'E';
  const side = foot ? mouthOf(one) : one.back;
  const corner = foot ? one.seam : 0;
  return {
    letter,
    hinge: hingeOn(backPanel(one), straightSides(one.opening)[letter]),
    shape: tabShape(side, one.seam, one.seam),
    strip: rectangle(-corner, 0, side + 2 * corner, one.seam),
    finish: { shape: 'tapered', depth: one.seam, taper: one.seam },
  };
}

function foldedTab(one: Straight, letter: Tab): Polygon {
  const { hinge, shape } = tabOf(one, letter);
  return applyToAll(foldedIn(hinge), shape);
}

const TABS = ['A', 'B', 'E'] as const;
type Tab = (typeof TABS)[number];

/** The glue goes round its panel, where the tabs will lie. */
function flapSheet(one: Straight): Sheet {
  const joints = jointsOf(one);
  return {
    panel: pocketShape(one),
    flaps: [closingFlap(one)],
    seams: joints.map(bandOf),
    glue: joints.map(glueOf),
    mirrored: false,
  };
}

const tabSheet = (one: Straight): Sheet => ({
  panel: backPanel(one),
  flaps: TABS.map((letter) => tabOf(one, letter)),
  seams: [],
  glue: [],
  mirrored: true,
});

function jointsOf(one: Straight): Joint[] {
  return TABS.map((letter) => ({ under: foldedTab(one, letter), over: pocketShape(one) }));
}

function stepsOf(recipe: Recipe, look?: Look): Step[] {
  const [flapPiece, tabPiece] = twoPiece.flat(recipe);
  const turns = 0;
  return [
    ...sheetSteps(flapPiece!, 0, look),
    ...sheetSteps(tabPiece!, 1, look),
    { kind: 'fold', flaps: TABS, lit: { flaps: TABS }, turns, sheet: 1 },
    { kind: 'glue', flap: 'D', onto: TABS, lit: { flaps: ['D'] }, turns, sheet: 0, caution: 'adhesive' },
    { kind: 'close', flap: 'D', lit: { flaps: ['D'] }, turns, sheet: 0 },
  ];
}
