/** How fast paper goes: sums worked out by hand here, and silence where too little is known. */
import { expect, it } from 'vitest';
import { batchesLeft, paceOf, paceSince } from '#core/stash/pace.ts';

const NOW = '2026-12-01T19:00:00.000Z';
const daysAgo = (days: number): string => new Date(Date.parse(NOW) - days * 86_400_000).toISOString();

it('is the mean of the batches of twelve months', () => {
  const pace = paceOf({ sheets: 12, batches: 4, known: daysAgo(700) }, NOW)!;
  expect(pace).toEqual({ perBatch: 3, perMonth: 1 });
  expect(batchesLeft(8, pace)).toBe(2);
  expect(batchesLeft(2, pace)).toBe(0);
});

it('counts months from the day the paper came', () => {
  expect(paceOf({ sheets: 12, batches: 4, known: daysAgo(182.5) }, NOW)!.perMonth).toBeCloseTo(2, 9);
  expect(paceOf({ sheets: 12, batches: 4, known: daysAgo(59) }, NOW)!.perMonth).toBeNull();
});

it('says nothing before there were two batches', () => {
  expect(paceOf({ sheets: 5, batches: 1, known: daysAgo(300) }, NOW)).toBeUndefined();
  expect(paceOf({ sheets: 0, batches: 0, known: daysAgo(300) }, NOW)).toBeUndefined();
});

it('looks back over one year', () => {
  expect(paceSince(NOW)).toBe('2025-12-01T19:00:00.000Z');
});
