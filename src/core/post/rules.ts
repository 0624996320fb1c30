/**
 * The size classes of each post, as data: limits, where they were published and when they were written down. Knows no
 * prices and no envelopes; whatever changes at the post office changes here and nowhere else.
 */

import { inches, type Length, millimetres } from '#shared/length.ts';
import { grams, type Mass, ounces } from '#shared/mass.ts';
import type { TROUBLES } from '#shared/schemas/post.ts';

export type PostId = 'us' | 'uk' | 'canada' | 'australia' | 'germany' | 'abroad';

/** Sides of a lying envelope: its longer and its shorter one, or those along and across the address. */
export interface Sides {
  readonly length: Length;
  readonly height: Length;
  readonly thick?: Length;
}

export interface Most extends Sides {
  readonly thick?: Length;
  /** Length, height and thickness together. */
  readonly sum?: Length;
  readonly mass?: Mass;
}

export interface SizeClass {
  readonly name: string;
  /** What a reader says of it: "a Letter", "as Standard". */
  readonly source: string;
  /** Only for a card without an envelope. */
  readonly bare?: true;
  readonly least?: Sides;
  /** Always of the longer and the shorter side. */
  readonly most: Most;
  /** Only what passes at least one of these limits. */
  readonly passes?: Most;
  /** Length over height, as exact fractions with both ends allowed. */
  readonly ratio?: { readonly least: Fraction; readonly most?: Fraction };
  /** Larger pieces have to be this thick. */
  readonly stiffer?: { readonly thick: Length; readonly longer: Length; readonly higher: Length };
  /** Contents that it refuses. */
  readonly refuses?: readonly Trouble[];
}

export type Fraction = readonly [number, number];

/** Lumps: a bow, a charm, anything uneven. Rigid: doesn't bend. Clasp: a string, button or clasp closes it. */
export type Trouble = (typeof TROUBLES)[number];

export interface Post {
  readonly id: PostId;
  readonly name: string;
  readonly unit: 'in' | 'mm';
  /** What least sizes and ratios are measured by; the largest always go by the sides. */
  readonly measuredBy: 'address' | 'sides';
  readonly tolerance?: Length;
  /** The smallest and flattest first. */
  readonly classes: readonly SizeClass[];
  readonly tooSmall: string;
  readonly tooLarge: string;
}

export const AS_OF = 'Figures collected for this version, November 2026';

const mm = (length: number, height: number, thick?: number): Sides => ({
  length: millimetres(length),
  height: millimetres(height),
  ...(thick === undefined ? {} : { thick: millimetres(thick) }),
});

const inch = (length: number, height: number, thick: number): Sides => ({
  length: inches(length),
  height: inches(height),
  thick: inches(thick),
});

const US_LETTER = {
  source: 'USPS Domestic Mail Manual 101.1, 201.1, 601.1.1',
  least: inch(5, 3.5, 0.007),
  most: { ...inch(11.5, 6.125, 0.25), mass: ounces(3.5) },
};

const US: Post = {
  id: 'us',
  name: 'United States',
  unit: 'in',
  measuredBy: 'address',
  classes: [
    {
      name: 'postcard',
      source: 'USPS Domestic Mail Manual 101, Quick Service Guide 201',
      bare: true,
      least: inch(5, 3.5, 0.007),
      most: inch(6, 4.25, 0.016),
    },
    {
      ...US_LETTER,
      name: 'letter',
      source: 'USPS Domestic Mail Manual 101.1, 201.1',
      ratio: { least: [13, 10], most: [25, 10] },
      stiffer: { thick: inches(0.009), longer: inches(6), higher: inches(4.25) },
      refuses: ['clasp', 'lumps', 'rigid'],
    },
    { ...US_LETTER, name: 'nonmachinable letter' },
    {
      name: 'large envelope',
      source: 'USPS Domestic Mail Manual 101.2, 301.1',
      most: { ...inch(15, 12, 0.75), mass: ounces(13) },
      passes: US_LETTER.most,
      refuses: ['lumps', 'rigid'],
    },
  ],
  tooSmall: 'unmailable',
  tooLarge: 'parcel',
};

const UK: Post = {
  id: 'uk',
  name: 'United Kingdom',
  unit: 'mm',
  measuredBy: 'sides',
  classes: [
    {
      name: 'Letter',
      source: 'Ofcom, on Royal Mail’s formats',
      most: { ...mm(240, 165, 5), mass: grams(100) },
    },
    {
      name: 'Large Letter',
      source: 'Ofcom, on Royal Mail’s formats',
      most: { ...mm(353, 250, 25), mass: grams(750) },
    },
  ],
  tooSmall: 'under the minimum',
  tooLarge: 'parcel',
};

const CANADA: Post = {
  id: 'canada',
  name: 'Canada',
  unit: 'mm',
  measuredBy: 'sides',
  classes: [
    {
      name: 'standard',
      source: 'Canada Post’s page on letter sizes',
      least: mm(140, 90, 0.18),
      most: { ...mm(245, 156, 5), mass: grams(50) },
    },
    {
      name: 'oversize',
      source: 'Canada Post’s page on letter sizes',
      least: mm(140, 90, 0.18),
      most: { ...mm(380, 270, 20), mass: grams(500) },
    },
  ],
  tooSmall: 'under the minimum',
  tooLarge: 'parcel',
};

const AUSTRALIA: Post = {
  id: 'australia',
  name: 'Australia',
  unit: 'mm',
  measuredBy: 'sides',
  classes: [
    {
      name: 'small letter',
      source: 'Australia Post’s letter sizes: flexible contents only',
      most: { ...mm(240, 130, 5), mass: grams(250) },
      refuses: ['rigid'],
    },
    {
      name: 'large letter',
      source: 'Australia Post’s letter sizes: flexible contents only',
      most: { ...mm(360, 260, 20), mass: grams(500) },
      refuses: ['rigid'],
    },
  ],
  tooSmall: 'under the minimum',
  tooLarge: 'parcel',
};

const GERMANY: Post = {
  id: 'germany',
  name: 'Germany',
  unit: 'mm',
  measuredBy: 'sides',
  classes: [
    {
      name: 'Standardbrief',
      source: 'Deutsche Post’s size tables',
      least: mm(140, 90),
      most: { ...mm(235, 125, 5), mass: grams(20) },
      ratio: { least: [14, 10] },
    },
    {
      name: 'Kompaktbrief',
      source: 'Deutsche Post’s size tables',
      least: mm(100, 70),
      most: { ...mm(235, 125, 10), mass: grams(50) },
      ratio: { least: [14, 10] },
    },
    {
      name: 'Großbrief',
      source: 'Deutsche Post’s size tables',
      least: mm(100, 70),
      most: { ...mm(353, 250, 20), mass: grams(500) },
    },
  ],
  tooSmall: 'under the minimum',
  tooLarge: 'parcel or a larger letter',
};

const ABROAD: Post = {
  id: 'abroad',
  name: 'Abroad, letter-post',
  unit: 'mm',
  measuredBy: 'sides',
  tolerance: millimetres(2),
  classes: [
    {
      name: 'letter-post',
      source: 'Universal Postal Union, letter-post regulations',
      least: mm(140, 90),
      most: { length: millimetres(600), height: millimetres(600), sum: millimetres(900), mass: grams(2000) },
    },
  ],
  tooSmall: 'under the minimum',
  tooLarge: 'parcel',
};

export const POSTS: Readonly<Record<PostId, Post>> = {
  us: US,
  uk: UK,
  canada: CANADA,
  australia: AUSTRALIA,
  germany: GERMANY,
  abroad: ABROAD,
};

export const POST_IDS = Object.keys(POSTS) as PostId[];
