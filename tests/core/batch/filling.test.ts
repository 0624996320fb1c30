/** What of a maker's own comes out of a piece, told apart by size, print and tool; and what a fill comes to. */
import { describe, expect, test } from 'vitest';
import { comesOut, filledWith, fillPart, offersFrom, ownSizes, type Wanted } from '#core/batch/filling.ts';
import { toPiece } from '#core/batch/to-order.ts';
import { fillPiece } from '#core/cutting/one-piece/fill.ts';
import type { CardSize } from '#core/project/journal.ts';
import type { Design, Piece } from '#core/stash/stash.ts';
import { inches } from '#shared/length.ts';
import { holds, turned } from '#shared/size.ts';
import { CARD, FERN, HARE, MEADOW, RECIPE, size } from '#tests/support/cast.ts';

const pieceOf = (width: number, height: number, of = FERN): Piece => {
  const design: Design = { ...of, id: 1, pad: { ...MEADOW, id: 1 }, sheets: 1 };
  return { ...size(width, height), design, offcut: null, border: false, count: 1 };
};

const NOTE: CardSize = { id: 1, name: 'Desk note', ...CARD };
const POSTER: CardSize = { id: 2, name: 'Poster', ...size(16, 20), bulk: inches(1 / 32) };
const tool = { notcher: RECIPE.notcher, fit: 'easy' } as const;

describe('what of her own comes out of a piece', () => {
  test('is each card and an envelope of one blank that fits it as wanted', () => {
    const sheet = pieceOf(12, 12);
    const { offers, tooLarge } = offersFrom(sheet, ownSizes([NOTE, POSTER], tool));
    expect(offers.map(({ id }) => id)).toEqual(['envelope.1', 'card.1']);
    expect(offers[0]).toMatchObject({ recipe: RECIPE, ...RECIPE.blank });
    expect(tooLarge).toEqual([POSTER]);
  });

  test('is another envelope where the best one has no room, and always one that sits as wanted', () => {
    for (const [width, height] of [
      [7, 11],
      [8, 8],
      [7.5, 8],
    ] as const) {
      const small = pieceOf(width, height);
      for (const { recipe } of offersFrom(small, ownSizes([NOTE], tool)).offers) {
        if (!recipe) continue;
        expect(recipe.fit).toBe('easy');
        expect(recipe.fold).not.toBe('two-piece');
        expect(holds(small, recipe.blank) || holds(small, turned(recipe.blank))).toBe(true);
      }
    }
  });

  test('keeps its print upright where the paper has an up', () => {
    const lying: Wanted = { id: 'part', of: 'part', name: 'Mat', upright: true, ...size(9, 4) };
    expect(comesOut(lying, pieceOf(4, 9))).toBe(true);
    expect(comesOut(lying, pieceOf(4, 9, HARE))).toBe(false);
    expect(comesOut(lying, pieceOf(9, 4, HARE))).toBe(true);
    expect(comesOut({ ...lying, upright: false }, pieceOf(4, 9, HARE))).toBe(true);
  });
});

test('a fill comes to parts, leftovers and waste that make up the piece', () => {
  const piece = pieceOf(12, 12);
  const mat: Wanted = { id: 'mat', of: 'part', name: 'Mat', upright: false, ...size(5, 7) };
  const none: Wanted = { ...mat, id: 'none', ...size(13, 13) };
  const parts = [mat, none].map((one) => fillPart(one, { wish: 1, most: 3 }));
  const options = { work: 200, keepAtLeast: inches(1) };
  const fill = fillPiece(toPiece(piece), parts, options);
  const { yields, waste, mostUsed } = filledWith(fill, piece, [mat, none]);
  expect(yields).toEqual([{ wanted: mat, count: 3 }]);
  const kept = fill.leftovers.reduce((sum, one) => sum + one.width * one.height, 0) / inches(1) ** 2;
  expect(105 + kept + waste * 144).toBeCloseTo(144, 9);
  expect(mostUsed).toBeGreaterThanOrEqual(105 / 144);
});
