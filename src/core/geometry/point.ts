/** Points, lines and polygons as plain numbers, x to the right and y down. Knows no lengths and no rounding. */

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Line {
  readonly from: Point;
  readonly to: Point;
}

/** Corners in order, the last joined to the first, none repeated. */
export type Polygon = readonly Point[];

export const point = (x: number, y: number): Point => ({ x, y });

export const minus = (one: Point, other: Point): Point => point(one.x - other.x, one.y - other.y);

export const dot = (one: Point, other: Point): number => one.x * other.x + one.y * other.y;

/** Positive when turning from `one` to `other` goes clockwise as seen, since y runs down. */
export const cross = (one: Point, other: Point): number => one.x * other.y - one.y * other.x;

export const distance = (one: Point, other: Point): number => Math.hypot(one.x - other.x, one.y - other.y);

export const middle = (line: Line): Point =>
  point((line.from.x + line.to.x) / 2, (line.from.y + line.to.y) / 2);

/** Where `to` lies when the paper is folded along the line. */
export function reflect(at: Point, { from, to }: Line): Point {
  const along = minus(to, from);
  const share = dot(minus(at, from), along) / dot(along, along);
  return point(2 * (from.x + share * along.x) - at.x, 2 * (from.y + share * along.y) - at.y);
}
