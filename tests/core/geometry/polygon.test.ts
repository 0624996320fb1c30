/** Cuts and overlaps of polygons: known shapes, then laws with polygon-clipping as the outside reference. */
import fc from 'fast-check';
import clipping from 'polygon-clipping';
import { describe, expect, it } from 'vitest';
import { type Polygon, point } from '#core/geometry/point.ts';
import {
  area,
  difference,
  extent,
  inset,
  keepRight,
  overlap,
  rectangle,
  totalArea,
  union,
  without,
  withoutRepeats,
} from '#core/geometry/polygon.ts';

const SEED = { seed: 20261125, numRuns: 400 };
const unit = rectangle(0, 0, 1000, 1000);

/** Points on a circle in order: a convex polygon, clockwise as seen. */
const convex: fc.Arbitrary<Polygon> = fc
  .record({
    x: fc.integer({ min: 0, max: 2000 }),
    y: fc.integer({ min: 0, max: 2000 }),
    radius: fc.integer({ min: 100, max: 1500 }),
    angles: fc.uniqueArray(fc.integer({ min: 0, max: 59 }), { minLength: 3, maxLength: 8 }),
  })
  .map(({ x, y, radius, angles }) =>
    angles
      .toSorted((one, other) => one - other)
      .map((step) =>
        point(x + radius * Math.cos((step * Math.PI) / 30), y + radius * Math.sin((step * Math.PI) / 30)),
      ),
  );

const rings = (polygon: Polygon): [number, number][][] => [polygon.map(({ x, y }) => [x, y])];

const referenceArea = (found: [number, number][][][]): number =>
  found.flat().reduce((sum, ring) => sum + area(ring.slice(0, -1).map(([x, y]) => point(x, y))), 0);

describe('an empty polygon', () => {
  it('overlaps nothing, from either side, and takes nothing away', () => {
    expect(overlap(unit, [])).toEqual([]);
    expect(overlap([], unit)).toEqual([]);
    expect(without(unit, [])).toEqual([unit]);
  });
});

describe('known shapes', () => {
  it('measures areas whichever way round the corners go', () => {
    expect(area(unit)).toBe(1_000_000);
    expect(area([...unit].reverse())).toBe(1_000_000);
    expect(area([point(0, 0), point(4, 0), point(0, 3)])).toBe(6);
    expect(totalArea([unit, rectangle(5, 5, 2, 3)])).toBe(1_000_006);
  });

  it('keeps what lies on the right of a line, y running down', () => {
    const lower = keepRight(unit, { from: point(0, 400), to: point(1, 400) });
    expect(area(lower)).toBeCloseTo(600_000);
    expect(Math.min(...lower.map(({ y }) => y))).toBeCloseTo(400);
    expect(keepRight(unit, { from: point(1, -5), to: point(0, -5) })).toEqual([]);
    expect(keepRight(unit, { from: point(0, -5), to: point(1, -5) })).toEqual(unit);
  });

  it('moves edges inwards, down to nothing', () => {
    expect(inset(unit, 100)).toEqual(expect.arrayContaining([...rectangle(100, 100, 800, 800)]));
    expect(inset(unit, 600)).toEqual([]);
  });

  it('joins and drops repeated corners', () => {
    expect(totalArea(union(unit, rectangle(500, 0, 1000, 1000)))).toBe(1_500_000);
    expect(union(unit, rectangle(5000, 0, 10, 10))).toHaveLength(2);
    expect(union([], rectangle(0, 0, 0, 50))).toEqual([]);
    expect(withoutRepeats([point(0, 0), point(0, 0), point(1, 0), point(0, 1), point(0, 0)])).toHaveLength(3);
  });

  it('cuts out what reaches across the edge', () => {
    expect(totalArea(difference(unit, rectangle(-10, -10, 1020, 260)))).toBe(750_000);
    expect(totalArea(difference(unit, rectangle(400, -10, 200, 1020)))).toBe(800_000);
    expect(difference(unit, rectangle(400, -10, 200, 1020))).toHaveLength(2);
    expect(difference(unit, [])).toEqual([unit]);
  });

  it('tells how far a shape extends', () => {
    expect(extent(unit, point(1, 0))).toBe(1000);
    expect(extent(unit, point(Math.SQRT1_2, Math.SQRT1_2))).toBeCloseTo(1000 * Math.SQRT2);
    expect(extent([], point(1, 0))).toBe(0);
  });
});

describe('properties', () => {
  it('overlaps of convex shapes are as large as polygon-clipping says', () => {
    fc.assert(
      fc.property(convex, convex, (one, other) => {
        const reference = referenceArea(clipping.intersection(rings(one), rings(other)));
        expect(area(overlap(one, other))).toBeCloseTo(reference, 3);
        expect(area(overlap(other, one))).toBeCloseTo(reference, 3);
      }),
      SEED,
    );
  });

  it('what lies outside another shape is as large as polygon-clipping says', () => {
    fc.assert(
      fc.property(convex, convex, (one, other) => {
        const reference = referenceArea(clipping.difference(rings(one), rings(other)));
        // Each of its pieces may be dropped when it is smaller than a unit; a hole counts against its outline.
        const holes =
          2 * referenceArea(clipping.difference(rings(one), rings(other)).map((rest) => rest.slice(1)));
        expect(Math.abs(totalArea(without(one, other)) - (reference - holes))).toBeLessThan(10);
      }),
      SEED,
    );
  });

  it('what is kept on either side of a line adds up', () => {
    const coordinate = fc.integer({ min: 0, max: 2000 });
    fc.assert(
      fc.property(convex, coordinate, coordinate, coordinate, (shape, x, y, toX) => {
        const [from, to] = [point(x, y), point(toX, y + 300)];
        const parts = area(keepRight(shape, { from, to })) + area(keepRight(shape, { from: to, to: from }));
        expect(parts).toBeCloseTo(area(shape), 3);
      }),
      SEED,
    );
  });

  it('joined shapes are as large as both less what they share', () => {
    fc.assert(
      fc.property(convex, convex, (one, other) => {
        const expected = area(one) + area(other) - area(overlap(one, other));
        // Joining rounds corners to whole units; these shapes are a thousand across.
        expect(Math.abs(totalArea(union(one, other)) - expected)).toBeLessThan(8_000);
      }),
      SEED,
    );
  });

  it('an inset shape lies inside by that much', () => {
    fc.assert(
      fc.property(convex, fc.integer({ min: 1, max: 60 }), (shape, by) => {
        const inner = inset(shape, by);
        expect(area(overlap(inner, shape))).toBeCloseTo(area(inner), 3);
        expect(area(inset(inner, by))).toBeCloseTo(area(inset(shape, 2 * by)), 2);
      }),
      SEED,
    );
  });
});
