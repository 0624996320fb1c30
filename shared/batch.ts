/** What the maker may ask to have cut: a part with its size and copies, which paper will do, how its print lies. */
import type { Length } from './length.ts';
import type { PaperKind } from './paper-kind.ts';
import type { Size } from './size.ts';

export type PaperAsked =
  | { readonly of: 'any' }
  | { readonly of: 'design'; readonly design: number }
  | { readonly of: 'kind'; readonly kind: PaperKind };

/** *bordered*: the printed border lies along its bottom edge. */
export const PRINTS_ASKED = ['any way', 'upright', 'bordered'] as const;

export type PrintAsked = (typeof PRINTS_ASKED)[number];

/** Copy k of everything that matches is of one design, or all copies are. */
export const MATCHES = ['each set', 'all alike'] as const;

export type Match = (typeof MATCHES)[number];

export interface PartAsked extends Size {
  readonly name: string;
  readonly copies: number;
  readonly print: PrintAsked;
  readonly paper: PaperAsked;
  /** Lightest paper that will do, in g/m². */
  readonly grammage: number | null;
  /** Of the same design as the envelopes. */
  readonly match: boolean;
  /** Its top left corner, on a sheet with its print up: each copy comes from that spot of a sheet. */
  readonly at?: { readonly x: Length; readonly y: Length };
}
