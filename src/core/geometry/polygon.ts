/** Areas, cuts and overlaps of polygons in plain numbers; joining outlines is left to polygon-clipping. Knows no paper. */
import clipping, { type MultiPolygon } from 'polygon-clipping';
import { cross, distance, dot, type Line, minus, type Point, type Polygon, point } from './point.ts';

export const rectangle = (x: number, y: number, width: number, height: number): Polygon => [
  point(x, y),
  point(x + width, y),
  point(x + width, y + height),
  point(x, y + height),
];

/** Never negative, whichever way round the corners go. */
export const area = (polygon: Polygon): number => Math.abs(signedArea(polygon));

export const totalArea = (polygons: readonly Polygon[]): number =>
  polygons.reduce((sum, polygon) => sum + area(polygon), 0);

/** What lies in both, for convex polygons with their corners clockwise as seen; empty when nothing does. */
export const overlap = (one: Polygon, other: Polygon): Polygon =>
  other.length < 3 ? [] : edges(other).reduce(keepRight, one);

/** What lies in either of two convex polygons, as one outline where they overlap; corners rounded to whole units there. */
export function union(one: Polygon, other: Polygon): Polygon[] {
  if (area(overlap(one, other)) < 1) return [one, other].filter((polygon) => area(polygon) >= 1);
  return clipping
    .union(rings(one), rings(other))
    .map(([outer]) => outer!.slice(0, -1).map(([x, y]) => point(x, y)));
}

/**
 * What lies in `from` and not in `what`, corners rounded to whole units. `what` has to reach across the edge of `from`:
 * a hole would be lost.
 */
export const difference = (from: Polygon, what: Polygon): Polygon[] =>
  area(what) < 1 ? [from] : outlines(clipping.difference(rings(from), rings(what)));

/** The part of a convex polygon on the right of a line as one goes along it (y runs down). */
export function keepRight(polygon: Polygon, { from, to }: Line): Polygon {
  const [along, run] = [minus(to, from), distance(from, to)];
  const sides = polygon.map((at) => cross(along, minus(at, from)) / run);
  const kept: Point[] = [];
  polygon.forEach((at, index) => {
    const following = (index + 1) % polygon.length;
    const [here, there] = [sides[index]!, sides[following]!];
    if (here >= 0) kept.push(at);
    if (here < 0 !== there < 0) kept.push(between(at, polygon[following]!, here / (here - there)));
  });
  return withoutRepeats(kept);
}

/** What of a convex polygon lies outside another one, in convex pieces; corners of both clockwise as seen. */
export function without(from: Polygon, what: Polygon): Polygon[] {
  const pieces: Polygon[] = [];
  let rest = from;
  for (const edge of edges(what)) {
    pieces.push(keepRight(rest, { from: edge.to, to: edge.from }));
    rest = keepRight(rest, edge);
  }
  return what.length < 3 ? [from] : pieces.filter((piece) => area(piece) >= 1);
}

/** A convex polygon, its corners clockwise as seen, with each edge moved inwards by the same distance. */
export function inset(polygon: Polygon, by: number): Polygon {
  return edges(polygon).reduce((rest, edge) => keepRight(rest, movedRight(edge, by)), polygon);
}

export const edges = (polygon: Polygon): Line[] =>
  polygon.map((from, index) => ({ from, to: polygon[(index + 1) % polygon.length]! }));

/** How far the polygon extends along a direction of length 1. */
export function extent(polygon: Polygon, direction: Point): number {
  const along = polygon.map((at) => dot(at, direction));
  return polygon.length === 0 ? 0 : Math.max(...along) - Math.min(...along);
}

/** Drops corners that repeat the one before to within a thousandth of a unit. */
export const withoutRepeats = (polygon: Polygon): Polygon =>
  polygon.filter((at, index) => !isRepeat(at, polygon.at(index - 1)!) || polygon.length === 1);

/** The distance itself is dear, and seldom needed. */
const isRepeat = (at: Point, last: Point): boolean =>
  Math.abs(at.x - last.x) <= REPEAT && Math.abs(at.y - last.y) <= REPEAT && distance(at, last) <= REPEAT;

const REPEAT = 1e-3;

const signedArea = (polygon: Polygon): number =>
  polygon.reduce((sum, at, index) => sum + cross(at, polygon[(index + 1) % polygon.length]!), 0) / 2;

const between = (from: Point, to: Point, share: number): Point =>
  point(from.x + share * (to.x - from.x), from.y + share * (to.y - from.y));

function movedRight({ from, to }: Line, by: number): Line {
  const size = distance(from, to);
  const [dx, dy] = [(-(to.y - from.y) / size) * by, ((to.x - from.x) / size) * by];
  return { from: point(from.x + dx, from.y + dy), to: point(to.x + dx, to.y + dy) };
}

/** Rounded, since the clipping library stumbles over corners a hair apart. */
const rings = (polygon: Polygon): [number, number][][] => [
  polygon.map(({ x, y }): [number, number] => [Math.round(x), Math.round(y)]),
];

const outlines = (found: MultiPolygon): Polygon[] =>
  found.map(([outer]) => outer!.slice(0, -1).map(([x, y]) => point(x, y)));
