/** Which way a print wants to lie, on paper and on the front of an envelope. Knows no patterns and no colours. */
import type { Length } from './length.ts';

/**
 * *any way*: may be turned freely. *upright*: the sheet's height runs along the print. *one edge*: a border of this
 * depth lies along the bottom edge of the upright sheet.
 */
export type Print =
  | { readonly direction: 'any way' }
  | { readonly direction: 'upright' }
  | { readonly direction: 'one edge'; readonly border: Length };

export type PrintDirection = Print['direction'];

/** How the print runs on the finished front, against the front's longer side. */
export const FRONT_LIES = ['along', 'across', 'diagonal'] as const;

export type FrontLie = (typeof FRONT_LIES)[number];
