/** Turns, shifts and reflections of the plane, composed into one. Knows nothing of what is moved. */
import { type Line, type Point, type Polygon, point, reflect } from './point.ts';

/** x → a·x + c·y + e, y → b·x + d·y + f: the six numbers of an SVG matrix, in its order. */
export interface Transform {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

export const UNMOVED: Transform = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

export const shift = (x: number, y: number): Transform => ({ ...UNMOVED, e: x, f: y });

/** Clockwise as seen, by this many eighths of a full turn, about the origin. */
export function turn(eighths: number): Transform {
  const [cos, sin] = [eighth(eighths + 2), eighth(eighths)];
  return { a: cos, b: sin, c: 0 - sin, d: cos, e: 0, f: 0 };
}

/** The mirror image in the vertical line at `x`. */
export const mirrorAt = (x: number): Transform => ({ ...UNMOVED, a: -1, e: 2 * x });

/** Folding along a line. */
export function foldOver(line: Line): Transform {
  const origin = reflect(point(0, 0), line);
  const [right, down] = [reflect(point(1, 0), line), reflect(point(0, 1), line)];
  return {
    a: right.x - origin.x,
    b: right.y - origin.y,
    c: down.x - origin.x,
    d: down.y - origin.y,
    e: origin.x,
    f: origin.y,
  };
}

export const apply = (move: Transform, at: Point): Point =>
  point(move.a * at.x + move.c * at.y + move.e, move.b * at.x + move.d * at.y + move.f);

export const applyToAll = (move: Transform, polygon: Polygon): Polygon =>
  polygon.map((at) => apply(move, at));

/** One move after another, the first named done first. */
export const inOrder = (...moves: Transform[]): Transform => moves.reduce(followedBy, UNMOVED);

function followedBy(first: Transform, then: Transform): Transform {
  const origin = apply(then, point(first.e, first.f));
  return {
    a: then.a * first.a + then.c * first.b,
    b: then.b * first.a + then.d * first.b,
    c: then.a * first.c + then.c * first.d,
    d: then.b * first.c + then.d * first.d,
    e: origin.x,
    f: origin.y,
  };
}

/** The sine of a number of eighths of a turn, exact where it is 0 or 1. */
const eighth = (eighths: number): number =>
  [0, Math.SQRT1_2, 1, Math.SQRT1_2, 0, -Math.SQRT1_2, -1, -Math.SQRT1_2][((eighths % 8) + 8) % 8]!;
