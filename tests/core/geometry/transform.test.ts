/** Moves of the plane: each checked on points, and their laws on arbitrary ones. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cross, distance, middle, minus, type Point, point, reflect } from '#core/geometry/point.ts';
import {
  apply,
  applyToAll,
  foldOver,
  inOrder,
  mirrorAt,
  shift,
  type Transform,
  turn,
  UNMOVED,
} from '#core/geometry/transform.ts';

const SEED = { seed: 20261125, numRuns: 200 };
const coordinate = fc.integer({ min: -1000, max: 1000 });
const anyPoint = fc.tuple(coordinate, coordinate).map(([x, y]) => point(x, y));
const anyMove: fc.Arbitrary<Transform> = fc.oneof(
  fc.integer({ min: -20, max: 20 }).map(turn),
  fc.tuple(coordinate, coordinate).map(([x, y]) => shift(x, y)),
  coordinate.map(mirrorAt),
);

function expectAt(found: Point, expected: Point): void {
  expect(distance(found, expected)).toBeLessThan(1e-6);
}

describe('moves', () => {
  it('turns clockwise as seen, y running down', () => {
    expectAt(apply(turn(2), point(1, 0)), point(0, 1));
    expectAt(apply(turn(-2), point(1, 0)), point(0, -1));
    expectAt(apply(turn(1), point(1, 0)), point(Math.SQRT1_2, Math.SQRT1_2));
    expectAt(apply(turn(8), point(3, 7)), point(3, 7));
  });

  it('shifts, mirrors and folds', () => {
    expectAt(apply(shift(2, 3), point(1, 1)), point(3, 4));
    expectAt(apply(mirrorAt(5), point(1, 9)), point(9, 9));
    const diagonal = { from: point(0, 0), to: point(10, 10) };
    expectAt(apply(foldOver(diagonal), point(4, 0)), point(0, 4));
    expectAt(reflect(point(4, 0), diagonal), point(0, 4));
    expectAt(middle(diagonal), point(5, 5));
    expect(apply(UNMOVED, point(2, 3))).toEqual(point(2, 3));
    expect(cross(point(1, 0), point(0, 1))).toBe(1);
  });
});

describe('properties', () => {
  it('moves done in order are the same as done one by one, and keep distances', () => {
    fc.assert(
      fc.property(fc.array(anyMove, { maxLength: 5 }), anyPoint, anyPoint, (moves, one, other) => {
        const together = inOrder(...moves);
        expectAt(
          apply(together, one),
          moves.reduce((at, move) => apply(move, at), one),
        );
        const [a, b] = applyToAll(together, [one, other]);
        expect(distance(a!, b!)).toBeCloseTo(distance(one, other), 6);
      }),
      SEED,
    );
  });

  it('folding twice along a line undoes it, and points on the line stay', () => {
    fc.assert(
      fc.property(anyPoint, anyPoint, anyPoint, (from, to, at) => {
        fc.pre(distance(from, to) > 1);
        const fold = foldOver({ from, to });
        expectAt(apply(fold, apply(fold, at)), at);
        expectAt(apply(fold, to), to);
        expect(
          Math.abs(cross(minus(to, from), minus(middle({ from: at, to: apply(fold, at) }), from))),
        ).toBeLessThan(1e-3);
      }),
      SEED,
    );
  });
});
