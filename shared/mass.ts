/**
 * The only place where masses are made and printed. A mass is a whole number of tenths of a nanogram, so that grams,
 * pounds and half ounces are all exact. Knows nothing of paper, grades or the post.
 */
declare const brand: unique symbol;
export type Mass = number & { readonly [brand]: 'mass' };

export const PER_GRAM = 10_000_000_000;
export const PER_POUND = 4_535_923_700_000;
export const PER_OUNCE = PER_POUND / 16;

/** An integer as a mass. Throws on anything else: a programmer's error. */
export function mass(units: number): Mass {
  if (!Number.isSafeInteger(units)) throw new Error(`invalid mass: ${units}`);
  return units as Mass;
}

/** Grams, by rounding to the nearest unit. */
export const grams = (value: number): Mass => mass(Math.round(value * PER_GRAM));

/** Avoirdupois ounces, by rounding to the nearest unit; halves are exact. */
export const ounces = (value: number): Mass => mass(Math.round(value * PER_OUNCE));

export const addMass = (...masses: Mass[]): Mass => mass(masses.reduce<number>((sum, one) => sum + one, 0));

export const timesMass = (one: Mass, whole: number): Mass => mass(one * whole);

export const toGrams = (one: Mass): number => one / PER_GRAM;

export const toOunces = (one: Mass): number => one / PER_OUNCE;

/** `9.8 g`, `0.34 oz`: to the nearest tenth of a gram or hundredth of an ounce. */
export const printMass = (one: Mass, unit: 'g' | 'oz'): string =>
  unit === 'g' ? `${plain(toGrams(one), 1)} g` : `${plain(toOunces(one), 2)} oz`;

const plain = (value: number, decimals: number): string => `${Number(value.toFixed(decimals))}`;
