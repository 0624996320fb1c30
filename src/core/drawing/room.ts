/** Where inside an outline there is most room for a word. Knows outlines, not labels. */
import { distance, dot, type Line, minus, type Point, type Polygon, point } from '#core/geometry/point.ts';
import { edges } from '#core/geometry/polygon.ts';

export interface Spot {
  readonly at: Point;
  /** The distance to the nearest edge. */
  readonly room: number;
}

/**
 * Spots inside the shape and outside all that covers it, those farthest from any edge first; at most `most` of them.
 * By a grid over the shape: good to a thirtieth of its size, which is all that a word needs.
 */
export function roomiest(shape: Polygon, covers: readonly Polygon[], most = 60): Spot[] {
  const outlines = [shape, ...covers];
  return grid(shape)
    .filter((at) => isInside(at, shape) && !covers.some((cover) => isInside(at, cover)))
    .map((at) => ({ at, room: Math.min(...outlines.map((outline) => distanceToEdge(at, outline))) }))
    .sort((one, other) => other.room - one.room)
    .slice(0, most);
}

/** Whether a point lies inside, by the crossings of a ray to the right. */
export function isInside(at: Point, shape: Polygon): boolean {
  return edges(shape).filter((edge) => crossesRay(at, edge)).length % 2 === 1;
}

const STEPS = 30;

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

const distanceToEdge = (at: Point, shape: Polygon): number =>
  Math.min(...edges(shape).map((edge) => distanceToSide(at, edge)));

function distanceToSide(at: Point, { from, to }: Line): number {
  const along = minus(to, from);
  const share = Math.min(1, Math.max(0, dot(minus(at, from), along) / (dot(along, along) || 1)));
  return distance(at, point(from.x + share * along.x, from.y + share * along.y));
}
