/**
 * The looks a design can have on a diagonal fold. Tries every way to lay and notch the blank and keeps what the eye
 * can tell apart; carries the print through the fold as transforms. Knows no motif and no colour.
 */
import { point } from '#core/geometry/point.ts';
import { apply, foldOver, inOrder, mirrorAt, shift, type Transform, turn } from '#core/geometry/transform.ts';
import { roundLength } from '#shared/length.ts';
import type { Print } from '#shared/print.ts';
import type { Corner, Look, LookPaper, Placement } from './fold.ts';
import { placementOf } from './placement.ts';
import type { Flap, Recipe } from './recipe.ts';
import { borderLegs } from './square.ts';
import { hinge, type TurnedSquare, turnedSquareOf } from './turned-square.ts';

const QUARTERS = [0, 1, 2, 3];
/** Eighths from blank to back view: measured at the start or at its twin, either long flap closing. */
const WAYS_TO_NOTCH = [-1, 3, 1, 5];
const PLAINEST_FIRST: readonly Corner[] = ['top left', 'top right', 'bottom left', 'bottom right'];

interface Way {
  /** Clockwise quarter turns of the top of the print from the tool's far edge. */
  readonly quarters: number;
  readonly eighths: number;
}

/** Of the ways that look alike, the one measured at the start with flap D closing stands for all. */
export function diagonalLooks(recipe: Recipe, { print, doubleSided }: LookPaper): Look[] {
  const place = turnedSquareOf(recipe);
  const faces: Placement['faceDown'][] = doubleSided ? ['print', 'back'] : ['print'];
  const told = print.direction === 'any way' ? [{ quarters: 0, eighths: -1 }] : toldApart(place);
  return faces.flatMap((faceDown) => told.map((way) => lookOf(faceDown, way, recipe, print)));
}

/** Every way there is, one for each corner that the top of the print can lean to. */
function toldApart(place: TurnedSquare): Way[] {
  const ways = WAYS_TO_NOTCH.flatMap((eighths) => QUARTERS.map((quarters) => ({ quarters, eighths })));
  const found = new Map<Corner, Way>();
  for (const way of ways) {
    const leans = leaning(frontOf(place, way));
    if (!found.has(leans)) found.set(leans, way);
  }
  return PLAINEST_FIRST.flatMap((corner) => found.get(corner) ?? []);
}

function lookOf(faceDown: Placement['faceDown'], way: Way, recipe: Recipe, print: Print): Look {
  const place = turnedSquareOf(recipe);
  const front = frontOf(place, way);
  const leans = leaning(front);
  const border = { corner: OPPOSITE[leans], legs: legsOf(print, place) };
  return {
    id: print.direction === 'any way' ? faceDown : `${faceDown} ${leans}`.replaceAll(' ', '-'),
    words: (faceDown === 'back' ? 'Other side out' : 'Print out') + wordsFor(print, leans, border),
    placement: placementOf(faceDown, way.quarters, print),
    ...(print.direction !== 'any way' && { leans }),
    ...(print.direction === 'one edge' && { border }),
    front,
    flaps: flapTransforms(place, way, recipe.flaps),
  };
}

const OPPOSITE: Record<Corner, Corner> = {
  'top left': 'bottom right',
  'top right': 'bottom left',
  'bottom left': 'top right',
  'bottom right': 'top left',
};

function wordsFor(print: Print, leans: Corner, border: { corner: Corner; legs: number }): string {
  if (print.direction === 'any way') return '';
  if (print.direction === 'upright') return `, leaning to the ${leans}`;
  const reach = border.legs > 0 ? 'border in the front’s' : 'border on the back only, by the front’s';
  return `, ${reach} ${border.corner} corner`;
}

/** From the outer face, upright, to the blank on the tool: turned over, then by quarters. */
const layDown = ({ square }: TurnedSquare, { quarters }: Way): Transform =>
  inOrder(
    mirrorAt(square / 2),
    shift(-square / 2, -square / 2),
    turn(2 * quarters),
    shift(square / 2, square / 2),
  );

const backOf = (place: TurnedSquare, way: Way): Transform =>
  inOrder(
    layDown(place, way),
    shift(-place.square / 2, -place.square / 2),
    turn(way.eighths),
    shift(place.width / 2, place.height / 2),
  );

const frontOf = (place: TurnedSquare, way: Way): Transform =>
  inOrder(backOf(place, way), mirrorAt(place.width / 2));

const flapTransforms = (place: TurnedSquare, way: Way, flaps: readonly Flap[]): Look['flaps'] =>
  flaps.map(({ letter, side }) => ({
    letter,
    transform: inOrder(backOf(place, way), foldOver(hinge(place, side))),
  }));

/** The corner that the top of the print points to. */
function leaning(front: Transform): Corner {
  const up = apply({ ...front, e: 0, f: 0 }, point(0, -1));
  return `${up.y < 0 ? 'top' : 'bottom'} ${up.x < 0 ? 'left' : 'right'}`;
}

const legsOf = (print: Print, { inset }: TurnedSquare) =>
  roundLength(print.direction === 'one edge' ? borderLegs(print.border, inset) : 0, 'nearest');
