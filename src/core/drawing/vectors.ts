/** Directions on the page and steps along them, in drawing units. */
import { minus, type Point, point } from '#core/geometry/point.ts';

/** The direction from one point to another, of length 1; to the right where the two are one. */
export function direction(from: Point, to: Point): Point {
  const way = minus(to, from);
  const run = Math.hypot(way.x, way.y);
  return run === 0 ? point(1, 0) : point(way.x / run, way.y / run);
}

/** A quarter turn to the left of a direction: outwards, going clockwise round a shape. */
export const leftOf = (along: Point): Point => point(along.y, 0 - along.x);

export const moved = (at: Point, along: Point, by: number): Point =>
  point(at.x + along.x * by, at.y + along.y * by);

/** The point a share of the way from one to another. */
export const between = (from: Point, to: Point, share: number): Point =>
  point(from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share);

/** The mean of a shape's corners. */
export const centreOf = (shape: readonly Point[]): Point =>
  point(
    shape.reduce((sum, { x }) => sum + x, 0) / shape.length,
    shape.reduce((sum, { y }) => sum + y, 0) / shape.length,
  );
