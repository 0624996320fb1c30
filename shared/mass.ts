/**
 * The only place where masses are made, read and printed. A mass is a whole number of tenths of a nanogram, so that grams,
 * pounds and half ounces are all exact. Knows nothing of paper, grades or the post.
 */
import { accept, type Checked, refuse } from './checked.ts';

declare const brand: unique symbol;
export type Mass = number & { readonly [brand]: 'mass' };

const PER_GRAM = 10_000_000_000;
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

/** Reads what a scale shows: `17 g`, `17,5 g`, `0.6 oz`; without a unit it is the reader's own. */
export function readMass(text: string, unit: 'g' | 'oz', field = ''): Checked<Mass> {
  const found = /^(\d{1,6}(?:[.,]\d{1,4})?) ?(g|gr|grams?|oz|ounces?)?\.?$/.exec(text.trim().toLowerCase());
  if (!found) return refuse(field, UNDERSTOOD);
  const amount = Number(found[1]!.replace(',', '.'));
  const read = (found[2] ?? unit).startsWith('g') ? grams(amount) : ounces(amount);
  if (read <= 0) return refuse(field, 'This has to be more than zero.');
  return read > HEAVIEST ? refuse(field, 'That is more than 20 kg.') : accept(read);
}

/** Plain text for the value of a field, rounded up to what `printMass` shows: `0.61 oz`, `17.2 g`. */
export const typedMass = (one: Mass, unit: 'g' | 'oz'): string =>
  unit === 'g' ? `${upTo(toGrams(one), 10)} g` : `${upTo(toOunces(one), 100)} oz`;

const HEAVIEST = grams(20_000);
const UNDERSTOOD = 'Write a weight like 17 g or 0.6 oz.';

const upTo = (value: number, parts: number): number => Math.ceil(value * parts - 1e-9) / parts;

const plain = (value: number, decimals: number): string => `${Number(value.toFixed(decimals))}`;
