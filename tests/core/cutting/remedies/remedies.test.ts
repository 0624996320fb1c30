/** What is said to help with a part that is left out does help: with matching, kept pieces, and a short trimmer. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Remedy, UsedPiece } from '#core/cutting/cuts.ts';
import type { Order, Part, Piece } from '#core/cutting/order.ts';
import { planCuts } from '#core/cutting/plan.ts';
import { remediesFor } from '#core/cutting/remedies/remedies.ts';

const pad = (design: string, copies: number, more: Partial<Piece> = {}): Piece => ({
  ...{ id: design, design, width: 12, height: 12, kind: 'sheet', copies },
  ...more,
});
const part = (id: string, width: number, height: number, copies: number, more: Partial<Part> = {}): Part => ({
  ...{ id, width, height, copies },
  ...more,
});
const plan = (order: Order, pieces: readonly Piece[], work = 800) => planCuts(order, pieces, { work });
const helpFor = (order: Order, pieces: readonly Piece[], id: string): readonly Remedy[] =>
  plan(order, pieces).unplaced.find((one) => one.part === id)?.remedies ?? [];

describe('where a set must come from one design', () => {
  it('asks for more of the design that the rest of the set came from, as many as wait there', () => {
    // Envelopes from rose alone, fronts from any: one front has no room beside its two envelopes.
    const parts = [
      part('envelope', 12, 8, 2, { match: 'set', designs: ['rose'] }),
      part('front', 12, 5, 2, { match: 'set' }),
    ];
    const offcut = pad('rose', 1, { id: 'strip', width: 12, height: 5, kind: 'offcut' });
    expect(helpFor({ parts }, [pad('rose', 2), offcut], 'front')).toEqual([
      { kind: 'another', piece: 'rose', copies: 1, takes: 1 },
    ]);
  });

  it('tells of room elsewhere that only matching closes', () => {
    const parts = [
      part('envelope', 12, 8, 1, { match: 'set', designs: ['rose'] }),
      part('front', 12, 5, 1, { match: 'set' }),
    ];
    expect(helpFor({ parts }, [pad('rose', 1), pad('moss', 3)], 'front')).toEqual([
      { kind: 'another', piece: 'rose', copies: 1, takes: 1 },
      { kind: 'apart' },
    ]);
    const poster = part('poster', 12, 12, 3, { designs: ['moss'] });
    expect(helpFor({ parts: [...parts, poster] }, [pad('rose', 1), pad('moss', 3)], 'front')).toEqual([
      { kind: 'another', piece: 'rose', copies: 1, takes: 1 },
    ]);
  });

  it('asks for two designs where sets wait in two, and for no more of either than wait there', () => {
    const parts = [part('envelope', 12, 12, 3, { match: 'set' }), part('front', 6, 12, 3, { match: 'set' })];
    const pieces = [pad('rose', 2), pad('moss', 1), pad('sky', 5)];
    const taken = (piece: string): UsedPiece => ({
      ...{ piece, leftovers: [], cuts: { part: 'envelope', turned: false } },
      rectangles: [{ part: 'envelope', x: 0, y: 0, width: 12, height: 12, turned: false }],
    });
    const used = ['rose', 'rose', 'moss'].map(taken);
    expect(remediesFor({ parts, pieces, used })(parts[1]!, 3)).toEqual([
      { kind: 'another', piece: 'rose', copies: 1, takes: 2 },
      { kind: 'another', piece: 'moss', copies: 1, takes: 1 },
      { kind: 'apart' },
    ]);
  });

  it('never asks for more of a design that the whole set may not come from', () => {
    const parts = [
      part('envelope', 12, 8, 2, { match: 'set', oneDesign: true, designs: ['rose'] }),
      part('front', 12, 5, 2, { match: 'set', oneDesign: true, designs: ['moss'] }),
    ];
    const order = { parts };
    const pieces = [pad('rose', 2), pad('moss', 2)];
    const [left] = plan(order, pieces).unplaced;
    expect(left!.remedies).toEqual([{ kind: 'apart' }]);
    const mossOnly = [pad('rose', 2), pad('moss', 2, { keep: true })];
    expect(helpFor(order, mossOnly, 'front')).toEqual([{ kind: 'paper' }]);
  });

  it('has both halves of a set that is missing wait for the same design', () => {
    // Alone, the front would rather have moss, of which one sheet takes both; the envelope fits rose only.
    const parts = [
      part('envelope', 10, 10, 2, { match: 'set' }),
      part('front', 9, 5, 2, { match: 'set', upright: true }),
    ];
    const pieces = [
      pad('moss', 0, { width: 9, height: 10, upright: true }),
      pad('rose', 0, { width: 12, height: 9, upright: true }),
      pad('rose', 0, { id: 'large rose' }),
      pad('sky', 1, { width: 5, height: 5 }),
    ];
    const answers = ['envelope', 'front'].map((id) => helpFor({ parts }, pieces, id)[0]);
    const designs = answers.map(
      (one) => pieces.find(({ id }) => one && 'piece' in one && id === one.piece)?.design,
    );
    expect(designs).toEqual(['rose', 'rose']);
  });
});

describe('where the maker decides', () => {
  it('names a kept piece that would do, and asks for no more of one', () => {
    const order = { parts: [part('front', 5, 5, 1)] };
    const heirloom: Piece = { id: 'heirloom', width: 6, height: 6, kind: 'offcut', keep: true };
    expect(helpFor(order, [heirloom, pad('rose', 1, { width: 4 })], 'front')).toEqual([
      { kind: 'kept', piece: 'heirloom' },
    ]);
  });

  it('names the cut that the trimmer is too short for, and no size that it cuts no better', () => {
    const order = { parts: [part('runner', 5, 20, 1)], longestCut: 12 };
    const roll: Piece = { id: 'roll', width: 10, height: 24, kind: 'sheet' };
    // Cut across at 20 first, that is 10 long; then down, 20 long.
    expect(helpFor(order, [roll], 'runner')).toEqual([{ kind: 'longer cut', length: 20 }]);
  });

  it('does not ask for more paper that the trimmer cannot cut', () => {
    const order = { parts: [part('card', 5, 5, 3)], longestCut: 10 };
    const large: Piece = { id: 'large', width: 11, height: 11, kind: 'sheet' };
    const narrow: Piece = { id: 'narrow', width: 5, height: 11, kind: 'sheet' };
    expect(helpFor(order, [large, narrow], 'card')).toEqual([
      { kind: 'another', piece: 'narrow', copies: 1, takes: 1 },
    ]);
  });

  it('lets a part with a spot be no larger than the sheet is from there', () => {
    const order = { parts: [part('window', 8, 8, 1, { pin: { x: 6, y: 2 } })] };
    expect(helpFor(order, [pad('rose', 1)], 'window')).toEqual([{ kind: 'smaller', width: 6, height: 8 }]);
  });
});

describe('properties', () => {
  it('whatever takes a part does place more of the order', () => {
    const side = fc.integer({ min: 3, max: 9 });
    const design = fc.constantFrom('rose', 'moss', 'sky');
    const parts = fc.array(
      fc.record({
        width: side,
        height: side,
        copies: fc.integer({ min: 1, max: 3 }),
        match: fc.constantFrom(undefined, 'a', 'a', 'b'),
        oneDesign: fc.boolean(),
        upright: fc.boolean(),
        designs: fc.option(fc.uniqueArray(design, { minLength: 1, maxLength: 2 }), { nil: undefined }),
      }),
      { minLength: 1, maxLength: 3 },
    );
    const pieces = fc.array(
      fc.record({
        width: fc.integer({ min: 4, max: 11 }),
        height: fc.integer({ min: 4, max: 11 }),
        kind: fc.constantFrom<'sheet' | 'offcut'>('sheet', 'offcut'),
        copies: fc.integer({ min: 1, max: 2 }),
        design,
        upright: fc.boolean(),
        keep: fc.constantFrom(false, false, false, true),
      }),
      { minLength: 1, maxLength: 4 },
    );
    const seen = new Set<string>();
    fc.assert(
      fc.property(parts, pieces, fc.constantFrom(undefined, 8), (someParts, somePieces, longestCut) => {
        const order: Order = {
          parts: someParts.map(({ match, oneDesign, designs, ...one }, index) => ({
            ...one,
            id: `${index}`,
            ...(match && { match, ...(oneDesign && { oneDesign }) }),
            ...(designs && { designs }),
          })),
          ...(longestCut && { longestCut }),
        };
        const stock = somePieces.map((one, index) => ({ ...one, id: `${index}` }));
        const before = plan(order, stock);
        for (const { part, remedies } of before.unplaced) {
          expect(remedies).not.toEqual([]);
          for (const remedy of remedies) {
            const [then, from] = applied(remedy, part, order, stock);
            if (!then || !from) continue;
            seen.add(remedy.kind);
            const placed = plan(then, from).placed;
            expect(placed > before.placed ? placed : plan(then, from, 10_000).placed).toBeGreaterThan(
              before.placed,
            );
          }
        }
      }),
      { seed: 20261125, numRuns: 150 },
    );
    expect([...seen].sort()).toEqual(['another', 'apart', 'kept']);
  });

  /** The order and the pieces with the remedy taken; neither for those that change the part itself. */
  function applied(remedy: Remedy, id: string, order: Order, pieces: readonly Piece[]): [Order?, Piece[]?] {
    if (remedy.kind === 'another')
      return [
        order,
        pieces.map((one) =>
          one.id === remedy.piece ? { ...one, copies: one.copies! + remedy.copies } : one,
        ),
      ];
    if (remedy.kind === 'kept')
      return [order, pieces.map((one) => (one.id === remedy.piece ? { ...one, keep: false } : one))];
    if (remedy.kind !== 'apart') return [];
    const parts = order.parts.map((one) => {
      if (one.id !== id) return one;
      const { match: _, oneDesign: __, ...alone } = one;
      return alone;
    });
    return [{ ...order, parts }, [...pieces]];
  }
});
