/** The judge of fills finds what is wrong with one, whether in its cuts or in its figures. */
import { describe, expect, test } from 'vitest';
import { checkFill, type FillAsked } from '#core/cutting/one-piece/check-fill.ts';
import { type Fill, fillPiece } from '#core/cutting/one-piece/fill.ts';
import type { Piece } from '#core/cutting/order.ts';

const PIECE: Piece = { id: 'sheet', kind: 'sheet', width: 12, height: 12 };
const PARTS = [
  { id: 'card', width: 5, height: 7, copies: 2, value: 3 },
  { id: 'tag', width: 2, height: 3, value: 1 },
];
const FILL = fillPiece(PIECE, PARTS, { goal: 'count', work: 500 });

const fieldsOf = (fill: Fill, goal: 'area' | 'count' | 'wish' = 'count'): string[] =>
  checkFill(PIECE, PARTS, fill, { goal }).map(({ field }) => field);

describe('a fill', () => {
  test('that is sound passes, as does one of nothing', () => {
    expect(fieldsOf(FILL)).toEqual([]);
    const none = fillPiece(PIECE, [{ id: 'poster', width: 20, height: 30 }]);
    expect(none.rectangles).toEqual([]);
    expect(checkFill(PIECE, [], none)).toEqual([]);
  });

  test.each<[string, Partial<Fill>, string]>([
    ['claims more than it holds', { value: FILL.value + 1, bound: FILL.bound + 1 }, 'value'],
    ['beats its bound', { bound: FILL.value - 1 }, 'bound'],
    ['is called proved below its bound', { bound: FILL.bound + 1, proved: true }, 'proved'],
    ['lists what the cuts don’t make', { rectangles: FILL.rectangles.slice(1) }, 'used[0].rectangles'],
  ])('that %s is refused', (_, change, field) => {
    expect(fieldsOf({ ...FILL, ...change })).toContain(field);
  });

  test('is held to the limits that were asked for, not to its own', () => {
    const cards = fillPiece(PIECE, PARTS.slice(0, 1), { work: 500 });
    const said = (asked: FillAsked): string =>
      checkFill(PIECE, PARTS.slice(0, 1), cards, asked)
        .map(({ message }) => message)
        .join();
    expect(said({})).toBe('');
    expect(said({ keepAtLeast: 12 })).toMatch(/under the keeping size/);
    expect(said({ longestCut: 6 })).toMatch(/longer than the trimmer/);
  });

  test.each<[string, Partial<Fill>]>([
    ['another piece', { piece: 'door' }],
    ['a leftover', { leftovers: [] }],
    ['cuts', { cuts: { waste: true } }],
  ])('of nothing may not change %s', (_, change) => {
    const none = fillPiece(PIECE, [{ id: 'poster', width: 20, height: 30 }]);
    expect(checkFill(PIECE, [], { ...none, ...change })).toHaveLength(1);
  });

  test('is counted by its goal', () => {
    expect(fieldsOf(FILL, 'area')).toContain('value');
  });
});
