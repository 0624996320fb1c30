/**
 * The closed formulas of an envelope folded from a square with its corners to the middle, in plain numbers. Source:
 * plane geometry. Knows no rounding, no tool and no card.
 *
 * A pocket w × h sits in a square S turned by 45°, each of its corners m (the *inset*) in from an edge; p is the true
 * start. None of them asks which of w and h is the longer.
 */

const ROOT = Math.SQRT2;

/** The square that gives a pocket. */
export const squareFor = (width: number, height: number, inset: number): number =>
  (width + height) / ROOT + 2 * inset;

/** The true start that gives a pocket's height; its width has the twin from the other corner. */
export const startFor = (height: number, inset: number): number => height / ROOT + inset;

export const pocketHeight = (start: number, inset: number): number => (start - inset) * ROOT;

export const pocketWidth = (square: number, start: number, inset: number): number =>
  (square - start - inset) * ROOT;

/** How far a flap reaches in from a score line of this length. */
export const flapDepth = (score: number, inset: number): number => score / 2 + inset * ROOT;

/** How far it passes the opposite fold; negative when it stops short. */
export const flapOverrun = (score: number, across: number, inset: number): number =>
  flapDepth(score, inset) - across;

/** By how much the two flaps on the sides of this length overlap, the pocket being `across` between them. */
export const flapOverlap = (score: number, across: number, inset: number): number =>
  2 * flapDepth(score, inset) - across;

/** Across the band where a glued flap lies on the two folded before it. */
export const seamWidth = (inset: number): number => 2 * inset;

/** How far the glued flap may be cut back, from its score, before the band gets shorter. */
export const seamKeptTo = (shorterSide: number, inset: number): number => flapDepth(shorterSide, inset);

/** Inset from one pocket measured both ways. */
export const insetFrom = (square: number, width: number, height: number): number =>
  square / 2 - (width + height) / (2 * ROOT);

/** What to add to the ruler's reading, from one pocket measured both ways. */
export const zeroOffsetFrom = (square: number, reading: number, width: number, height: number): number =>
  square / 2 - reading - (width - height) / (2 * ROOT);

/** How far a square corner's tip recedes when it is rounded. */
export const tipLoss = (radius: number): number => radius * (ROOT - 1);

/** The legs of the triangle in which a border along one edge reaches a corner of the front; 0 when it does not. */
export const borderLegs = (border: number, inset: number): number => Math.max(0, border - inset) * ROOT;
