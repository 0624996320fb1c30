/**
 * What paper cost, by area: a piece carries its share of its sheet's price however often it was cut before. A batch pays
 * for what it took less what it laid back on the shelf, so its waste is its own; so is what is thrown out later of the
 * leftovers it made. All shares are exact, so that the uses of a sheet and what is left of it add up to its price.
 */
import {
  addShares,
  NOTHING,
  roundTogether,
  type Share,
  shareOf,
  splitShare,
  toHundredths,
} from '#shared/money.ts';
import { wholeSheet } from '#shared/sheet.ts';
import type { Design, Pad } from './stash.ts';

/** Paper of one design that one cut used up, in square units; the project's is `own` of the `parts` that came off it. */
export interface PaperUsed {
  readonly design: number;
  readonly area: bigint;
  readonly own: bigint;
  readonly parts: bigint;
}

export interface DesignCost {
  readonly design: Design;
  /** So many sheets' worth. */
  readonly sheets: number;
  /** Null where its pad has no price. */
  readonly cost: Share | null;
}

export interface BatchCost {
  /** Those with a price first. */
  readonly designs: readonly DesignCost[];
  /** Rounded so that they add up to `total`; one for each design with a price. */
  readonly rounded: readonly number[];
  /** In hundredths, as `perSet` is. */
  readonly total: number;
  readonly perSet: number;
}

/** What `area` of the pad's paper cost; null without a price. */
export const costOfArea = (pad: Pad, area: bigint): Share | null =>
  pad.price ? shareOf(pad.price.hundredths, area, BigInt(pad.price.sheets) * sheetArea(pad)) : null;

/** `sets` is how many were made, at least one. */
export function costOfBatch(
  used: readonly PaperUsed[],
  designs: ReadonlyMap<number, Design>,
  sets: number,
): BatchCost {
  const each = [...new Set(used.map(({ design }) => design))].map((id) =>
    costOfDesign(
      designs.get(id)!,
      used.filter(({ design }) => design === id),
    ),
  );
  const priced = each.filter(({ cost }) => cost !== null);
  const total = addShares(priced.map(({ cost }) => cost!));
  return {
    designs: [...priced, ...each.filter(({ cost }) => cost === null)],
    rounded: roundTogether(priced.map(({ cost }) => cost!)),
    total: toHundredths(total),
    perSet: toHundredths(splitShare(total, sets)),
  };
}

function costOfDesign(design: Design, used: readonly PaperUsed[]): DesignCost {
  const area = addShares(
    used.map((one) => (one.parts > 0n ? shareOf(1, one.area * one.own, one.parts) : NOTHING)),
  );
  const whole = costOfArea(design.pad, 1n);
  return {
    design,
    sheets: Number((area.over * 100n) / (area.under * sheetArea(design.pad))) / 100,
    cost: whole && { over: whole.over * area.over, under: whole.under * area.under },
  };
}

function sheetArea(pad: Pad): bigint {
  const { width, height } = wholeSheet(pad);
  return BigInt(width) * BigInt(height);
}
