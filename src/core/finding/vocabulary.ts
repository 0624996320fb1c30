/**
 * The kinds of things that can be found, and the words that mean a kind, a size, a print or a paper rather than
 * themselves. Data only, but for looking a word up.
 */
import { FOLD_NAMES } from '#shared/fold.ts';
import { inches, type Length } from '#shared/length.ts';
import { FITS } from '#shared/outcome.ts';
import { PAPER_KINDS } from '#shared/paper-kind.ts';
import type { PrintDirection } from '#shared/print.ts';
import type { Motif } from '#shared/swatch.ts';

/** In the order in which equals stand. */
export const FIND_KINDS = [
  'project',
  'offcut',
  'design',
  'pad',
  'lesson',
  'outcome',
  'part',
  'series',
  'place',
  'card',
  'ready-made',
] as const;

export type FindKind = (typeof FIND_KINDS)[number];

/** One property by which things are told apart; things that have several have one of each value. */
export interface Facet {
  readonly name: 'print' | 'paper' | 'long' | 'fold' | 'fit' | 'month' | 'is';
  readonly value: string;
}

/** What a word stands for besides itself. */
export interface Meaning {
  readonly kinds: readonly FindKind[];
  readonly facets: readonly Facet[];
}

export interface SizeWord {
  readonly name: string;
  readonly words: readonly string[];
  /** The longer side is over this and up to that. */
  readonly over: Length;
  readonly upTo: Length;
}

/** The index knows longer sides by half inches begun, and all beyond a foot as one: limits lie on half inches. */
const HALF_INCH = inches(0.5);
const BEYOND = 25;

export const SIZE_WORDS: readonly SizeWord[] = [
  { name: 'mini', words: ['mini', 'tiny'], over: inches(0), upTo: inches(4) },
  { name: 'small', words: ['small', 'little'], over: inches(4), upTo: inches(5.5) },
  { name: 'medium', words: ['medium', 'middling'], over: inches(5.5), upTo: inches(7.5) },
  { name: 'large', words: ['large', 'big'], over: inches(7.5), upTo: inches(100) },
];

const KIND_WORDS: Record<FindKind, readonly string[]> = {
  project: ['project', 'projects'],
  offcut: ['offcut', 'offcuts', 'scrap', 'scraps', 'leftover', 'leftovers'],
  design: ['design', 'designs'],
  pad: ['pad', 'pads'],
  lesson: ['lesson', 'lessons'],
  outcome: ['outcome', 'outcomes'],
  part: ['part', 'parts'],
  series: ['series'],
  place: ['place', 'places'],
  card: ['card', 'cards'],
  'ready-made': ['bought'],
};

const ENVELOPE_WORDS = ['envelope', 'envelopes'];

/** A border may be a motif, or a direction: it lies along one edge. */
const PRINT_WORDS: Record<Motif | PrintDirection, readonly string[]> = {
  plain: ['plain', 'solid', 'unprinted'],
  stripes: ['stripes', 'striped', 'stripe', 'stripy', 'lined'],
  checks: ['checks', 'checked', 'check', 'chequered', 'checkered', 'squared'],
  dots: ['dots', 'dotted', 'dot', 'dotty', 'spotted', 'spotty', 'spots'],
  sprigs: ['sprigs', 'sprigged', 'sprig', 'floral', 'leafy', 'flowered'],
  waves: ['waves', 'wavy', 'waved', 'wave'],
  stars: ['stars', 'starry', 'starred', 'star'],
  script: ['script', 'scripted', 'lettered', 'handwritten'],
  border: ['border', 'bordered', 'borders'],
  'any way': [],
  upright: ['upright'],
  'one edge': ['border', 'bordered', 'borders'],
};

/** A word that is not all there yet means what it begins, from so many letters on. */
const ENOUGH = 4;

/** What a folded word means; nothing for most words. */
export function meaningOf(word: string): Meaning {
  const means = (words: readonly string[]): boolean =>
    words.some((one) => one === word || (word.length >= ENOUGH && one.startsWith(word)));
  return {
    kinds: FIND_KINDS.filter((kind) => means(KIND_WORDS[kind])),
    facets: [
      ...Object.entries(PRINT_WORDS).flatMap(([value, words]) =>
        means(words) ? [{ name: 'print', value } as const] : [],
      ),
      ...PAPER_KINDS.flatMap((value) => (means([value]) ? [{ name: 'paper', value } as const] : [])),
      ...SIZE_WORDS.flatMap((size) => (means(size.words) ? longFacets(size) : [])),
      ...FOLD_NAMES.flatMap((value) => (means([value]) ? [{ name: 'fold', value } as const] : [])),
      ...FITS.flatMap((value) => (means([value]) ? [{ name: 'fit', value } as const] : [])),
      ...(means(ENVELOPE_WORDS) ? [{ name: 'is', value: 'envelope' } as const] : []),
    ],
  };
}

/** Each half inch of the longer side that the size word covers. */
export function longFacets({ over, upTo }: Pick<SizeWord, 'over' | 'upTo'>): Facet[] {
  const [first, last] = [over / HALF_INCH + 1, Math.min(BEYOND, upTo / HALF_INCH)];
  return Array.from({ length: last - first + 1 }, (_, one) => ({ name: 'long', value: `${first + one}` }));
}
