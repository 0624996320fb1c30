/** A design's look as the maker noted it: a drawn motif and a few colours. Knows nothing of how it is drawn. */

export const MOTIFS = [
  'plain',
  'stripes',
  'checks',
  'dots',
  'sprigs',
  'waves',
  'stars',
  'script',
  'border',
] as const;

export type Motif = (typeof MOTIFS)[number];

/** Colours are `#rrggbb`: the ground first, then one to three inks. */
export interface Swatch {
  readonly motif: Motif;
  readonly ground: string;
  readonly inks: readonly string[];
}

export const COLOUR = /^#[0-9a-f]{6}$/;
