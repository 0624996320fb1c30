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

/** Those that the card goes into, whichever way round, best fit first and of equals the closest. */
export function fitReadyMade(all: readonly ReadyMade[], card: Card, limits: FitLimits): FittingReadyMade[] {
  const found = all
    .filter(({ count }) => count > 0)
    .map((readyMade) => {
      const ways = [gradePocket(readyMade, card, limits), gradePocket(turned(readyMade), card, limits)];
      const { fit, clearance } = ways.sort((one, other) => rank(one) - rank(other))[0]!;
      return { readyMade, fit, clearance };
    });
  return found.filter(({ fit }) => fit !== "won't go").sort((one, other) => rank(one) - rank(other));
}

/** By grade, then by clearance: less than the longest length, so that the grade always decides. */
const rank = ({ fit, clearance }: { fit: Fit; clearance: Size }): number =>
  FITS_FROM_BEST.indexOf(fit) + (clearance.width + clearance.height) / 1e10;
