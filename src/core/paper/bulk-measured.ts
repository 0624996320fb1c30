/**
 * How thick finished cards really come out beside what their layers were reckoned to, and the correction that follows.
 * Knows no layers and no database; nothing is corrected until the maker says so.
 */
import { inches, type Length, length } from '#shared/length.ts';
import type { Range } from './thickness.ts';

/** One finished card: as its layers were reckoned, uncorrected, and as it was measured. */
export interface BulkMeasured extends Range {
  readonly measured: Length;
}

export interface BulkHabit {
  /** How much thicker than the middle of what was reckoned, negative where thinner: the median, within `MOST_CORRECTED`. */
  readonly thicker: Length;
  readonly cards: number;
}

/** So many of the newest cards are looked at. */
export const BULKS_AT_MOST = 20;

/** No correction is offered for fewer cards than these: with three, one that was mistyped changes little. */
export const BULKS_NEEDED = 3;

/** Nor one that is larger. */
export const MOST_CORRECTED = inches(1 / 32);

/** Undefined where nothing was measured. */
export function bulkHabit(cards: readonly BulkMeasured[]): BulkHabit | undefined {
  if (cards.length === 0) return undefined;
  const off = cards.map(({ least, most, measured }) => measured - (least + most) / 2).sort((a, b) => a - b);
  const median = (off[(off.length - 1) >> 1]! + off[off.length >> 1]!) / 2;
  const thicker = Math.max(-MOST_CORRECTED, Math.min(MOST_CORRECTED, Math.round(median)));
  return { thicker: length(thicker), cards: cards.length };
}

/** Moved as a whole; nothing is thinner than nothing. */
export const corrected = ({ least, most }: Range, thicker: Length): Range => ({
  least: length(Math.max(0, least + thicker)),
  most: length(Math.max(0, most + thicker)),
});
