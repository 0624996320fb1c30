/** Where inside an outline there is most room for a word. Knows outlines, not labels. */
import { type Line, type Point, type Polygon, point } from '#core/geometry/point.ts';
import { edges } from '#core/geometry/polygon.ts';

export interface Spot {
  readonly at: Point;
  /** The distance to the nearest edge. */
  readonly room: number;
}

/**
 * Spots inside the shape and outside all that covers it, those farthest from any edge first; at most `most` of them.
 * By a grid over the shape: good to a twentieth of its size, which is all that a word needs.
 */
export function roomiest(shape: Polygon, covers: readonly Polygon[], most = 40): Spot[] {
  const [inside, ...outside] = [shape, ...covers].map(edges);
  const all = [inside!, ...outside].flat();
  return grid(shape)
    .filter((at) => crossings(at, inside!) === 1 && outside.every((cover) => crossings(at, cover) === 0))
    .map((at) => ({ at, room: distanceToNearest(at, all) }))
    .sort((one, other) => other.room - one.room)
    .slice(0, most);
}

export const isInside = (at: Point, shape: Polygon): boolean => crossings(at, edges(shape)) === 1;

const STEPS = 24;

/** Of a ray to the right with an outline: odd, here 1, inside it and even, here 0, outside. */
function crossings(at: Point, outline: readonly Line[]): number {
  let count = 0;
  for (const edge of outline) if (crossesRay(at, edge)) count = 1 - count;
  return count;
}

function grid(shape: Polygon): Point[] {
  const [xs, ys] = [shape.map(({ x }) => x), shape.map(({ y }) => y)];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const [width, height] = [Math.max(...xs) - left, Math.max(...ys) - top];
  return Array.from({ length: STEPS * STEPS }, (_, index) =>
    point(
      left + (((index % STEPS) + 0.5) * width) / STEPS,
      top + ((Math.floor(index / STEPS) + 0.5) * height) / STEPS,
    ),
  );
}

const crossesRay = (at: Point, { from, to }: Line): boolean =>
  from.y > at.y !== to.y > at.y && at.x < from.x + ((at.y - from.y) / (to.y - from.y)) * (to.x - from.x);

function distanceToNearest(at: Point, sides: readonly Line[]): number {
  let nearest = Infinity;
  for (const side of sides) nearest = Math.min(nearest, distanceToSide(at, side));
  return nearest;
}

/** In plain numbers: asked thousands of times for one letter. */
function distanceToSide({ x, y }: Point, { from, to }: Line): number {
  const [across, down] = [to.x - from.x, to.y - from.y];
  const along = ((x - from.x) * across + (y - from.y) * down) / (across * across + down * down || 1);
  const share = Math.min(1, Math.max(0, along));
  return Math.hypot(x - (from.x + share * across), y - (from.y + share * down));
}
