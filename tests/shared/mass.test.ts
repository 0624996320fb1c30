/** Holds masses to the exact definitions of pound and ounce. Knows no paper. */
import { expect, test } from 'vitest';
import {
  grams,
  mass,
  ounces,
  PER_OUNCE,
  PER_POUND,
  printMass,
  timesMass,
  toGrams,
  toOunces,
} from '#shared/mass.ts';

// International avoirdupois pound: 453.59237 g; facts, exact units.
test('pounds, ounces and half ounces are exact', () => {
  expect(PER_POUND).toBe(grams(453.59237));
  expect(ounces(3.5) * 2).toBe(7 * PER_OUNCE);
  expect(timesMass(ounces(1), 16)).toBe(PER_POUND);
  expect(toOunces(grams(28.349523125))).toBe(1);
  expect(toGrams(ounces(1))).toBe(28.349523125);
});

test('shown to the tenth of a gram or the hundredth of an ounce', () => {
  expect(printMass(grams(9.77), 'g')).toBe('9.8 g');
  expect(printMass(grams(100), 'g')).toBe('100 g');
  expect(printMass(ounces(3.5), 'oz')).toBe('3.5 oz');
});

test('a mass is a whole number', () => {
  expect(() => mass(0.5)).toThrow('invalid mass');
  expect(() => grams(Number.NaN)).toThrow('invalid mass');
});
