/** Lengths and masses in a post's own units, as exact as its limits need. Knows no rules. */
import { type Length, PER_INCH, printLength, toInches, toMillimetres } from '#shared/length.ts';
import { type Mass, printMass } from '#shared/mass.ts';

/** `6⅛″`, `0.007″`, `6.378″`, `133.35 mm`. */
export function sayLength(one: Length, unit: 'in' | 'mm'): string {
  if (unit === 'mm') return `${Number(toMillimetres(one).toFixed(2))} mm`;
  return one % (PER_INCH / 32) === 0
    ? printLength(one, { unit: 'in', step: 32 })
    : `${Number(toInches(one).toFixed(3))}″`;
}

export const sayMass = (one: Mass, unit: 'in' | 'mm'): string => printMass(one, unit === 'in' ? 'oz' : 'g');
