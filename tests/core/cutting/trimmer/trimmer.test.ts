/** Pieces brought to the form in which they are cut truly: what keeps its place, and what may not move. */
import { expect, it } from 'vitest';
import type { UsedPiece } from '#core/cutting/cuts.ts';
import type { Order, Piece } from '#core/cutting/order.ts';
import { trimmer } from '#core/cutting/trimmer/trimmer.ts';

const piece: Piece = { id: 'pad', width: 100, height: 100, kind: 'sheet' };
const order: Order = {
  keepAtLeast: 10,
  parts: [
    { id: 'band', width: 40, height: 30, copies: 1, pin: { edge: 'bottom' } },
    { id: 'front', width: 60, height: 25, copies: 1 },
  ],
};

/** The band at the bottom left, the front at the top right, what is left above and below them. */
const used: UsedPiece = {
  piece: 'pad',
  rectangles: [
    { part: 'band', x: 0, y: 70, width: 40, height: 30, turned: false },
    { part: 'front', x: 40, y: 0, width: 60, height: 25, turned: false },
  ],
  leftovers: [
    { x: 0, y: 0, width: 40, height: 70 },
    { x: 40, y: 25, width: 60, height: 75 },
  ],
  cuts: {
    at: 40,
    along: 'x',
    parts: [
      { at: 70, along: 'y', parts: [{ leftover: true }, { part: 'band', turned: false }] },
      { at: 25, along: 'y', parts: [{ part: 'front', turned: false }, { leftover: true }] },
    ],
  },
};

it('joins what is left into the piece worth most', () => {
  const { leftovers, rectangles } = trimmer(order)(used, piece);
  expect(leftovers[0]).toEqual({ x: 0, y: 0, width: 100, height: 70 });
  expect(rectangles.find(({ part }) => part === 'band')).toMatchObject({ y: 70, height: 30 });
});

it('moves nothing into a border that is deeper than what else comes of it', () => {
  const { rectangles } = trimmer(order)(used, { ...piece, border: 20 });
  const front = rectangles.find(({ part }) => part === 'front')!;
  expect(front.y + front.height).toBeLessThanOrEqual(80);
});
