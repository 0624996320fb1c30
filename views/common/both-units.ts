/** A measure in the reader's unit and, after it, in the other one: for what is kept and copied. Knows only lengths. */
import {
  type Length,
  printExact,
  printExactSize,
  printLength,
  printSize,
  type Units,
} from '#shared/length.ts';
import type { Size } from '#shared/size.ts';

const otherThan = ({ unit }: Units): Units => (unit === 'in' ? { unit: 'mm' } : { unit: 'in', step: 32 });

export const inOther = (one: Length, units: Units): string => printLength(one, otherThan(units));

export const sizeInOther = (size: Size, units: Units): string => printSize(size, otherThan(units));

/** `9¹⁄₁₆″ (≈230.2 mm)` */
export const inBoth = (one: Length, units: Units): string =>
  `${printExact(one, units)} (${inOther(one, units)})`;

export const sizeInBoth = (size: Size, units: Units): string =>
  `${printExactSize(size, units)} (${sizeInOther(size, units)})`;
