/** What is looked at of a shelf that has too much. */
import { describe, expect, test } from 'vitest';
import type { Piece } from '#core/cutting/order.ts';
import { suitableFor } from '#core/stash/suitable.ts';

/** Squares of so much side, each suiting the pieces that hold it. */
const holding =
  (...sides: number[]) =>
  (part: number, { width, height }: Piece): boolean =>
    Math.min(width, height) >= sides[part]!;
const offcut = (id: string, side: number, rest: Partial<Piece> = {}): Piece => ({
  ...{ id, width: side, height: side, kind: 'offcut' },
  ...rest,
});
const pad: Piece = { id: 'pad', width: 12, height: 12, kind: 'sheet', copies: 4 };

describe('suitableFor', () => {
  test('hands on all of a shelf that is not too long, sheets first, then the smallest, what is kept last', () => {
    const shelf = [
      offcut('large', 9),
      offcut('tiny', 1),
      offcut('kept', 5, { keep: true }),
      offcut('small', 6),
      pad,
    ];
    const { pieces, suitable } = suitableFor(1, shelf, holding(4));
    expect(pieces.map(({ id }) => id)).toEqual(['pad', 'small', 'large', 'kept']);
    expect(suitable).toBe(3);
  });

  test('looks at so many and tells how many there were, with a share for the part that needs large ones', () => {
    const small = Array.from({ length: 1600 }, (_, index) => offcut(`small ${index}`, 5));
    const large = Array.from({ length: 900 }, (_, index) => offcut(`large ${index}`, 10));
    const kept = offcut('kept', 5, { keep: true });
    const { pieces, suitable } = suitableFor(2, [...small, ...large, kept, pad], holding(4, 9));
    expect([pieces.length, suitable]).toEqual([1500, 2501]);
    expect(pieces[0]).toBe(pad);
    // Half of 1500 for each; the pad is the first of both.
    expect(pieces.filter(({ id }) => id.startsWith('large'))).toHaveLength(749);
    expect(pieces.filter(({ id }) => id.startsWith('small'))).toHaveLength(750);
    expect(pieces).not.toContain(kept);
  });
});
