/** Bounds hold for every plan, and meet the best plan on instances with known values. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bound } from '#core/cutting/bound/bound.ts';
import { dualFunctions } from '#core/cutting/bound/dual.ts';
import { priceTable } from '#core/cutting/bound/table.ts';
import type { Part, Piece } from '#core/cutting/order.ts';
import { planCuts } from '#core/cutting/plan.ts';
import { prepare } from '#core/cutting/search/job.ts';
import { bruteForce } from '#tests/support/brute.ts';

const SEEDED = { seed: 20261125 };

describe('dualFunctions', () => {
  it('price no more than 1 for whatever fits end to end', () => {
    const lengths = fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(
        lengths,
        fc.integer({ min: 5, max: 60 }),
        fc.infiniteStream(fc.nat()),
        (list, capacity, picks) => {
          const distinct = [...new Set(list)].sort((one, other) => one - other);
          const copies = distinct.map((one) => list.filter((other) => other === one).length);
          const functions = dualFunctions(capacity, {
            length: Int32Array.from(distinct),
            copies: Int32Array.from(copies),
          });
          const left = [...copies];
          const sums = functions.map(() => 0);
          let room = capacity;
          for (let tries = 0; tries < 40; tries += 1) {
            const pick = (picks.next().value as number) % distinct.length;
            if (left[pick]! === 0 || distinct[pick]! > room) continue;
            left[pick]! -= 1;
            room -= distinct[pick]!;
            functions.forEach((price, index) => {
              sums[index]! += price[pick]!;
            });
          }
          expect(Math.max(...sums)).toBeLessThanOrEqual(1 + 1e-9);
        },
      ),
      { ...SEEDED, numRuns: 400 },
    );
  });
});

describe('priceTable', () => {
  it('agrees with a plain table over every length', () => {
    const ways = fc.array(
      fc.record({
        width: fc.integer({ min: 2, max: 9 }),
        height: fc.integer({ min: 2, max: 9 }),
        price: fc.integer({ min: 1, max: 50 }),
      }),
      { minLength: 1, maxLength: 4 },
    );
    fc.assert(
      fc.property(
        ways,
        fc.integer({ min: 1, max: 14 }),
        fc.integer({ min: 1, max: 14 }),
        (list, width, height) => {
          const known = new Map<string, number>();
          const most = (w: number, h: number): number => {
            const key = `${w},${h}`;
            if (known.has(key)) return known.get(key)!;
            let best = Math.max(
              0,
              ...list.filter((way) => way.width <= w && way.height <= h).map((way) => way.price),
            );
            for (let at = 1; 2 * at <= w; at += 1) best = Math.max(best, most(at, h) + most(w - at, h));
            for (let at = 1; 2 * at <= h; at += 1) best = Math.max(best, most(w, at) + most(w, h - at));
            known.set(key, best);
            return best;
          };
          expect(priceTable(list, 14, 14)!(width, height)).toBe(most(width, height));
        },
      ),
      { ...SEEDED, numRuns: 150 },
    );
  });
});

describe('bound', () => {
  const of = (parts: readonly Part[], pieces: readonly Piece[]) => bound(prepare({ parts }, pieces));

  it('is never above what trying everything finds', () => {
    const side = fc.integer({ min: 2, max: 9 });
    const parts = fc.array(
      fc.record({ width: side, height: side, copies: fc.integer({ min: 1, max: 3 }), upright: fc.boolean() }),
      { minLength: 1, maxLength: 3 },
    );
    const room = fc.integer({ min: 4, max: 11 });
    const pieces = fc.array(
      fc.record({
        width: room,
        height: room,
        kind: fc.constantFrom<'sheet' | 'offcut'>('sheet', 'offcut'),
        copies: fc.integer({ min: 1, max: 2 }),
        upright: fc.boolean(),
      }),
      { minLength: 1, maxLength: 3 },
    );
    fc.assert(
      fc.property(parts, pieces, (someParts, somePieces) => {
        const order = someParts.map((one, index) => ({ ...one, id: `${index}` })).slice(0, 3);
        fc.pre(order.reduce((sum, one) => sum + one.copies, 0) <= 6);
        const stock = somePieces.map((one, index) => ({ ...one, id: `${index}` }));
        const best = bruteForce(order, stock);
        const unplaced = order.reduce((sum, one) => sum + one.copies, 0) - best.placed;
        const found = of(order, stock);
        expect(found.unplaced).toBeLessThanOrEqual(unplaced);
        expect(found.sheetArea(unplaced)).toBeLessThanOrEqual(best.newSheetArea);
      }),
      { ...SEEDED, numRuns: 120 },
    );
  });

  it('is never above what trying everything finds, where parts have to match', () => {
    const design = fc.constantFrom('rose', 'moss', 'sky');
    const printed = fc.option(design, { freq: 5, nil: undefined });
    const side = fc.integer({ min: 2, max: 8 });
    const parts = fc.array(
      fc.record({
        ...{ width: side, height: side, copies: fc.integer({ min: 1, max: 3 }), upright: fc.boolean() },
        match: fc.constantFrom('a', 'a', 'a', 'b', undefined),
        oneDesign: fc.constantFrom(false, false, true),
        designs: fc.option(fc.uniqueArray(design, { minLength: 1, maxLength: 2 }), { nil: undefined }),
      }),
      { minLength: 2, maxLength: 3 },
    );
    const room = fc.integer({ min: 4, max: 10 });
    const pieces = fc.array(
      fc.record({
        ...{ width: room, height: room, design: printed, upright: fc.boolean() },
        kind: fc.constantFrom<'sheet' | 'offcut'>('sheet', 'offcut'),
      }),
      { minLength: 2, maxLength: 4 },
    );
    let stronger = 0;
    fc.assert(
      fc.property(parts, pieces, (someParts, somePieces) => {
        fc.pre(someParts.reduce((sum, one) => sum + one.copies, 0) <= 5);
        const order = someParts.map(
          ({ match, oneDesign, designs, ...one }, index): Part => ({
            ...{ ...one, id: `${index}` },
            ...(match && { match, oneDesign }),
            ...(designs && { designs }),
          }),
        );
        const stock = somePieces.map(
          ({ design, ...one }, index): Piece => ({ ...one, id: `${index}`, ...(design && { design }) }),
        );
        const best = bruteForce(order, stock);
        const unplaced = order.reduce((sum, one) => sum + one.copies, 0) - best.placed;
        const found = of(order, stock);
        expect(found.unplaced).toBeLessThanOrEqual(unplaced);
        expect(found.sheetArea(unplaced)).toBeLessThanOrEqual(best.newSheetArea);
        const { bounds } = planCuts({ parts: order }, stock, { work: 1 });
        expect(bounds.unplaced).toBeLessThanOrEqual(unplaced);
        const apart = of(
          order.map(({ match: _, oneDesign: __, ...one }) => one),
          stock,
        );
        if (found.unplaced > apart.unplaced || found.sheetArea(unplaced) > apart.sheetArea(unplaced))
          stronger += 1;
      }),
      { ...SEEDED, numRuns: 300 },
    );
    expect(stronger).toBeGreaterThan(30);
  });

  describe('where a set must come from one design', () => {
    const pads = (copies: number): Piece[] =>
      ['rose', 'moss', 'sky'].map((design) => ({
        ...{ id: design, design, copies, width: 12, height: 12, kind: 'sheet' },
      }));
    const front: Part = { id: 'front', width: 12, height: 5, copies: 4, match: 'set' };
    const envelope: Part = { id: 'envelope', width: 12, height: 8, copies: 4, match: 'set' };

    it('counts the sets that no design has for both halves', () => {
      const parts = [
        { ...front, designs: ['rose'] },
        { ...envelope, designs: ['moss'] },
      ];
      expect(of(parts, pads(9)).unplaced).toBe(4);
      expect(of([parts[0]!, { ...parts[1]!, copies: 6 }], pads(9)).unplaced).toBe(4);
    });

    it('counts the sets that each design’s sheets have no room for', () => {
      // A sheet holds an envelope or two fronts, so that a design of one sheet gives no whole set.
      expect(of([front, envelope], pads(1)).unplaced).toBe(4);
      expect(of([front, envelope], pads(2)).unplaced).toBe(1);
      expect(of([{ ...front, oneDesign: true }, envelope], pads(2)).unplaced).toBe(4);
    });

    it('counts the sheets that a set takes where offcuts have but its halves', () => {
      const halves: Piece[] = [
        { id: 'strip', design: 'rose', width: 12, height: 5, kind: 'offcut', copies: 4 },
        { id: 'block', design: 'moss', width: 8, height: 8, kind: 'offcut', copies: 4 },
      ];
      const parts = [front, { ...envelope, width: 8, height: 8 }];
      // Blocks for the envelopes and two fronts to a sheet of moss; three copies less leave one whole set.
      expect(of(parts, [...pads(9), ...halves]).sheetArea(0)).toBe(2 * 144);
      expect(of(parts, [...pads(9), ...halves]).sheetArea(3)).toBe(144);
    });
  });

  it('proves that two halves that do not meet need two sheets', () => {
    const sheet: Piece = { id: 'pad', width: 12, height: 12, kind: 'sheet', copies: 9 };
    expect(of([{ id: 'a', width: 7, height: 7, copies: 4 }], [sheet]).sheetArea(0)).toBe(4 * 144);
    expect(of([{ id: 'a', width: 7, height: 7, copies: 4 }], [sheet]).sheetArea(1)).toBe(3 * 144);
  });

  it('bounds each kind of paper apart', () => {
    const pads: Piece[] = ['rose', 'moss'].map((design) => ({
      id: design,
      design,
      width: 12,
      height: 12,
      kind: 'sheet',
      copies: 9,
    }));
    const parts: Part[] = ['rose', 'moss'].map((design) => ({
      id: design,
      designs: [design],
      width: 5,
      height: 5,
      copies: 1,
    }));
    expect(of(parts, pads).sheetArea(0)).toBe(2 * 144);
  });

  it('counts what fits nowhere and what too few pieces leave out', () => {
    const sheet: Piece = { id: 'pad', width: 12, height: 12, kind: 'sheet', copies: 2 };
    const parts: Part[] = [
      { id: 'poster', width: 13, height: 5, copies: 2 },
      { id: 'lining', width: 11, height: 11, copies: 3 },
    ];
    expect(of(parts, [sheet]).unplaced).toBe(3);
  });
});
