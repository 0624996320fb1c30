/** What an order may be cut from, and what is looked at of a shelf that has too much. */
import { describe, expect, test } from 'vitest';
import type { Part, Piece } from '#core/cutting/order.ts';
import { canHold, suitableFor } from '#core/project/suitable.ts';

const part = (id: string, width: number, height: number, rest: Partial<Part> = {}): Part => ({
  ...{ id, width, height, copies: 1 },
  ...rest,
});
const offcut = (id: string, side: number, rest: Partial<Piece> = {}): Piece => ({
  ...{ id, width: side, height: side, kind: 'offcut' },
  ...rest,
});
const pad: Piece = { id: 'pad', width: 12, height: 12, kind: 'sheet', copies: 4 };

describe('canHold', () => {
  test('goes by size either way, and by the spot of a part that has one', () => {
    const strip = { ...pad, width: 4 };
    expect(canHold(part('tag', 5, 4), strip)).toBe(true);
    expect(canHold(part('tag', 5, 4, { upright: true }), { ...strip, upright: true })).toBe(false);
    expect(canHold(part('tag', 5, 4, { pin: { x: 7, y: 8 } }), pad)).toBe(true);
    expect(canHold(part('tag', 5, 4, { pin: { x: 8, y: 8 } }), pad)).toBe(false);
    expect(canHold(part('tag', 5, 4, { pin: { x: 0, y: 0 } }), offcut('o', 12))).toBe(false);
  });
});

describe('suitableFor', () => {
  test('hands on all of a shelf that is not too long, sheets first, then the smallest, what is kept last', () => {
    const shelf = [
      offcut('large', 9),
      offcut('tiny', 1),
      offcut('kept', 5, { keep: true }),
      offcut('small', 6),
      pad,
    ];
    const { pieces, suitable } = suitableFor([part('tag', 4, 4)], shelf);
    expect(pieces.map(({ id }) => id)).toEqual(['pad', 'small', 'large', 'kept']);
    expect(suitable).toBe(3);
  });

  test('looks at so many and tells how many there were, with a share for the part that needs large ones', () => {
    const small = Array.from({ length: 1600 }, (_, index) => offcut(`small ${index}`, 5));
    const large = Array.from({ length: 900 }, (_, index) => offcut(`large ${index}`, 10));
    const kept = offcut('kept', 5, { keep: true });
    const parts = [part('tag', 4, 4), part('lining', 9, 9)];
    const { pieces, suitable } = suitableFor(parts, [...small, ...large, kept, pad]);
    expect([pieces.length, suitable]).toEqual([1500, 2501]);
    expect(pieces[0]).toBe(pad);
    // Half of 1500 for each; the pad is the first of both.
    expect(pieces.filter(({ id }) => id.startsWith('large'))).toHaveLength(749);
    expect(pieces.filter(({ id }) => id.startsWith('small'))).toHaveLength(750);
    expect(pieces).not.toContain(kept);
  });
});
