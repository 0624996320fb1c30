/** What the pages of a PDF share: points, inks, widths and text as the font can set it. Knows no drawing. */
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

const HAIR_SPACE = '\u200a';

/** Fractions spelt out with a fraction bar, which the font sets as one; other signs that it lacks, by common ones. */
export const typed = (text: string): string =>
  text
    .replace(/(\d?)([\u00bc-\u00be\u2150-\u215e]|[⁰¹²³⁴-⁹]+⁄[₀-₉]+)/g, (_, whole: string, fraction: string) =>
      [whole, fraction.normalize('NFKD')].filter(Boolean).join(HAIR_SPACE),
    )
    .replaceAll('≈', '~');
