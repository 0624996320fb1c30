/** The diagonal fold as shapes: the blank on the tool and the closed envelope from both sides. Draws nothing. */
import { type Point, point } from '#core/geometry/point.ts';
import { rectangle } from '#core/geometry/polygon.ts';
import { applyToAll, foldOver, inOrder } from '#core/geometry/transform.ts';
import { cardInside, mirrored } from './card-inside.ts';
import type { FlatFlap, FlatLayout, FoldedLayout, Notch, ScoreLine } from './fold.ts';
import { lying } from './pocket.ts';
import type { Flap, Recipe, Side, Turning } from './recipe.ts';
import { seamShapes } from './seam.ts';
import {
  backOf,
  flapAt,
  hinge,
  lyingOpen,
  onBlank,
  pocketPolygon,
  scoreLine,
  type TurnedSquare,
  trimsOpen,
  turnedSquareOf,
} from './turned-square.ts';

/** Clockwise round the sheet, each edge with the side of the pocket whose score starts at its notch. */
const EDGES: readonly Side[] = ['top', 'right', 'bottom', 'left'];

export function diagonalFlat(recipe: Recipe, turning: Turning): FlatLayout {
  const place = turnedSquareOf(recipe);
  const open = inOrder(foldOver(hinge(place, flapAt(recipe.flaps, 'C').side)), onBlank(place));
  const { bands, glue } = seamShapes(place, recipe.flaps);
  return {
    blank: recipe.blank,
    outline: rectangle(0, 0, place.square, place.square),
    notches: edgesInOrder(turning).map((edge, index) => notchOn(edge, index + 1, place, recipe)),
    scores: edgesInOrder(turning).map((edge, index) =>
      scoreFrom(edge, index + 1, turning, { place, flaps: recipe.flaps }),
    ),
    pocket: applyToAll(onBlank(place), pocketPolygon(place)),
    flaps: recipe.flaps.map((flap) => flatFlap(place, flap)),
    seams: bands.map((band) => applyToAll(open, band)),
    glue: glue.map((spot) => applyToAll(open, spot)),
  };
}

export function diagonalFolded(recipe: Recipe): FoldedLayout {
  const place = turnedSquareOf(recipe);
  const { bands, glue } = seamShapes(place, recipe.flaps);
  const { pocket, flaps } = backOf(place, recipe.flaps);
  const inside = cardInside(lying(recipe.card, recipe.cardTurned), recipe.clearance, place);
  const { width, height } = place;
  return {
    width,
    height,
    front: { pocket, flaps: [], seams: [], glue: [], ...inside },
    back: { pocket, flaps, seams: bands, glue, ...mirrored(inside, width) },
  };
}

/** Turning the sheet anticlockwise brings the next edge clockwise to the top, and the other way about. */
const edgesInOrder = (turning: Turning): readonly Side[] =>
  turning === 'anticlockwise' ? EDGES : [EDGES[0]!, ...EDGES.slice(1).reverse()];

function notchOn(edge: Side, order: number, place: TurnedSquare, { starts }: Recipe): Notch {
  const { square, start, inset } = place;
  const measuredAlong = edge === 'top' || edge === 'bottom';
  const along = measuredAlong ? start : square - start;
  const at = (distance: number, depth: number) => onEdge(edge, square, distance, depth);
  const corner = at(along, inset);
  return {
    order,
    edge,
    mouth: at(along, 0),
    corner,
    cut: inset > 0 ? [at(along - inset, 0), at(along + inset, 0), corner] : [],
    reading: starts[measuredAlong ? 0 : 1],
    measured: order === 1,
  };
}

/** A point this far along an edge from the corner before it, going clockwise, and this far in. */
function onEdge(edge: Side, square: number, along: number, depth: number): Point {
  switch (edge) {
    case 'top':
      return point(along, depth);
    case 'right':
      return point(square - depth, along);
    case 'bottom':
      return point(square - along, square - depth);
    case 'left':
      return point(depth, square - along);
  }
}

/** Each score runs from the notch just made to the place of the next one. */
function scoreFrom(
  edge: Side,
  order: number,
  turning: Turning,
  { place, flaps }: { readonly place: TurnedSquare; readonly flaps: readonly Flap[] },
): ScoreLine {
  const index = EDGES.indexOf(edge);
  const side = turning === 'anticlockwise' ? edge : EDGES[(index + 3) % 4]!;
  const { from, to } = scoreLine(place, side);
  const flap = flaps.find((one) => one.side === side)!.letter;
  return turning === 'anticlockwise' ? { order, flap, from, to } : { order, flap, from: to, to: from };
}

const flatFlap = (place: TurnedSquare, flap: Flap): FlatFlap => ({
  letter: flap.letter,
  shape: lyingOpen(place, flap),
  trims: trimsOpen(place, flap),
  finish: flap.finish,
});
