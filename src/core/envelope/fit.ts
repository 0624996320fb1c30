/**
 * Grades a clearance. Knows the limits between the grades and the clearance each wanted fit aims at, not how an
 * envelope comes by it.
 *
 * Limits and defaults, in inches of clearance after bulk: won't go < 0 ≤ tight < 1/16 ≤ snug < 0.09 ≤ easy ≤ 3/8 <
 * loose. Envelope makers' and printers' size charts pair cards with envelopes ⅛ larger in total at the least, usually
 * ¼; they give no grades, which are ours. A thin card's bulk of 1/32 leaves 3/32 of that floor, and 0.09 lies a hair
 * under it so that a pocket rounded down is not graded worse. An inset of 7/16 and a bulk of 1/32 stand until the maker
 * has measured her own; how far they agree with common practice stands in the tests.
 */
import { inches, type Length, length, roundLength, subtract } from '#shared/length.ts';
import { type Fit, type WantedFit, worseFit } from '#shared/outcome.ts';
import type { Size } from '#shared/size.ts';
import type { Card, FitLimits } from './recipe.ts';

export const DEFAULT_LIMITS: FitLimits = { snug: inches(1 / 16), easy: inches(0.09), loose: inches(3 / 8) };

/** Until the maker has measured her own tool. */
export const DEFAULT_INSET = inches(7 / 16);

/** A folded card of ordinary stock with one layer or two on it. */
export const THIN_BULK = inches(1 / 32);

const USUAL_CLEARANCE = inches(7 / 32);

export interface Graded {
  readonly clearance: Size;
  readonly fits: { readonly width: Fit; readonly height: Fit };
  readonly fit: Fit;
}

/** How a card sits in a pocket, as both lie. Clearance, card and bulk add up to the pocket exactly. */
export function gradePocket(pocket: Size, card: Card, limits: FitLimits): Graded {
  const clearance = {
    width: subtract(pocket.width, length(card.width + card.bulk)),
    height: subtract(pocket.height, length(card.height + card.bulk)),
  };
  const fits = {
    width: gradeClearance(clearance.width, limits),
    height: gradeClearance(clearance.height, limits),
  };
  return { clearance, fits, fit: worseFit(fits.width, fits.height) };
}

export function gradeClearance(clearance: Length, limits: FitLimits): Fit {
  if (clearance < 0) return "won't go";
  if (clearance < limits.snug) return 'tight';
  if (clearance < limits.easy) return 'snug';
  return clearance <= limits.loose ? 'easy' : 'loose';
}

export const goesFreely = (fit: Fit): boolean => fit !== 'tight' && fit !== "won't go";

/** The least clearance that still earns this grade. */
export const leastClearance = (fit: WantedFit, limits: FitLimits): Length =>
  fit === 'loose' ? length(limits.loose + 1) : limits[fit];

/** The clearance to aim at in either dimension: ¼ in total on a thin card when easy is wanted. */
export function idealClearance(fit: WantedFit, limits: FitLimits): Length {
  if (fit === 'snug') return halfway(limits.snug, limits.easy);
  if (fit === 'loose') return length(limits.loose + inches(1 / 8));
  return gradeClearance(USUAL_CLEARANCE, limits) === 'easy'
    ? USUAL_CLEARANCE
    : halfway(limits.easy, limits.loose);
}

const halfway = (one: Length, other: Length): Length => roundLength((one + other) / 2, 'nearest');
