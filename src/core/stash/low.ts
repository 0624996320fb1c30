/**
 * What runs low: a pad by its mark, a design by its own mark or, where it has none, by its even share of its pad's.
 * Knows no database; which they are among many is for the store to find.
 */
import type { Design, Pad, PadWithDesigns } from './stash.ts';

/** A pad (`design` null) or one design of a pad that is not low as a whole. `designs` are those to show. */
export interface LowPaper {
  readonly pad: Pad;
  readonly design: Design | null;
  readonly designs: readonly Design[];
  readonly sheets: number;
  /** It is low at so many sheets, or fewer. */
  readonly mark: number;
}

/** One page of them, worst first, and how many there are in all. */
export interface LowList {
  readonly low: readonly LowPaper[];
  readonly pads: number;
  readonly designs: number;
}

/** At its low mark or under it; a mark of 0 asks for no reminder. */
export const runsLow = ({ pad, sheets }: Pick<PadWithDesigns, 'pad' | 'sheets'>): boolean =>
  pad.lowMark > 0 && sheets <= pad.lowMark;

/** Its share of a pad's mark is in whole sheets, rounded down: a share of 0 speaks up when none is left. */
export const designRunsLow = ({ lowAt = null, sheets }: Pick<Design, 'lowAt' | 'sheets'>): boolean =>
  lowAt !== null && sheets <= lowAt;
