/** Fits and clearances in words. Knows no limits: grades come in. */
import { type Length, length, printLength, type Units } from '#shared/length.ts';
import type { Fit } from '#shared/outcome.ts';

/** What the card does, after "Your card". */
export const SAY_FIT: Record<Fit, string> = {
  "won't go": 'won’t go in',
  tight: 'goes in only tight',
  snug: 'sits snugly',
  easy: 'goes in easily',
  loose: 'sits loosely',
};

/** `¼″ to spare`, `⅛″ short`. */
export const sayClearance = (clearance: Length, units: Units): string =>
  clearance < 0
    ? `${printLength(length(0 - clearance), units)} short`
    : `${printLength(clearance, units)} to spare`;
