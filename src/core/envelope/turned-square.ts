/**
 * Where pocket, notches and flaps of a diagonal fold lie, on the blank and folded, in plain numbers. Everything starts
 * from the pocket seen from the back, (0, 0) to (width, height); the blank is that turned by an eighth about its
 * middle. Knows no card, no order of work and no drawing.
 */
import { type Line, type Polygon, point } from '#core/geometry/point.ts';
import { rectangle } from '#core/geometry/polygon.ts';
import { apply, applyToAll, inOrder, shift, type Transform, turn } from '#core/geometry/transform.ts';
import type { Finish } from '#shared/fold.ts';
import { flapShape, flapTrims } from './flaps.ts';
import type { FoldedView } from './fold.ts';
import { trueStart } from './pocket.ts';
import type { Flap, FlapLetter, Notcher, Recipe, Side } from './recipe.ts';
import { pocketHeight, pocketWidth } from './square.ts';

export interface TurnedSquare {
  readonly square: number;
  readonly start: number;
  readonly inset: number;
  readonly width: number;
  readonly height: number;
}

function turnedSquare(square: number, start: number, inset: number): TurnedSquare {
  return {
    square,
    start,
    inset,
    width: pocketWidth(square, start, inset),
    height: pocketHeight(start, inset),
  };
}

type Measured = Pick<Recipe, 'blank' | 'starts'> & { readonly notcher: Notcher };

export const turnedSquareOf = ({ blank, starts, notcher }: Measured): TurnedSquare =>
  turnedSquare(blank.width, trueStart(starts[0], notcher), notcher.inset);

export const pocketPolygon = ({ width, height }: TurnedSquare): Polygon => rectangle(0, 0, width, height);

/** From the back view to the blank as it lies on the tool: the first notch on the top edge, `start` from the left. */
export const onBlank = ({ square, width, height }: TurnedSquare): Transform =>
  inOrder(shift(-width / 2, -height / 2), turn(1), shift(square / 2, square / 2));

/** A flap's shape folded in, seen from the back. */
export const foldedIn = (place: TurnedSquare, { side, finish }: Pick<Flap, 'side' | 'finish'>): Polygon =>
  applyToAll(inwards(place, side), flapShape(scoreLength(place, side), place.inset, finish));

/** The pocket and what is folded over it, in stacking order. */
export const backOf = (
  place: TurnedSquare,
  flaps: readonly Flap[],
): Pick<FoldedView, 'pocket' | 'flaps'> => ({
  pocket: pocketPolygon(place),
  flaps: flaps.map((flap) => ({ letter: flap.letter, shape: foldedIn(place, flap) })),
});

/** The same flap lying open, on the blank. */
export const lyingOpen = (place: TurnedSquare, { side, finish }: Pick<Flap, 'side' | 'finish'>): Polygon =>
  applyToAll(openFrame(place, side), flapShape(scoreLength(place, side), place.inset, finish));

/** What its finish cuts from it, on the blank. */
export const trimsOpen = (place: TurnedSquare, { side, finish }: Pick<Flap, 'side' | 'finish'>): Polygon[] =>
  flapTrims(scoreLength(place, side), place.inset, finish).map((trim) =>
    applyToAll(openFrame(place, side), trim),
  );

/** The score line of a side seen from the back, going clockwise round the pocket. */
export function hinge(place: TurnedSquare, side: Side): Line {
  const ends = [point(0, 0), point(scoreLength(place, side), 0)];
  const [from, to] = applyToAll(inwards(place, side), ends);
  return { from: from!, to: to! };
}

/** The same line on the blank. */
export function scoreLine(place: TurnedSquare, side: Side): Line {
  const { from, to } = hinge(place, side);
  return { from: apply(onBlank(place), from), to: apply(onBlank(place), to) };
}

export const uncut: Finish = { shape: 'pointed' };

export const flapAt = (flaps: readonly Flap[], letter: FlapLetter): Flap =>
  flaps.find((flap) => flap.letter === letter)!;

const scoreLength = ({ width, height }: TurnedSquare, side: Side): number =>
  side === 'left' || side === 'right' ? height : width;

/** From a flap's own frame to the back view, going clockwise round the pocket, the flap folded in. */
function inwards({ width, height }: TurnedSquare, side: Side): Transform {
  switch (side) {
    case 'top':
      return { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };
    case 'right':
      return { a: 0, b: 1, c: -1, d: 0, e: width, f: 0 };
    case 'bottom':
      return { a: -1, b: 0, c: 0, d: -1, e: width, f: height };
    case 'left':
      return { a: 0, b: -1, c: 1, d: 0, e: 0, f: height };
  }
}

/** From a flap's own frame to the blank, the flap lying open. */
function openFrame(place: TurnedSquare, side: Side): Transform {
  const folded = inwards(place, side);
  return inOrder({ ...folded, c: -folded.c, d: -folded.d }, onBlank(place));
}
