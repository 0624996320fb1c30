/** What keeps an envelope from being made, and the largest card of the same shape that finds one. */
import { describe, expect, it } from 'vitest';
import { DEFAULT_LIMITS } from '#core/envelope/fit.ts';
import { largestAlike, obstacleOf } from '#core/envelope/obstacle.ts';
import { solveEnvelope } from '#core/envelope/recipes.ts';
import { add, inches, type Length } from '#shared/length.ts';

const NOTCHER = {
  inset: inches(7 / 16),
  zeroOffset: inches(0),
  graduation: inches(1 / 8),
  largestSheet: inches(12),
};
const card = (width: number, height: number) => ({
  width: inches(width),
  height: inches(height),
  bulk: inches(1 / 32),
});
const goes = (width: Length, height: Length): boolean =>
  solveEnvelope({ card: { width, height, bulk: inches(1 / 32) }, notcher: NOTCHER }).some(
    ({ warnings }) => warnings.length === 0,
  );

describe('an obstacle', () => {
  it('is a sheet larger than the tool takes', () => {
    const [best] = solveEnvelope({ card: card(30, 30), notcher: NOTCHER });
    // Plane geometry: a square round a pocket of w × h is at least (w + h)/√2 long, here more than 42.4 in.
    expect(obstacleOf(best!)).toBe('larger than the tool');
  });

  it('is none where an envelope only wants care', () => {
    expect(obstacleOf({ warnings: [{ kind: 'seam too thin', message: '' }] })).toBeUndefined();
    expect(obstacleOf(solveEnvelope({ card: card(5, 7), notcher: NOTCHER })[0]!)).toBeUndefined();
  });
});

describe('the largest card alike', () => {
  it.each([
    [30, 30],
    [14, 13],
    [40, 10],
    [9, 12.5],
  ])('to %s × %s in goes, lies as it does, and a mark more does not', (width, height) => {
    const found = largestAlike(card(width, height), NOTCHER, DEFAULT_LIMITS)!;
    expect(goes(found.width, found.height)).toBe(true);
    expect(found.width >= found.height).toBe(width >= height);
    const mark = NOTCHER.graduation;
    expect(goes(add(found.width, mark), add(found.height, mark))).toBe(false);
    expect(found.width / found.height).toBeCloseTo(width / height, 0);
  });
});
