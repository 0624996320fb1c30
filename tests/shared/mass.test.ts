/** Holds masses to the exact definitions of pound and ounce, read, printed and typed back. Knows no paper. */
import { expect, test } from 'vitest';
import {
  grams,
  mass,
  ounces,
  PER_OUNCE,
  PER_POUND,
  printMass,
  readMass,
  timesMass,
  toGrams,
  toOunces,
  typedMass,
} from '#shared/mass.ts';

// The international yard and pound agreement of 1959: a pound is 453.59237 g exactly.
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

test('read as a scale shows it, in either unit', () => {
  expect(readMass('17', 'g')).toEqual({ ok: true, value: grams(17) });
  expect(readMass(' 17,5 g ', 'oz')).toEqual({ ok: true, value: grams(17.5) });
  expect(readMass('0.6', 'oz')).toEqual({ ok: true, value: ounces(0.6) });
  expect(readMass('1 ounce', 'g')).toEqual({ ok: true, value: ounces(1) });
});

test.each(['', '-1', 'ten', '1 lb', '1.2.3', '0', '20001 g', '<b>'])('“%s” is refused', (typed) => {
  expect(readMass(typed, 'g', 'mass')).toMatchObject({ ok: false, problems: [{ field: 'mass' }] });
});

test('typed back rounded up, so that nothing gets lighter', () => {
  expect(typedMass(grams(9.7701), 'g')).toBe('9.8 g');
  expect(typedMass(grams(10), 'g')).toBe('10 g');
  expect(typedMass(ounces(0.611), 'oz')).toBe('0.62 oz');
  expect(typedMass(ounces(3.5), 'oz')).toBe('3.5 oz');
});
