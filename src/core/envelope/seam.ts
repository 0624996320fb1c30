/**
 * The seam of a diagonal fold: where flap C lies on A and B, as real polygons, and where its glue goes. Knows no
 * adhesive; the margins are our own choice, so that nothing oozes into the pocket or past a cut edge.
 */
import { type Polygon, point } from '#core/geometry/point.ts';
import { area, extent, inset, overlap, union } from '#core/geometry/polygon.ts';
import { inches, PER_INCH, roundLength } from '#shared/length.ts';
import type { Flap, FlapLetter, Seam } from './recipe.ts';
import { seamWidth } from './square.ts';
import { flapAt, foldedIn, type TurnedSquare, uncut } from './turned-square.ts';

/** Glue keeps this far inside the edges of the flaps below, and this far short of C's own edges: of the throat. */
const MARGIN_BELOW = inches(1 / 16);
const MARGIN_ABOVE = inches(1 / 8);

const SQUARE_INCH = PER_INCH * PER_INCH;

export interface SeamShapes {
  /** Where C lies on A or B, seen from the back. */
  readonly bands: readonly Polygon[];
  /** Inside the bands; never on the gap between A and B, where it would close the pocket. */
  readonly glue: readonly Polygon[];
}

export function seamShapes(place: TurnedSquare, flaps: readonly Flap[]): SeamShapes {
  return { bands: union(...bandsOf(place, flaps)), glue: union(...gluesOf(place, flaps)) };
}

export function seamOf(place: TurnedSquare, flaps: readonly Flap[]): Seam {
  const glues = gluesOf(place, flaps);
  return {
    width: roundLength(seamWidth(place.inset), 'nearest'),
    area: jointArea(bandsOf(place, flaps)),
    areaUncut: jointArea(
      bandsOf(
        place,
        flaps.map((flap) => ({ ...flap, finish: uncut })),
      ),
    ),
    glueArea: jointArea(glues),
    glueWidth: roundLength(Math.max(0, ...glues.map(acrossBand)), 'nearest'),
  };
}

/** The flaps that C is glued to: those of A and B with room for glue between. */
export function gluedTo(place: TurnedSquare, flaps: readonly Flap[]): FlapLetter[] {
  const [onA, onB] = gluesOf(place, flaps);
  return [...(area(onA) > 0 ? (['A'] as const) : []), ...(area(onB) > 0 ? (['B'] as const) : [])];
}

type Pair = readonly [Polygon, Polygon];

const bandsOf = (place: TurnedSquare, flaps: readonly Flap[]): Pair => {
  const [a, b, c] = foldedABC(place, flaps);
  return [overlap(a, c), overlap(b, c)];
};

const gluesOf = (place: TurnedSquare, flaps: readonly Flap[]): Pair => {
  const [a, b, c] = foldedABC(place, flaps);
  const upper = inset(c, MARGIN_ABOVE);
  return [overlap(inset(a, MARGIN_BELOW), upper), overlap(inset(b, MARGIN_BELOW), upper)];
};

const foldedABC = (place: TurnedSquare, flaps: readonly Flap[]): [Polygon, Polygon, Polygon] => [
  foldedIn(place, flapAt(flaps, 'A')),
  foldedIn(place, flapAt(flaps, 'B')),
  foldedIn(place, flapAt(flaps, 'C')),
];

/** In square inches; where A and B overlap, that part counts once. */
const jointArea = ([one, other]: Pair): number =>
  (area(one) + area(other) - area(overlap(one, other))) / SQUARE_INCH;

/** Edges of flaps run level, upright or at 45°: the narrowest of these is across. */
const acrossBand = (band: Polygon): number =>
  area(band) === 0 ? 0 : Math.min(...ACROSS.map((direction) => extent(band, direction)));

const ACROSS = [
  point(1, 0),
  point(0, 1),
  point(Math.SQRT1_2, Math.SQRT1_2),
  point(Math.SQRT1_2, -Math.SQRT1_2),
];
