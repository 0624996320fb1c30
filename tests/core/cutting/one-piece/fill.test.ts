/**
 * Fills of one piece against published optima, against every possible way of cutting tiny pieces, and against a few laws;
 * each fill is also replayed by the judge of plans. Knows nothing of how a fill is found.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkFill } from '#core/cutting/one-piece/check-fill.ts';
import { type Fill, type FillOptions, fillPiece } from '#core/cutting/one-piece/fill.ts';
import type { FillPart } from '#core/cutting/one-piece/wants.ts';
import type { Piece } from '#core/cutting/order.ts';
import { bestOfAll } from './fill-brute.ts';
import { PUBLISHED } from './fill-published.ts';

const SEED = { seed: 20261125, numRuns: 60 };
const WORK = 20_000;

const sheet = (width: number, height: number): Piece => ({
  ...{ id: 'sheet', kind: 'sheet', width, height, upright: true },
});

const part = (id: string, width: number, height: number, rest: Partial<FillPart> = {}): FillPart => ({
  ...{ id, width, height, upright: true },
  ...rest,
});

/** A fill that the judge finds nothing wrong with and that keeps to its own bound. */
function soundFill(piece: Piece, parts: readonly FillPart[], options: FillOptions = {}): Fill {
  const fill = fillPiece(piece, parts, { work: WORK, ...options });
  expect(checkFill(piece, parts, fill, options)).toEqual([]);
  expect(fill.value).toBeLessThanOrEqual(fill.bound * (1 + 1e-9));
  expect(fill.proved).toBe(fill.value >= fill.bound);
  return fill;
}

const areaOf = (fill: Fill): number => fill.rectangles.reduce((sum, one) => sum + one.width * one.height, 0);

const countOf = (fill: Fill, id: string): number => fill.rectangles.filter((one) => one.part === id).length;

describe('published optima', () => {
  it.each(PUBLISHED)('$name ($paper)', ({ width, height, items, turns, optimum }) => {
    const parts = items.map(([w, h, copies], index) =>
      part(`p${index}`, w, h, { upright: !turns, ...(copies > 0 && { copies }) }),
    );
    const fill = soundFill(sheet(width, height), parts);
    expect(fill.value).toBe(optimum);
    expect(areaOf(fill)).toBe(optimum);
  });
});

describe('against every way of cutting', () => {
  const side = fc.integer({ min: 1, max: 7 });
  const tinyPart = fc.record({
    width: side,
    height: side,
    upright: fc.boolean(),
    copies: fc.integer({ min: 1, max: 3 }),
    value: fc.integer({ min: 1, max: 30 }),
  });
  const tinyParts = fc
    .array(tinyPart, { minLength: 1, maxLength: 3 })
    .map((list): FillPart[] => list.map((one, index) => ({ id: `p${index}`, ...one })));

  it.each(['area', 'count', 'wish'] as const)('reaches and proves the best by %s', (goal) => {
    fc.assert(
      fc.property(side, side, tinyParts, (width, height, parts) => {
        const fill = soundFill(sheet(width, height), parts, { goal });
        expect(fill.value).toBe(bestOfAll(sheet(width, height), parts, goal));
        expect(fill.proved).toBe(true);
      }),
      SEED,
    );
  });

  it('counts whole wishes in whole numbers, whatever prices the search sums up', () => {
    const parts = [
      part('row', 6, 1, { value: 273, copies: 1 }),
      part('dot', 1, 1, { value: 33, copies: 3, upright: false }),
      part('all', 6, 5, { value: 56, copies: 1, upright: false }),
    ];
    expect(soundFill(sheet(6, 5), parts, { goal: 'wish' })).toMatchObject({ value: 372, bound: 372 });
  });

  it('takes as many as fit where no copies are given', () => {
    fc.assert(
      fc.property(side, side, tinyParts, (width, height, parts) => {
        const endless = parts.slice(0, 2).map(({ copies, ...rest }) => rest);
        const many = endless.map((one) => ({
          ...one,
          copies: Math.floor((width * height) / (one.width * one.height)),
        }));
        fc.pre(many.every(({ copies }) => copies < 12));
        const fill = soundFill(sheet(width, height), endless, { goal: 'wish' });
        expect(fill.value).toBe(bestOfAll(sheet(width, height), many, 'wish'));
      }),
      SEED,
    );
  });

  it('never claims more than a short trimmer can cut', () => {
    fc.assert(
      fc.property(
        side,
        side,
        tinyParts,
        fc.integer({ min: 1, max: 7 }),
        (width, height, parts, longestCut) => {
          const fill = soundFill(sheet(width, height), parts, { longestCut });
          const best = bestOfAll(sheet(width, height), parts, 'area', longestCut);
          expect(fill.value).toBeLessThanOrEqual(best);
          expect(fill.bound).toBeGreaterThanOrEqual(best);
        },
      ),
      SEED,
    );
  });
});

describe('laws', () => {
  const length = fc.integer({ min: 40, max: 400 });
  const parts = fc
    .array(fc.record({ width: length, height: length, copies: fc.integer({ min: 1, max: 5 }) }), {
      minLength: 1,
      maxLength: 8,
    })
    .map((list): FillPart[] => list.map((one, index) => ({ id: `p${index}`, ...one })));
  const work = 2_000;

  it('does not depend on the unit', () => {
    fc.assert(
      fc.property(parts, fc.integer({ min: 2, max: 50_000 }), (list, unit) => {
        const small = soundFill(sheet(600, 500), list, { work });
        const large = soundFill(
          sheet(600 * unit, 500 * unit),
          list.map((one) => ({ ...one, width: one.width * unit, height: one.height * unit })),
          { work },
        );
        expect(large.value).toBe(small.value * unit ** 2);
        expect(large.rectangles.length).toBe(small.rectangles.length);
      }),
      { ...SEED, numRuns: 15 },
    );
  });

  it('is worth the same with the piece and its parts on their side, where both are proved', () => {
    fc.assert(
      fc.property(parts, (list) => {
        const upright = soundFill(sheet(600, 500), list, { work });
        const aside = soundFill(
          sheet(500, 600),
          list.map((one) => ({ ...one, width: one.height, height: one.width })),
          { work },
        );
        if (upright.proved && aside.proved) expect(aside.value).toBe(upright.value);
        expect(aside.value).toBeLessThanOrEqual(upright.bound);
      }),
      { ...SEED, numRuns: 15 },
    );
  });

  it('gives the same fill twice for the same seed and work', () => {
    fc.assert(
      fc.property(parts, fc.integer(), (list, seed) => {
        const options = { work: 500, seed };
        expect(fillPiece(sheet(600, 500), list, options)).toEqual(fillPiece(sheet(600, 500), list, options));
      }),
      { ...SEED, numRuns: 15 },
    );
  });
});

describe('what a maker asks', () => {
  const inch = 1_016_000;

  it('gets one upright 5 × 7 in panel from an 8½ × 11 in sheet, and two if they may be turned', () => {
    const piece: Piece = { id: 'p', kind: 'sheet', width: 8.5 * inch, height: 11 * inch, upright: true };
    const panel = { id: 'panel', width: 5 * inch, height: 7 * inch };
    const upright = soundFill(piece, [{ ...panel, upright: true }], { goal: 'count' });
    expect(upright).toMatchObject({ value: 1, proved: true });
    expect(soundFill(piece, [panel], { goal: 'count' })).toMatchObject({ value: 2, proved: true });
  });

  it('keeps to the print, the design and the pin', () => {
    const piece: Piece = { ...sheet(10, 4), design: 'fern' };
    expect(soundFill(piece, [part('tall', 4, 10, { upright: true })]).rectangles).toEqual([]);
    expect(soundFill(piece, [part('tall', 4, 10, { upright: false })]).rectangles).toHaveLength(1);
    expect(soundFill(piece, [part('other', 4, 4, { designs: ['moss'] })]).rectangles).toEqual([]);
    expect(soundFill(piece, [part('border', 4, 4, { pin: { edge: 'top' } })]).rectangles).toEqual([]);
  });

  it('leaves one large strip rather than two thin ones, and calls what is too narrow waste', () => {
    const fill = soundFill(sheet(12, 10), [part('square', 6, 9, { copies: 1 })], { keepAtLeast: 2 });
    expect(fill.leftovers).toEqual([{ x: 6, y: 0, width: 6, height: 10 }]);
    expect(fill.cuts).toMatchObject({
      at: 6,
      along: 'x',
      parts: [{ at: 9, along: 'y' }, { leftover: true }],
    });
  });

  it('takes what is wished for most', () => {
    const parts = [part('plain', 3, 3, { value: 1 }), part('dear', 5, 5, { copies: 1, value: 10 })];
    const fill = soundFill(sheet(6, 6), parts, { goal: 'wish' });
    expect([fill.value, countOf(fill, 'dear')]).toEqual([10, 1]);
  });

  it('cuts across first where the trimmer is shorter than the piece', () => {
    const fill = soundFill(sheet(24, 12), [part('a', 7, 5), part('b', 3, 4)], { longestCut: 12 });
    expect(fill.cuts).toMatchObject({ along: 'x' });
    expect(fill.value).toBeGreaterThan(0.95 * 24 * 12);
  });

  it('gets many small ones by count and few large ones by area', () => {
    const parts = [part('tag', 2, 3, { copies: 10 }), part('panel', 5, 7, { copies: 4 }), part('mat', 6, 8)];
    const count = soundFill(sheet(12, 14), parts, { goal: 'count' });
    expect([countOf(count, 'tag'), count.value, count.proved]).toEqual([10, 12, true]);
    expect(soundFill(sheet(12, 14), parts)).toMatchObject({ value: 140 + 24, proved: true });
  });

  it('knows that a trimmer shorter than both sides cuts nothing', () => {
    const fill = soundFill(sheet(24, 13), [part('a', 7, 5)], { longestCut: 12 });
    expect(fill).toMatchObject({ value: 0, bound: 0, proved: true, rectangles: [] });
  });

  it('fills the gaps that a search cut short has left', () => {
    const parts = [part('a', 50, 73, { copies: 90 }), part('b', 111, 39, { copies: 90 })];
    const fill = soundFill(sheet(1000, 980), parts, { work: 400 });
    expect(fill.rectangles).toHaveLength(180);
  });
});

describe('bad input', () => {
  it('says that nothing is to be had', () => {
    const nothing = { rectangles: [], value: 0, bound: 0, proved: true, cuts: { leftover: true } };
    expect(fillPiece(sheet(9, 9), [])).toMatchObject(nothing);
    expect(fillPiece(sheet(9, 9), [part('large', 10, 3), part('none', 2, 2, { copies: 0 })])).toMatchObject(
      nothing,
    );
    expect(fillPiece(sheet(9, 9), [part('unloved', 3, 3)], { goal: 'wish' })).toMatchObject(nothing);
  });

  it.each([
    ['length', part('a', Number.NaN, 3)],
    ['length', part('a', 2.5, 3)],
    ['length', part('a', 0, 3)],
    ['length', part('a', '4' as unknown as number, 3)],
    ['copies', part('a', 2, 3, { copies: -1 })],
    ['value', part('a', 2, 3, { value: Number.POSITIVE_INFINITY })],
  ])('throws on a wrong %s', (what, wrong) => {
    expect(() => fillPiece(sheet(9, 9), [wrong])).toThrow(`invalid ${what}`);
  });

  it('stays within its work for thousands of parts and for specks of paper', () => {
    const parts = Array.from({ length: 5000 }, (_, i) =>
      part(`p${i}`, 20 + ((i * 37) % 101), 20 + ((i * 61) % 103), { copies: 10_000 }),
    );
    const many = soundFill(sheet(300, 300), parts, { work: 300 });
    expect(many.value).toBeGreaterThan(0.8 * many.bound);
    const specks = fillPiece(sheet(12_192_000, 12_192_000), [part('speck', 1, 1)], { work: 300 });
    expect(specks.rectangles.length).toBeLessThanOrEqual(10_000);
  });

  it('stops when told, with a sound fill', () => {
    let asked = 0;
    const shouldStop = (): boolean => {
      asked += 1;
      return asked > 3;
    };
    const parts = Array.from({ length: 30 }, (_, i) => part(`p${i}`, 31 + i * 7, 190 - i * 5, { copies: 2 }));
    expect(soundFill(sheet(997, 883), parts, { shouldStop }).rectangles.length).toBeGreaterThan(0);
  });

  it('keeps the time limit of its clock', () => {
    let time = 0;
    const now = (): number => {
      time += 1;
      return time;
    };
    const parts = Array.from({ length: 30 }, (_, i) => part(`p${i}`, 31 + i * 7, 190 - i * 5, { copies: 2 }));
    const fill = soundFill(sheet(997, 883), parts, { now, timeMs: 200, work: Number.POSITIVE_INFINITY });
    expect(fill.timeMs).toBeLessThan(220);
  });
});
