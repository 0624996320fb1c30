/**
 * Paper with a border along one edge: what does not ask for the border lies beside it, what is pinned to it carries it,
 * and the border that nobody wants stays in one length. Expectations are counted by hand on squared paper.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { heightAbove } from '#core/cutting/border.ts';
import { checkPlan } from '#core/cutting/check.ts';
import type { CutPlan } from '#core/cutting/cuts.ts';
import { checkFill } from '#core/cutting/one-piece/check-fill.ts';
import type { Order, Piece } from '#core/cutting/order.ts';
import { fillPiece, planCuts } from '#core/cutting/plan.ts';

/** A 12 × 12 in sheet with a border of 1½ in, in quarters of an inch. */
const hem = (copies: number, rest: Partial<Piece> = {}): Piece => ({
  ...{ id: 'hem', kind: 'sheet', width: 48, height: 48, copies },
  ...{ edges: ['bottom'], border: 6, upright: true, ...rest },
});
const BASE = { id: 'base', width: 34, height: 22 };
const BAND = { id: 'band', width: 48, height: 10, pin: { edge: 'bottom' } } as const;

function soundPlan(order: Order, pieces: readonly Piece[]): CutPlan {
  const plan = planCuts(order, pieces, { work: 300, seed: 1 });
  expect(checkPlan(order, pieces, plan)).toEqual([]);
  return plan;
}

describe('a border', () => {
  it('leaves room beside it: two card bases of 8½ × 5½ stand side by side above 1½ in', () => {
    const plan = soundPlan({ parts: [{ ...BASE, copies: 5 }] }, [hem(3)]);
    expect(plan).toMatchObject({ placed: 5, newSheets: 3, newSheetArea: 3 * 48 * 48, proved: true });
    expect(plan.used.flatMap(({ rectangles }) => rectangles).every(({ y, height }) => y + height <= 42)).toBe(
      true,
    );
  });

  it('is refused by the judge under a part that did not ask for it', () => {
    const order = { parts: [{ ...BASE, copies: 1 }] };
    const plan = soundPlan(order, [hem(1, { border: 0 })]);
    expect(checkPlan(order, [hem(1, { border: 30 })], plan).map(({ message }) => message)).toContain(
      '“base” reaches into the border.',
    );
  });

  it('stays in one length, grown by what is left above it as wide as the sheet', () => {
    const [used] = soundPlan({ parts: [{ id: 'tag', width: 48, height: 20, copies: 1 }], keepAtLeast: 8 }, [
      hem(1),
    ]).used;
    expect(used!.leftovers).toEqual([{ x: 0, y: 20, width: 48, height: 28 }]);
    const full = soundPlan({ parts: [{ id: 'tag', width: 48, height: 42, copies: 1 }], keepAtLeast: 8 }, [
      hem(1),
    ]);
    expect(full.used[0]!.cuts).toMatchObject({
      at: 42,
      along: 'y',
      parts: [{ part: 'tag' }, { waste: true }],
    });
  });

  it('goes to what is pinned to it, with other parts above on the same sheet', () => {
    const order = {
      parts: [
        { ...BAND, copies: 2 },
        { ...BASE, copies: 4 },
      ],
    };
    const plan = soundPlan(order, [hem(2)]);
    expect(plan).toMatchObject({ placed: 6, newSheets: 2 });
  });

  it('says that what fits only over it needs to be smaller', () => {
    const plan = soundPlan({ parts: [{ id: 'wide', width: 48, height: 46, copies: 1 }] }, [hem(1)]);
    expect(plan.unplaced).toEqual([
      { part: 'wide', copies: 1, remedies: [{ kind: 'smaller', width: 48, height: 42 }] },
    ]);
  });

  it('takes nothing from a piece that is border alone', () => {
    const plan = soundPlan({ parts: [{ id: 'slip', width: 4, height: 4, copies: 1 }] }, [
      hem(1, { height: 6 }),
    ]);
    expect(plan.placed).toBe(0);
  });

  it('is left by a fill too', () => {
    const parts = [{ ...BASE, upright: false }];
    const fill = fillPiece(hem(1), parts, { goal: 'count' });
    expect(checkFill(hem(1), parts, fill, { goal: 'count' })).toEqual([]);
    expect(fill).toMatchObject({ value: 2, proved: true });
  });
});

describe('properties', () => {
  const side = fc.integer({ min: 2, max: 20 });
  const parts = fc.array(
    fc.record({ width: side, height: side, copies: fc.integer({ min: 1, max: 4 }), band: fc.boolean() }),
    { minLength: 1, maxLength: 4 },
  );

  /** Once moved into the border when the sheet was brought to the trimmer's order. */
  const NEXT_TO_A_BAND: [{ width: number; height: number; copies: number; band: boolean }[], number, number] =
    [[true, false].map((band) => ({ width: 2, height: 2, copies: 1, band })), 3, 12];

  it('every part keeps to its side of the border, whatever else is asked', () => {
    fc.assert(
      fc.property(
        parts,
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 12, max: 30 }),
        (asked, border, high) => {
          const order = {
            parts: asked.map(({ band, ...one }, index) => ({
              ...{ id: `${index}`, ...one },
              ...(band && { pin: { edge: 'bottom' as const } }),
            })),
          };
          const pieces = [
            hem(3, { width: 24, height: high, border }),
            hem(2, { id: 'plain', border: 0, edges: [] }),
          ];
          soundPlan(order, pieces);
        },
      ),
      { numRuns: 25, examples: [NEXT_TO_A_BAND] },
    );
  });

  it('without a wish for the border a sheet gives what it would give without that strip', () => {
    fc.assert(
      fc.property(
        parts,
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 13, max: 30 }),
        (asked, border, high) => {
          const order = { parts: asked.map(({ band: _, ...one }, index) => ({ id: `${index}`, ...one })) };
          const bordered = hem(2, { width: 24, height: high, border });
          const short = { ...bordered, height: heightAbove(bordered), border: 0 };
          const [one, other] = [soundPlan(order, [bordered]), soundPlan(order, [short])];
          expect(one.bounds.unplaced).toBe(other.bounds.unplaced);
          if (one.proved && other.proved) expect(one.newSheets).toBe(other.newSheets);
        },
      ),
      { numRuns: 25 },
    );
  });
});
