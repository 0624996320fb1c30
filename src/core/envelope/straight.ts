/**
 * What folds with straight sides have in common: a pocket, tabs for the seams, a back and a closing flap, as shapes.
 * A shape lies along its own score, x along it and y away from it. Knows no blank and no order of work.
 */
import { type Line, type Polygon, point } from '#core/geometry/point.ts';
import { edges, rectangle } from '#core/geometry/polygon.ts';
import { foldOver, inOrder, type Transform } from '#core/geometry/transform.ts';
import type { Finish } from '#shared/fold.ts';
import { inches, type Length, length, subtract } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';
import type { HingedLetter, Side } from './recipe.ts';

/** Which side of the pocket stays open until the closing flap shuts it, seen from the back. */
export type Opening = 'top' | 'right';

export interface Straight {
  readonly pocket: Size;
  readonly opening: Opening;
  /** How far a tab reaches from its score. */
  readonly seam: Length;
  /** How far the back reaches from its score; what is left of the pocket's side is the throat. */
  readonly back: Length;
  /** How far the closing flap reaches from its score before it is finished. */
  readonly depth: Length;
  readonly finish: Finish;
}

/** A and B are the tabs, C the back, D the closing flap; E, where there is one, the tab at the foot of the back. */
export const straightSides = (opening: Opening): Record<HingedLetter, Side> =>
  opening === 'top'
    ? { A: 'left', B: 'right', C: 'bottom', D: 'top', E: 'bottom' }
    : { A: 'top', B: 'bottom', C: 'left', D: 'right', E: 'left' };

/** The pocket's side along the opening, and the one from the opening to the fold opposite. */
export const mouthOf = ({ pocket, opening }: Pick<Straight, 'pocket' | 'opening'>): Length =>
  opening === 'top' ? pocket.width : pocket.height;

export const axisOf = ({ pocket, opening }: Pick<Straight, 'pocket' | 'opening'>): Length =>
  opening === 'top' ? pocket.height : pocket.width;

export const throatOf = (one: Straight): Length => subtract(axisOf(one), one.back);

/** Seen from the back: the whole pocket, and what the back covers of it. */
export const pocketShape = ({ pocket }: Pick<Straight, 'pocket'>): Polygon =>
  rectangle(0, 0, pocket.width, pocket.height);

export const backPanel = (one: Straight): Polygon =>
  one.opening === 'top'
    ? rectangle(0, throatOf(one), one.pocket.width, one.back)
    : rectangle(0, 0, one.back, one.pocket.height);

/** Cut away at either end of a tab's score, so that no paper lies where two folds meet. Our own choice, as are these. */
export const RELIEF = inches(1 / 16);

/** What the back is narrower at its free end, on either side, so that it doesn't pass the folds beside it. */
export const BACK_TAPER = inches(1 / 32);

/** The score's side of a panel, going clockwise round it. */
export const hingeOn = (panel: Polygon, side: Side): Line => edges(panel)[SIDES.indexOf(side)]!;

/** From a flap's own frame to the view that its hinge lies in: folded in, and lying open. */
export function foldedIn({ from, to }: Line): Transform {
  const run = Math.hypot(to.x - from.x, to.y - from.y);
  const [x, y] = [(to.x - from.x) / run, (to.y - from.y) / run];
  return { a: x, b: y, c: 0 - y, d: x, e: from.x, f: from.y };
}

export const lyingOpen = (hinge: Line): Transform => inOrder(foldedIn(hinge), foldOver(hinge));

/** A tab on a side of this length, its ends cut back to `taper` beyond its score's, or to a point where it is short. */
export function tabShape(side: number, seam: number, taper: number): Polygon {
  const relief = Math.min(RELIEF, side / 8);
  const end = Math.min(side / 2, relief + taper);
  return [point(relief, 0), point(side - relief, 0), point(side - end, seam), point(end, seam)];
}

export const taperedShape = (score: number, depth: number, taper: number): Polygon => [
  point(0, 0),
  point(score, 0),
  point(score - taper, depth),
  point(taper, depth),
];

/**
 * The closing flap. Pointed: straight down past the throat, so that no gap opens beside it, and from there to a point.
 * Throws on a finish that leaves no flap.
 */
export function closingShape(one: Straight): Polygon {
  const [mouth, depth] = [mouthOf(one), closingReach(one)];
  const { finish } = one;
  if (depth <= 0) throw new Error(`invalid flap depth: ${depth}`);
  switch (finish.shape) {
    case 'straight':
      return rectangle(0, 0, mouth, depth);
    case 'tapered':
      if (finish.taper < 0 || 2 * finish.taper > mouth) throw new Error(`invalid taper: ${finish.taper}`);
      return taperedShape(mouth, depth, finish.taper);
    case 'pointed':
      return pointedShape(mouth, Math.min(throatOf(one), depth * SHOULDER), depth);
    case 'rounded':
      return roundedShape(mouth, depth, finish.radius);
  }
}

/** How far the closing flap reaches once it is finished. */
export const closingReach = ({ depth, finish }: Pick<Straight, 'depth' | 'finish'>): Length =>
  'depth' in finish ? length(Math.min(finish.depth, depth)) : depth;

const SIDES: readonly Side[] = ['top', 'right', 'bottom', 'left'];
const ARC_STEPS = 12;
const SHOULDER = 0.85;

const pointedShape = (mouth: number, shoulder: number, depth: number): Polygon => [
  point(0, 0),
  point(mouth, 0),
  point(mouth, shoulder),
  point(mouth / 2, depth),
  point(0, shoulder),
];

/** Two quarter circles in the right angles of a straight flap: a corner rounder does it. */
function roundedShape(mouth: number, depth: number, radius: number): Polygon {
  if (radius <= 0 || radius > depth || 2 * radius > mouth) throw new Error(`invalid radius: ${radius}`);
  const quarter = (x: number, from: number): Polygon =>
    Array.from({ length: ARC_STEPS + 1 }, (_, step) => {
      const angle = ((from + step / ARC_STEPS) * Math.PI) / 2;
      return point(x + radius * Math.cos(angle), depth - radius + radius * Math.sin(angle));
    });
  return [point(0, 0), point(mouth, 0), ...quarter(mouth - radius, 0), ...quarter(radius, 1)];
}
