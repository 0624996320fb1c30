/** The words for how a card sits in an envelope, worked out or felt by hand. Knows no lengths and no limits. */

/** From too small to too large. */
export const FITS = ["won't go", 'tight', 'snug', 'easy', 'loose'] as const;

export type Fit = (typeof FITS)[number];

/** Fits a maker may wish for: all in which the card goes in without force. */
export const WANTED_FITS = ['snug', 'easy', 'loose'] as const;

export type WantedFit = (typeof WANTED_FITS)[number];

export const FITS_FROM_BEST: readonly Fit[] = ['easy', 'snug', 'loose', 'tight', "won't go"];

/** The worse of two fits; a pocket is only as good as its worse dimension. */
export const worseFit = (one: Fit, other: Fit): Fit =>
  FITS_FROM_BEST.indexOf(one) > FITS_FROM_BEST.indexOf(other) ? one : other;
