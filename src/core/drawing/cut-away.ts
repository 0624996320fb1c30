/** What is left of an outline once pieces are cut from its edge. Knows no paper; the clipping is polygon-clipping's. */
import clipping from 'polygon-clipping';
import { type Polygon, point } from '#core/geometry/point.ts';
import { area } from '#core/geometry/polygon.ts';

/** The outline less the cuts: of several pieces the largest. Corners come out in whole units. */
export function cutAway(outline: Polygon, cuts: readonly Polygon[]): Polygon {
  const real = cuts.filter((cut) => area(cut) >= 1);
  if (real.length === 0) return outline;
  const left = clipping.difference(ring(outline), ...real.map(ring));
  const pieces = left.map(([outer]) => outer!.slice(0, -1).map(([x, y]) => point(x, y)));
  return pieces.sort((one, other) => area(other) - area(one))[0] ?? outline;
}

/** In whole units, since the library stumbles over corners a hair apart. */
const ring = (polygon: Polygon): [number, number][][] => [
  polygon.map(({ x, y }) => [Math.round(x), Math.round(y)] as [number, number]),
];
