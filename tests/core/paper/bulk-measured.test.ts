/** The bulk of finished cards against what was reckoned: simulated makers whose paper is thicker or thinner, and who slip. */
import { describe, expect, test } from 'vitest';
import { type BulkMeasured, bulkHabit, corrected, MOST_CORRECTED } from '#core/paper/bulk-measured.ts';
import { describeLayers } from '#core/paper/layers.ts';
import { inches, type Length, length, times } from '#shared/length.ts';
import { chance } from '#tests/support/makers.ts';

const size = { width: inches(5.5), height: inches(4.25) };
const folded = { ...size, width: times(size.width, 2) };

/** Cards of one to three layers, which come out `thicker` than the middle by her paper and glue, give or take a caliper. */
function cardsOf(seed: number, thicker: Length, count: number, slips = 0): BulkMeasured[] {
  const random = chance(seed);
  return Array.from({ length: count }, () => {
    const base = {
      name: 'Base',
      size: folded,
      paper: { weight: { unit: 'g/m²', amount: 216 } as const },
      leaves: 2,
    };
    const mats = Array.from({ length: Math.floor(random() * 3) }, () => ({
      ...base,
      name: 'Mat',
      size,
      leaves: 1,
    }));
    const { least, most } = describeLayers([base, ...mats]).bulk;
    const noise = (random() + random() - 1) * inches(0.008);
    const measured = length(Math.round((least + most) / 2 + thicker + noise));
    return { least, most, measured: random() < slips ? times(measured, 10) : measured };
  });
}

const missedBy = (cards: readonly BulkMeasured[], correction: Length): number =>
  cards.reduce((sum, card) => {
    const { least, most } = corrected(card, correction);
    return sum + Math.abs(card.measured - (least + most) / 2);
  }, 0) / cards.length;

const SEEDS = [1, 2, 3, 4, 5, 6, 7, 8];

describe('a maker whose cards come out otherwise than reckoned', () => {
  test.each([1 / 64, -0.008, 0.024])('by %f in is known after five cards, whatever the seed', (off) => {
    for (const seed of SEEDS) {
      const { thicker, cards } = bulkHabit(cardsOf(seed, inches(off), 5))!;
      expect(cards).toBe(5);
      expect(Math.abs(thicker - inches(off))).toBeLessThan(inches(0.008));
      const later = cardsOf(seed + 100, inches(off), 50);
      expect(missedBy(later, thicker)).toBeLessThan(missedBy(later, length(0)));
    }
  });

  test('is not misled far by one card in eight typed ten times as thick', () => {
    for (const seed of SEEDS) {
      const { thicker } = bulkHabit(cardsOf(seed, inches(1 / 64), 15, 1 / 8))!;
      expect(Math.abs(thicker - inches(1 / 64))).toBeLessThan(inches(1 / 100));
    }
  });

  test('whose cards come out as reckoned loses less than a caliper shows', () => {
    for (const seed of SEEDS) {
      const { thicker } = bulkHabit(cardsOf(seed, length(0), 5))!;
      const later = cardsOf(seed + 100, length(0), 50);
      expect(missedBy(later, thicker) - missedBy(later, length(0))).toBeLessThan(inches(0.004));
    }
  });
});

test('no correction passes its cap, and nothing is thinner than nothing', () => {
  expect(bulkHabit([{ least: inches(0.03), most: inches(0.04), measured: inches(1) }])!.thicker).toBe(
    MOST_CORRECTED,
  );
  expect(bulkHabit([{ least: inches(0.5), most: inches(0.6), measured: inches(0.01) }])!.thicker).toBe(
    -MOST_CORRECTED,
  );
  expect(corrected({ least: inches(0.01), most: inches(0.05) }, length(-MOST_CORRECTED)).least).toBe(0);
  expect(bulkHabit([])).toBeUndefined();
});
