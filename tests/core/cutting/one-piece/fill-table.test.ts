/** The tables behind fills: totals along a side, values of all rectangles, and what can surround a block. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fillPiece } from '#core/cutting/one-piece/fill.ts';
import { axisOf, floorIndex, leftBy } from '#core/cutting/one-piece/normal-patterns.ts';
import { openSurround, type Surround, surroundOf } from '#core/cutting/one-piece/surround.ts';
import { densestOf, fillTable, type Lay, mostOf, traceBest } from '#core/cutting/one-piece/unlimited.ts';
import type { Piece } from '#core/cutting/order.ts';
import { readLimited, readUnlimited } from '#tests/bench/fill.ts';

const SEED = { seed: 20261125, numRuns: 100 };
const never = (): boolean => false;

const side = fc.integer({ min: 1, max: 12 });
const someLays = fc
  .array(fc.record({ width: side, height: side, value: fc.integer({ min: 1, max: 50 }) }), {
    minLength: 1,
    maxLength: 4,
  })
  .map((list): Lay[] => list.map((one, part) => ({ ...one, part, turned: false })));

const axes = (lays: readonly Lay[], width: number, height: number, most = 1000) =>
  [
    axisOf(
      lays.map((lay) => lay.width),
      width,
      most,
    )!,
    axisOf(
      lays.map((lay) => lay.height),
      height,
      most,
    )!,
  ] as const;

describe('totals along a side', () => {
  it('are those that cuts can need', () => {
    expect([...axisOf([5, 8], 20, 100)!.marks]).toEqual([0, 5, 8, 10, 15, 20]);
    expect([...leftBy(axisOf([5, 8], 20, 100)!)]).toEqual([0, 5, 10, 15, 20]);
  });

  it('do not grow with the unit, and leave out what no cut needs', () => {
    const inch = 1_016_000;
    const axis = axisOf([4.25 * inch, 5.5 * inch], 12 * inch, 100)!;
    expect([...axis.marks].map((mark) => mark / inch)).toEqual([0, 4.25, 5.5, 11]);
  });

  it('become coarser rather than many, and never too short', () => {
    const axis = axisOf([1000, 1003, 1009, 1013], 10_000, 50)!;
    expect(axis.unit).toBeGreaterThan(1);
    expect(axis.marks.length).toBeLessThanOrEqual(50);
    expect(axisOf([1, 1000], 10_000, 50)).toBeUndefined();
  });

  it('are found by the last that is not above', () => {
    const marks = Float64Array.of(0, 5, 8);
    expect([-1, 0, 4, 5, 7.5, 8, 9].map((value) => floorIndex(marks, value))).toEqual([0, 0, 0, 1, 1, 2, 2]);
  });
});

describe('values of rectangles', () => {
  /** The most of any whole-numbered rectangle, from the definition. */
  const plain = (lays: readonly Lay[], width: number, height: number): number[][] => {
    const best = Array.from({ length: width + 1 }, () => new Array<number>(height + 1).fill(0));
    for (let w = 1; w <= width; w += 1) {
      for (let h = 1; h <= height; h += 1) {
        let most = 0;
        for (const lay of lays) if (lay.width <= w && lay.height <= h) most = Math.max(most, lay.value);
        for (let x = 1; x < w; x += 1) most = Math.max(most, best[x]![h]! + best[w - x]![h]!);
        for (let y = 1; y < h; y += 1) most = Math.max(most, best[w]![y]! + best[w]![h - y]!);
        best[w]![h] = most;
      }
    }
    return best;
  };

  it('are those of the recursion over every cut, and can be traced', () => {
    fc.assert(
      fc.property(someLays, side, side, (lays, width, height) => {
        const fitting = lays.filter((lay) => lay.width <= width && lay.height <= height);
        fc.pre(fitting.length > 0);
        const table = fillTable(...axes(fitting, width, height), fitting, never)!;
        expect(mostOf(table)).toBe(plain(fitting, width, height)[width]![height]);
        const traced = traceBest(table, fitting)!;
        expect(traced.width).toBeLessThanOrEqual(width);
        expect(traced.height).toBeLessThanOrEqual(height);
      }),
      SEED,
    );
  });

  it('are the same where one half of the table mirrors the other', () => {
    fc.assert(
      fc.property(someLays, side, (lays, width) => {
        const both = lays
          .filter((lay) => lay.width <= width && lay.height <= width)
          .flatMap((lay) => [lay, { ...lay, width: lay.height, height: lay.width, turned: true }]);
        fc.pre(both.length > 0);
        const table = fillTable(...axes(both, width, width), both, never)!;
        expect(table.symmetric).toBe(true);
        expect(mostOf(table)).toBe(plain(both, width, width)[width]![width]);
      }),
      SEED,
    );
  });

  it('are upper bounds on a coarse grid', () => {
    fc.assert(
      fc.property(someLays, fc.integer({ min: 3, max: 9 }), (lays, scale) => {
        const large = lays.map((lay, part) => ({
          ...lay,
          width: lay.width * scale + part,
          height: lay.height * scale,
        }));
        const [width, height] = [14 * scale, 11 * scale];
        const fitting = large.filter((lay) => lay.width <= width && lay.height <= height);
        fc.pre(fitting.length > 0);
        const [x, y] = axes(fitting, width, height, 12);
        fc.pre(x !== undefined && y !== undefined);
        const exact = fillTable(...axes(fitting, width, height), fitting, never)!;
        expect(mostOf(fillTable(x, y, fitting, never)!)).toBeGreaterThanOrEqual(mostOf(exact));
      }),
      SEED,
    );
  });

  it('are given up when told to stop', () => {
    const lays: Lay[] = [{ part: 0, turned: false, width: 2, height: 2, value: 4 }];
    expect(fillTable(...axes(lays, 9, 9), lays, () => true)).toBeUndefined();
  });

  it('have a density that no lay beats', () => {
    const lays: Lay[] = [
      { part: 0, turned: false, width: 2, height: 3, value: 7 },
      { part: 1, turned: false, width: 5, height: 5, value: 20 },
    ];
    expect(densestOf(lays)).toBeCloseTo(7 / 6, 9);
  });
});

describe('what surrounds a block', () => {
  const around = ({ values, atX, atY, scaleX, scaleY }: Surround, width: number, height: number): number =>
    values[atX[Math.trunc(width * scaleX)]! + atY[Math.trunc(height * scaleY)]!]!;

  it('with the block is worth no less than the best fill that has such a block', () => {
    fc.assert(
      fc.property(someLays, side, side, (lays, width, height) => {
        const fitting = lays.filter((lay) => lay.width <= width && lay.height <= height);
        fc.pre(fitting.length > 0);
        const table = fillTable(...axes(fitting, width, height), fitting, never)!;
        const surround = surroundOf(table, width, height, never)!;
        for (const block of blocksOf(traceBest(table, fitting)!, fitting)) {
          expect(block.value + around(surround, block.width, block.height)).toBeGreaterThanOrEqual(
            mostOf(table),
          );
        }
        expect(around(surround, width, height)).toBe(0);
      }),
      SEED,
    );
  });

  it('is without limit where nothing is known', () => {
    expect(around(openSurround, 3, 4)).toBe(Number.POSITIVE_INFINITY);
  });

  /** The blocks of a fill at every level, with what is in them. */
  function blocksOf(
    node: NonNullable<ReturnType<typeof traceBest>>,
    lays: readonly Lay[],
  ): { width: number; height: number; value: number }[] {
    const { width, height } = node;
    if ('lay' in node) return [{ width, height, value: lays[node.lay]!.value }];
    const [first, second] = [blocksOf(node.first, lays), blocksOf(node.second, lays)];
    return [{ width, height, value: first[0]!.value + second[0]!.value }, ...first, ...second];
  }
});

describe('published collections', () => {
  const unlimited = [...readUnlimited(false), ...readUnlimited(true)];
  const quick = [...readLimitedQuick(), ...unlimited.filter(({ name }) => name !== 'gcut13')];

  it.each(quick)('$name: $optimum', ({ piece, parts, optimum }) => {
    expect(fillPiece(piece, parts, { work: 30_000 }).value).toBe(optimum);
  });

  /** Small sheets, without the two that only the bench has the time for. */
  function readLimitedQuick() {
    const small = ({ width, height }: Piece): boolean => width * height < 30_000;
    const slow = ["Hchl4s'", 'Hchl8s'];
    return readLimited().filter(({ name, piece }) => small(piece) && !slow.includes(name));
  }
});
