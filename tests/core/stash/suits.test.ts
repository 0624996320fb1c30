/** What suits: real paper by hand, the planner's own opinion at random, and paper that is left out with its reason. */
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { betterOf, wholeSets } from '#core/batch/planned.ts';
import { cuttingOf } from '#core/batch/to-order.ts';
import { planCuts } from '#core/cutting/plan.ts';
import { leftOutOf } from '#core/stash/left-out.ts';
import { type Piece, pieceOfOffcut, pieceOfSheet } from '#core/stash/stash.ts';
import { type PaperWanted, unsuited } from '#core/stash/suits.ts';
import { inches } from '#shared/length.ts';
import { type Cast, fillShelf, size } from '#tests/support/cast.ts';
import { freshDatabase } from '#tests/support/fresh-database.ts';

let cast: Cast;
let hem: Piece;
let fern: Piece;

beforeAll(async () => {
  const db = await freshDatabase();
  cast = await fillShelf(db);
  [hem, fern] = [pieceOfSheet(cast.hem), pieceOfSheet(cast.fern)];
});

const wanted = (width: number, height: number, rest: Partial<PaperWanted> = {}): PaperWanted => ({
  ...size(width, height),
  mayTurn: true,
  ...rest,
});

describe('a 12 × 12 sheet with a border of 1½ in', () => {
  test('suits a card base of 8½ × 5½ beside the border, and 12 × 10½ at the most', () => {
    expect(unsuited(wanted(8.5, 5.5), hem)).toBeUndefined();
    expect(unsuited(wanted(12, 10.5), hem)).toBeUndefined();
    expect(unsuited(wanted(12, 10.75), hem)).toEqual({ why: 'too small', beside: true });
    expect(unsuited(wanted(12.5, 10), hem)).toEqual({ why: 'too small', beside: false });
  });

  test('suits a front that wants the border, over all of the sheet; no other paper does', () => {
    expect(unsuited(wanted(12, 12, { border: true }), hem)).toBeUndefined();
    expect(unsuited(wanted(5, 4, { border: true }), fern)).toEqual({ why: 'no border' });
    expect(unsuited(wanted(5, 4, { border: true }), { ...hem, border: false })).toEqual({ why: 'no border' });
  });

  test('suits a spot wherever it is, and is named where the trimmer is too short for its border', () => {
    const at = { x: inches(0), y: inches(6) };
    expect(unsuited(wanted(12, 6, { at }), hem)).toBeUndefined();
    expect(unsuited(wanted(12, 6.5, { at }), hem)).toMatchObject({ why: 'too small' });
    expect(unsuited(wanted(4, 4), hem, { longestCut: inches(11) })).toEqual({ why: 'border too long' });
  });
});

describe('other reasons', () => {
  test('are kind, design, weight and a spot on an offcut', () => {
    expect(unsuited(wanted(4, 4, { kinds: ['vellum'] }), fern)).toEqual({ why: 'other paper' });
    expect(unsuited(wanted(4, 4, { designs: [cast.hem.id] }), fern)).toEqual({ why: 'other paper' });
    expect(unsuited(wanted(4, 4, { grammage: 200 }), fern)).toEqual({ why: 'too light' });
    const at = { x: inches(0), y: inches(0) };
    expect(unsuited(wanted(4, 4, { at }), pieceOfOffcut(cast.corner))).toEqual({ why: 'no whole sheet' });
  });

  test('are told for every part alike, or for the part that the paper is left out for', () => {
    const offcut = pieceOfOffcut(cast.strips);
    const small = { why: 'too small', beside: false } as const;
    const judged = [
      { piece: fern, kept: true, why: [undefined] },
      { piece: offcut, kept: false, why: [small, { why: 'no border' } as const] },
      { piece: hem, kept: false, why: [small, undefined] },
    ];
    expect(leftOutOf(['base', 'band'], judged)).toMatchObject([
      { part: null, why: { why: 'kept' }, design: cast.fern.id, sheets: true },
      { part: null, why: small, design: cast.fern.id, sheets: false, offcuts: [cast.strips.id], count: 1 },
      { part: 'base', why: small, design: cast.hem.id },
    ]);
  });
});

test('the planner places one exactly where the paper suits', () => {
  const half = (most: number) => fc.integer({ min: 1, max: most * 2 }).map((halves) => halves / 2);
  const prints = fc.constantFrom('any way', 'upright', 'bordered');
  fc.assert(
    fc.property(half(14), half(14), prints, fc.boolean(), (width, height, print, spot) => {
      const at = spot && print !== 'bordered' ? { at: { x: inches(1), y: inches(2) } } : {};
      const part = {
        ...{ name: 'One', ...size(width, height), copies: 1, print: print as 'upright' },
        ...{ paper: { of: 'any' as const }, grammage: null, match: false, ...at },
      };
      const batch = { blanks: [], paper: part.paper, parts: [part], match: 'each set' as const, keep: [] };
      const all = [hem, fern, pieceOfSheet(cast.hare), pieceOfOffcut(cast.lying), pieceOfOffcut(cast.strips)];
      const asked = wanted(width, height, {
        mayTurn: print === 'any way',
        border: print === 'bordered',
        ...at,
      });
      for (const piece of all) {
        const shelf = { pieces: [piece], longestCut: inches(18), keepAtLeast: inches(1) };
        const { order, pieces } = cuttingOf(batch, [], shelf);
        const placed = planCuts(order, pieces, { work: 5, seed: 1 }).placed;
        expect(placed).toBe(unsuited(asked, piece) ? 0 : 1);
      }
    }),
    { numRuns: 40 },
  );
});

describe('a plan', () => {
  const order = { parts: ['base', 'front'].map((id) => ({ id, width: 5, height: 4, copies: 3 })) };
  const matched = { parts: order.parts.map((part) => ({ ...part, match: 'set' })) };
  const pieces = ['a', 'b'].map((id) => ({ id, width: 10, height: 4, kind: 'sheet' as const, design: id }));
  const plan = planCuts(order, pieces, { work: 20, seed: 1 });
  /** The plan with these parts on its two sheets. */
  const cutting = (of: typeof order, parts: string[][]) => {
    const used = plan.used.map((one, at) => ({
      ...one,
      rectangles: one.rectangles.map((each, index) => ({ ...each, part: parts[at]![index]! })),
    }));
    return { order: of, pieces, plan: { ...plan, used } };
  };

  test('counts the sets that are whole, of one design where they match', () => {
    const mixed = [
      ['base', 'front'],
      ['front', 'base'],
    ];
    const apart = [
      ['base', 'base'],
      ['front', 'front'],
    ];
    expect(wholeSets(cutting(order, apart))).toEqual({ whole: 2, of: 3 });
    expect(wholeSets(cutting(matched, mixed))).toEqual({ whole: 2, of: 3 });
    expect(wholeSets(cutting(matched, apart))).toEqual({ whole: 0, of: 3 });
    expect(wholeSets(cutting({ parts: order.parts.slice(0, 1) }, mixed))).toBeUndefined();
  });

  test('of two looks keeps the better one and all that both prove', () => {
    const weak = { ...plan, bounds: { unplaced: 0, newSheetArea: 0 }, proved: false };
    expect(betterOf(weak, plan)).toMatchObject({ bounds: plan.bounds, proved: plan.proved });
    expect(betterOf(plan, weak)).toMatchObject({ bounds: plan.bounds, proved: plan.proved });
  });
});
