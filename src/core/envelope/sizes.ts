/**
 * Standard sizes to start from: ISO's by its halving rule, North American ones from makers' charts. Knows which
 * envelope a standard card is sold with, not how well any card fits.
 */
import { inches, millimetres } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';

/** The shorter side is the width. ISO's names carry their prefix, since both systems have an A6 and an A7. */
export interface StandardSize extends Size {
  readonly name: string;
  readonly system: 'ISO' | 'North American';
}

/** An envelope with the cards it is made for, by their names in `CARDS`. */
export interface StandardEnvelope extends StandardSize {
  readonly cards: readonly string[];
}

export type Series = 'A' | 'B' | 'C';

/**
 * ISO 216 (A, B) and ISO 269 (C): size 0 has sides in the ratio 1 : √2, and an area of 1 m² in A, a shorter side of
 * 1 m in B, and sides between those of A and B in C; each next size is the one before with the longer side halved and
 * the fraction of a millimetre dropped. Throws outside 0 to 10.
 */
export function isoSize(series: Series, number: number): Size {
  if (!Number.isInteger(number) || number < 0 || number > 10)
    throw new Error(`invalid ISO size: ${series}${number}`);
  let [short, long] = [Math.round(1000 * 2 ** START[series]), Math.round(1000 * 2 ** (START[series] + 0.5))];
  for (let step = 0; step < number; step += 1) [short, long] = [Math.floor(long / 2), short];
  return { width: millimetres(short), height: millimetres(long) };
}

/** Of the shorter side of size 0, in powers of two of a metre. */
const START: Record<Series, number> = { A: -1 / 4, B: 0, C: -1 / 8 };

const iso = (series: Series, number: number): StandardSize => ({
  name: `ISO ${series}${number}`,
  system: 'ISO',
  ...isoSize(series, number),
});

const american = (name: string, width: number, height: number): StandardSize => ({
  name,
  system: 'North American',
  width: inches(width),
  height: inches(height),
});

const metric = (name: string, width: number, height: number): StandardSize => ({
  name,
  system: 'ISO',
  width: millimetres(width),
  height: millimetres(height),
});

/** Finished, folded cards. A third of A4 is cut from the sheet, so its shorter side is its height divided by three. */
export const CARDS: readonly StandardSize[] = [
  american('A1', 3.5, 4.875),
  american('A2', 4.125, 5.5),
  american('half-letter', 4.25, 5.5),
  american('A6', 4.5, 6.25),
  american('A7', 5, 7),
  american('A8', 5.25, 7.875),
  american('A9', 5.5, 8.5),
  american('A10', 5.75, 9.25),
  american('slimline', 3.625, 8.625),
  american('booklet', 5.25, 7),
  iso('A', 5),
  iso('A', 6),
  iso('A', 7),
  metric('third of A4', 99, 210),
];

export const ENVELOPES: readonly StandardEnvelope[] = [
  { ...american('A1', 3.625, 5.125), cards: ['A1'] },
  { ...american('A2', 4.375, 5.75), cards: ['A2', 'half-letter'] },
  { ...american('A6', 4.75, 6.5), cards: ['A6'] },
  { ...american('A7', 5.25, 7.25), cards: ['A7'] },
  { ...american('A8', 5.5, 8.125), cards: ['A8'] },
  { ...american('A9', 5.75, 8.75), cards: ['A9'] },
  { ...american('A10', 6, 9.5), cards: ['A10'] },
  { ...american('slimline', 3.875, 8.875), cards: ['slimline'] },
  { ...american('booklet', 5.5, 7.5), cards: ['booklet'] },
  { ...american('#6¾', 3.625, 6.5), cards: [] },
  { ...american('#7¾', 3.875, 7.5), cards: [] },
  { ...american('#9', 3.875, 8.875), cards: ['slimline'] },
  { ...american('#10', 4.125, 9.5), cards: [] },
  { ...american('#11', 4.5, 10.375), cards: [] },
  { ...american('#12', 4.75, 11), cards: [] },
  { ...american('#14', 5, 11.5), cards: [] },
  { ...iso('C', 5), cards: ['ISO A5'] },
  { ...iso('C', 6), cards: ['ISO A6'] },
  { ...iso('C', 7), cards: ['ISO A7'] },
  { ...metric('ISO DL', 110, 220), cards: ['third of A4'] },
];

/** Sheets and pads as they are sold. */
export const SHEETS: readonly StandardSize[] = [
  american('Letter', 8.5, 11),
  american('Legal', 8.5, 14),
  american('Tabloid', 11, 17),
  american('12 × 12', 12, 12),
  american('8 × 8', 8, 8),
  american('6 × 6', 6, 6),
  american('6 × 12', 6, 12),
  iso('A', 3),
  iso('A', 4),
];
