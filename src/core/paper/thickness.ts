/**
 * How thick a paper is: what was measured, or else a range from its weight and finish. Knows no cards and no
 * envelopes. The mills call volume per mass *bulk*; here bulk is a card's thickness, so this is *volume*.
 */
import { type Length, roundLength, times } from '#shared/length.ts';
import { gramsPerSquareMetre, type PaperWeight } from './weight.ts';

/** From the least to the most that a thickness may be; both the same when it was measured. */
export interface Range {
  readonly least: Length;
  readonly most: Length;
}

/** Cubic centimetres per gram, from the densest to the loosest paper of the kind. */
export type Volume = readonly [number, number];

export type Finish = keyof typeof VOLUMES;

/**
 * Smooth: from cover stock charts (65 lb 8 pt, 80 lb 9½ pt, 100 lb 11 pt). Bulky: a mill's book papers. Uncoated: from
 * memory, so it is only a default, until the maker measures a stack of her own.
 */
export const VOLUMES = {
  smooth: [1.03, 1.16],
  uncoated: [1.3, 1.4],
  bulky: [1.5, 2],
} as const satisfies Record<string, Volume>;

/** What a card or patterned paper may be when nobody has said which it is. */
export const ANY_CARDSTOCK: Volume = [VOLUMES.smooth[0], VOLUMES.uncoated[1]];

export interface Paper {
  readonly weight: PaperWeight;
  readonly volume?: Volume;
  /** One sheet, measured: a stack of ten divided by ten is best. Then weight and volume are not asked. */
  readonly measured?: Length;
}

/** One sheet's thickness: grammage × volume, rounded outwards, unless it was measured. Source: ISO 534's definition. */
export function thicknessOf(paper: Paper): Range {
  if (paper.measured !== undefined) return { least: paper.measured, most: paper.measured };
  const [dense, loose] = paper.volume ?? ANY_CARDSTOCK;
  const micrometres = gramsPerSquareMetre(paper.weight);
  return {
    least: roundLength(nearGrid(micrometres * dense * PER_MICROMETRE), 'down'),
    most: roundLength(nearGrid(micrometres * loose * PER_MICROMETRE), 'up'),
  };
}

/** So many sheets on top of each other. */
export const stacked = (one: Range, sheets: number): Range => ({
  least: times(one.least, sheets),
  most: times(one.most, sheets),
});

const PER_MICROMETRE = 40;

/** Undoes the last bit of a product, so that an exact thickness stays exact. */
const nearGrid = (units: number): number =>
  Math.abs(units - Math.round(units)) < 1e-6 ? Math.round(units) : units;
