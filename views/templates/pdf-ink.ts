/** What the pages of a PDF share: points, inks, widths. Knows no drawing. */
import { toInches } from '#shared/length.ts';

/** Points of 1/72 in from plain numbers of 25 nm. */
export const points = (units: number): number => toInches(units) * 72;

export const INK = '#000000';
/** Dark enough to read, pale enough to be overlooked inside a finished envelope. */
export const FAINT = '#6f6f6f';
/** Only for edges that are neither cut lines nor scores. */
export const PALE = '#a0a0a0';
/** Prints as a light grey, so that a score or a word on it stays clear. */
export const TINT = '#e6e6e6';

/** Line widths in points. */
export const WIDTH = { cut: 0.6, score: 0.6, faint: 0.4, bar: 0.6 } as const;

/** Figures that stand as high as capitals. */
export const FIGURES: PDFKit.Mixins.TextOptions['features'] = ['lnum'];
