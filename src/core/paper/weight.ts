/**
 * How heavy a paper is, in grams per square metre or in pounds of its grade's basic ream, and the way from one to the
 * other. Knows no sheets, no thickness and no stash.
 */
import { PER_INCH } from '#shared/length.ts';
import { type Mass, mass, PER_POUND } from '#shared/mass.ts';

/** A paper's weight as its label gives it: up to two decimals, above zero. */
export type PaperWeight =
  | { readonly unit: 'g/m²'; readonly amount: number }
  | { readonly unit: 'lb'; readonly amount: number; readonly grade: Grade };

export type Grade = keyof typeof BASIC_SHEETS;

/** The sheet, in inches, of which 500 weigh the pounds on the label. */
export const BASIC_SHEETS = {
  bond: [17, 22],
  text: [25, 38],
  cover: [20, 26],
  index: [25.5, 30.5],
  tag: [24, 36],
  bristol: [22.5, 28.5],
} as const satisfies Record<string, readonly [number, number]>;

export const GRADES = Object.keys(BASIC_SHEETS) as Grade[];

/** Exact: mass units per square length unit as one fraction, top over bottom. */
interface Density {
  readonly top: bigint;
  readonly bottom: bigint;
}

/** The weight as mass per area, without any rounding. Throws on an amount that `PaperWeight` does not allow. */
function density(weight: PaperWeight): Density {
  const hundredths = Math.round(weight.amount * 100);
  if (!(hundredths > 0) || Math.abs(weight.amount * 100 - hundredths) > 1e-6) {
    throw new Error(`invalid paper weight: ${weight.amount}`);
  }
  if (weight.unit === 'g/m²') return { top: BigInt(hundredths) * 100_000_000n, bottom: SQUARE_METRE };
  const [width, height] = BASIC_SHEETS[weight.grade];
  const sheet = BigInt(width * PER_INCH) * BigInt(height * PER_INCH);
  return { top: BigInt(hundredths) * BigInt(PER_POUND), bottom: 100n * SHEETS_IN_REAM * sheet };
}

/** Grams per square metre, as near as a plain number gets: for showing, and for thickness. */
export function gramsPerSquareMetre(weight: PaperWeight): number {
  const { top, bottom } = density(weight);
  return Number((top * SQUARE_METRE) / bottom) / 10_000_000_000;
}

/** The same paper's weight in pounds of a grade, rounded to the nearest hundredth. */
export function inPounds(weight: PaperWeight, grade: Grade): PaperWeight {
  const one = gramsPerSquareMetre({ unit: 'lb', amount: 1, grade });
  return { unit: 'lb', amount: Math.round((gramsPerSquareMetre(weight) / one) * 100) / 100, grade };
}

/** The mass of an area given in square units of length, exact until it is rounded once to the nearest unit. */
export function massOfArea(area: bigint, weight: PaperWeight): Mass {
  const { top, bottom } = density(weight);
  return mass(Number((2n * area * top + bottom) / (2n * bottom)));
}

const SHEETS_IN_REAM = 500n;
const SQUARE_METRE = 40_000_000n ** 2n;
