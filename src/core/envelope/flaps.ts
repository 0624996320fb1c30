/**
 * The four flaps of a square folded to the middle: which is which, how far each reaches, and its shape however it is
 * finished. Shapes lie along their own score line: x along it, y away from the pocket. Knows no seam and no sheet.
 */
import { type Line, type Polygon, point } from '#core/geometry/point.ts';
import { keepRight, withoutRepeats } from '#core/geometry/polygon.ts';
import type { Finish } from '#shared/fold.ts';
import { inches, type Length, length, roundLength, roundToStep } from '#shared/length.ts';
import { type Size, shorter } from '#shared/size.ts';
import type { Finishes, Flap, FlapLetter, Notcher, Side } from './recipe.ts';
import { flapDepth, flapOverrun, seamKeptTo, tipLoss } from './square.ts';

/** Kept between a trimmed flap and the fold it would otherwise pass. */
const SHORT_OF_FOLD = inches(1 / 32);
const ARC_STEPS = 12;

export const FLAP_LETTERS: readonly FlapLetter[] = ['A', 'B', 'C', 'D'];

/** Flaps A and B are hinged to the shorter sides, where the sheet's tips meet least; a square pocket's go left, right. */
const sidesOf = (pocket: Size): Record<FlapLetter, Side> =>
  pocket.width >= pocket.height
    ? { A: 'left', B: 'right', C: 'bottom', D: 'top' }
    : { A: 'top', B: 'bottom', C: 'left', D: 'right' };

/**
 * In folding order. What the maker has not finished herself is left pointed, or cut straight where it overruns. Throws
 * on a finish of hers that cannot be cut.
 */
export function flapsOf(pocket: Size, notcher: Notcher, own: Finishes = {}): Flap[] {
  const sides = sidesOf(pocket);
  return FLAP_LETTERS.map((letter) => flapOn(letter, { pocket, side: sides[letter] }, notcher, own[letter]));
}

function flapOn(
  letter: FlapLetter,
  { pocket, side }: { readonly pocket: Size; readonly side: Side },
  notcher: Notcher,
  own?: Finish,
): Flap {
  const [score, across] = scoreAndAcross(pocket, side);
  const overrun = roundLength(Math.max(0, flapOverrun(score, across, notcher.inset)), 'nearest');
  const depth = roundLength(flapDepth(score, notcher.inset), 'nearest');
  if (own) flapShape(score, notcher.inset, own);
  const finish = own ?? (overrun > 0 ? straightBefore(across, notcher.graduation) : { shape: 'pointed' });
  const keptTo = roundLength(Math.min(across, seamKeptTo(shorter(pocket), notcher.inset)), 'up');
  return {
    letter,
    side,
    score,
    depth,
    overrun,
    finish,
    reach: reachOf(depth, finish),
    ...(letter === 'C' && { keepsSeamTo: keptTo }),
  };
}

const scoreAndAcross = (pocket: Size, side: Side): [Length, Length] =>
  side === 'left' || side === 'right' ? [pocket.height, pocket.width] : [pocket.width, pocket.height];

/** The longest cut on the graduation that stops short of the opposite fold; off the graduation where it is coarser. */
function straightBefore(across: Length, graduation: Length): Finish {
  const room = Math.max(1, across - SHORT_OF_FOLD);
  const onScale = roundToStep(room, graduation, 'down');
  return { shape: 'straight', depth: onScale > room / 2 ? onScale : length(Math.floor(room)) };
}

function reachOf(depth: Length, finish: Finish): Length {
  if (finish.shape === 'pointed') return depth;
  if (finish.shape === 'rounded') return roundLength(depth - tipLoss(finish.radius), 'nearest');
  return finish.depth < depth ? finish.depth : depth;
}

/**
 * Clockwise, from the score's start along it. Straight up for inset·√2 beside the notches, then in at 45° to the tip,
 * which is the sheet's right-angled corner; then cut as finished. Throws on a finish that leaves no flap.
 */
export function flapShape(score: number, inset: number, finish: Finish): Polygon {
  const uncut = pointed(score, inset);
  switch (finish.shape) {
    case 'pointed':
      return uncut;
    case 'straight':
      return cutStraight(uncut, finish.depth);
    case 'tapered': {
      const straight = cutStraight(uncut, finish.depth);
      return taperLines(straight, score, finish.taper).reduce(keepRight, straight);
    }
    case 'rounded':
      return roundTip(uncut, score, inset, finish.radius);
  }
}

/** What its finish cuts from the flap, in pieces, in the same frame. */
export function flapTrims(score: number, inset: number, finish: Finish): Polygon[] {
  if (finish.shape === 'pointed') return [];
  const uncut = pointed(score, inset);
  if (finish.shape === 'rounded') return [cornerBeyondArc(score, inset, finish.radius)];
  const tip = keepRight(uncut, reversed(cutLine(finish.depth)));
  const straight = cutStraight(uncut, finish.depth);
  const slopes = finish.shape === 'tapered' ? taperLines(straight, score, finish.taper) : [];
  return [tip, ...slopes.map((slope) => keepRight(straight, reversed(slope)))].filter(
    (piece) => piece.length > 2,
  );
}

function pointed(score: number, inset: number): Polygon {
  const shoulder = inset * Math.SQRT2;
  return withoutRepeats([
    point(0, 0),
    point(score, 0),
    point(score, shoulder),
    point(score / 2, flapDepth(score, inset)),
    point(0, shoulder),
  ]);
}

function cutStraight(flap: Polygon, depth: number): Polygon {
  if (depth <= 0) throw new Error(`invalid flap depth: ${depth}`);
  return keepRight(flap, cutLine(depth));
}

const cutLine = (depth: number): Line => ({ from: point(1, depth), to: point(0, depth) });

/** The two sides of a taper, the flap on the right of each; `flap` is cut straight already. */
function taperLines(flap: Polygon, score: number, taper: number): Line[] {
  const end = Math.max(...flap.map(({ y }) => y));
  const ends = flap.filter(({ y }) => y > end - 1e-3).map(({ x }) => x);
  const [left, right] = [Math.min(...ends) + taper, Math.max(...ends) - taper];
  if (taper < 0 || left > right) throw new Error(`invalid taper: ${taper}`);
  return [
    { from: point(left, end), to: point(0, 0) },
    { from: point(score, 0), to: point(right, end) },
  ];
}

function roundTip(flap: Polygon, score: number, inset: number, radius: number): Polygon {
  const arc = tipArc(score, inset, radius);
  const tip = flap.findIndex(({ y }) => y > flapDepth(score, inset) - 1e-3);
  return withoutRepeats([...flap.slice(0, tip), ...arc, ...flap.slice(tip + 1)]);
}

const cornerBeyondArc = (score: number, inset: number, radius: number): Polygon => [
  point(score / 2, flapDepth(score, inset)),
  ...[...tipArc(score, inset, radius)].reverse(),
];

/** From the flap's right edge to its left one. */
function tipArc(score: number, inset: number, radius: number): Polygon {
  if (radius <= 0 || radius > score / Math.SQRT2) throw new Error(`invalid radius: ${radius}`);
  const centre = point(score / 2, flapDepth(score, inset) - radius * Math.SQRT2);
  return Array.from({ length: ARC_STEPS + 1 }, (_, step) => {
    const angle = Math.PI * (1 / 4 + step / (2 * ARC_STEPS));
    return point(centre.x + radius * Math.cos(angle), centre.y + radius * Math.sin(angle));
  });
}

const reversed = ({ from, to }: Line): Line => ({ from: to, to: from });
