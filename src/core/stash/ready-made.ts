/** Bought envelopes on the shelf, and which of them a card goes into. Knows no database. */
import { gradePocket } from '#core/envelope/fit.ts';
import type { Card, FitLimits } from '#core/envelope/recipe.ts';
import { FITS_FROM_BEST, type Fit } from '#shared/outcome.ts';
import { type Size, turned } from '#shared/size.ts';

export type ReadyMadeKind = 'bought' | 'counted' | 'used';

/** The size it is sold by: makers' charts measure clearance from that. */
export interface NewReadyMade extends Size {
  readonly name: string;
  readonly note: string;
}

export interface ReadyMade extends NewReadyMade {
  readonly id: number;
  readonly count: number;
}

/** One line of its ledger. */
export interface ReadyMadeMovement {
  readonly id: number;
  readonly at: string;
  readonly kind: ReadyMadeKind;
  readonly readyMade: number;
  readonly delta: number;
  readonly project: number | null;
}

/** `clearance` runs as the card lies. */
export interface FittingReadyMade {
  readonly readyMade: ReadyMade;
  readonly fit: Fit;
  readonly clearance: Size;
}

/** Why one that was bought does not do. */
export interface UnsuitedReadyMade {
  readonly readyMade: ReadyMade;
  readonly why: 'none left' | "won't go" | 'loose';
}

export interface ReadyMadeJudged {
  readonly fitting: readonly FittingReadyMade[];
  readonly leftOut: readonly UnsuitedReadyMade[];
}

/**
 * Those that suit the card, whichever way round, best fit first and of equals the closest, and why the others do not. A
 * loose one suits only where `loose` is wanted, which it is unless said otherwise.
 */
export function fitReadyMade(
  all: readonly ReadyMade[],
  card: Card,
  limits: FitLimits,
  { loose = true }: { loose?: boolean } = {},
): ReadyMadeJudged {
  const graded = all.map((readyMade) => {
    const ways = [gradePocket(readyMade, card, limits), gradePocket(turned(readyMade), card, limits)];
    const { fit, clearance } = ways.sort((one, other) => rank(one) - rank(other))[0]!;
    return { readyMade, fit, clearance, why: whyNot(readyMade, fit, loose) };
  });
  return {
    fitting: graded
      .filter(({ why }) => why === undefined)
      .map(({ why: _, ...one }) => one)
      .sort((one, other) => rank(one) - rank(other)),
    leftOut: graded.flatMap(({ readyMade, why }) => (why ? [{ readyMade, why }] : [])),
  };
}

function whyNot({ count }: ReadyMade, fit: Fit, loose: boolean): UnsuitedReadyMade['why'] | undefined {
  if (fit === "won't go" || (fit === 'loose' && !loose)) return fit;
  return count === 0 ? 'none left' : undefined;
}

/** By grade, then by clearance: less than the longest length, so that the grade always decides. */
const rank = ({ fit, clearance }: { fit: Fit; clearance: Size }): number =>
  FITS_FROM_BEST.indexOf(fit) + (clearance.width + clearance.height) / 1e10;
