/** Holds basis weights, masses and thicknesses against published figures. Knows nothing of how they are computed. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { massOfCut, massOfShape } from '#core/paper/mass.ts';
import { BASIC_SHEETS, GRADES, type Grade, gramsPerSquareMetre, inPounds } from '#core/paper/weight.ts';
import { inches, length } from '#shared/length.ts';
import { addMass, grams, PER_POUND, toGrams } from '#shared/mass.ts';

const lb = (amount: number, grade: Grade) => ({ unit: 'lb', amount, grade }) as const;
const rect = (width: number, height: number) => ({ width: inches(width), height: inches(height) });

describe('basis weight', () => {
  // The exact inch and pound over the trade's basic sheets, a ream being 500.
  test.each<[Grade, number]>([
    ['bond', 3.7597],
    ['text', 1.4801],
    ['cover', 2.7041],
    ['index', 1.808],
    ['tag', 1.6275],
    ['bristol', 2.1928],
  ])('a pound of %s is %d g/m²', (grade, expected) => {
    expect(gramsPerSquareMetre(lb(1, grade))).toBeCloseTo(expected, 4);
  });

  test('the factor is 45359237/32258 over the basic sheet’s area', () => {
    for (const grade of GRADES) {
      const [width, height] = BASIC_SHEETS[grade];
      expect(gramsPerSquareMetre(lb(1, grade))).toBeCloseTo(45359237 / 32258 / (width * height), 9);
    }
  });

  // The same definition, worked by hand to two decimals. Paper makers' printed charts give whole grams, within 2 of it.
  test.each<[number, Grade, number]>([
    [20, 'bond', 75.19],
    [80, 'text', 118.41],
    [65, 'cover', 175.77],
    [80, 'cover', 216.33],
    [100, 'cover', 270.41],
    [110, 'index', 198.88],
    [67, 'bristol', 146.92],
  ])('%d lb %s is %d g/m²', (pounds, grade, expected) => {
    expect(gramsPerSquareMetre(lb(pounds, grade))).toBeCloseTo(expected, 2);
  });

  test('the exact factor does not round 110 and 120 lb cover as the charts’ 1406.5 does', () => {
    for (const pounds of [110, 120]) {
      const charts = Math.round((1406.5 / 520) * pounds);
      expect(Math.round(gramsPerSquareMetre(lb(pounds, 'cover')))).toBe(charts - 1);
    }
  });

  test('there and back is the same figure', () => {
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 300 }), fc.constantFrom(...GRADES), (pounds, grade) => {
        expect(inPounds(lb(pounds, grade), grade)).toEqual(lb(pounds, grade));
        const metric = {
          unit: 'g/m²',
          amount: Math.round(gramsPerSquareMetre(lb(pounds, grade)) * 100) / 100,
        } as const;
        expect(inPounds(metric, grade).amount).toBeCloseTo(pounds, 1);
      }),
      { seed: 4 },
    );
  });

  test.each([0, -80, Number.NaN, 80.123])('%d is not an amount', (amount) => {
    expect(() => gramsPerSquareMetre({ unit: 'g/m²', amount })).toThrow('invalid paper weight');
  });
});

describe('mass', () => {
  // By the definition of the ream: 2000 Letter sheets are 500 of 17 × 22.
  test('500 Letter sheets of 20 lb bond weigh exactly 5 lb', () => {
    expect(massOfCut(rect(8.5, 11), lb(20, 'bond'), 500)).toBe(5 * PER_POUND);
  });

  // By the definition of basis weight, worked by hand.
  test.each<[number, number, number, number]>([
    [12, 12, 65, 16.33],
    [12, 12, 80, 20.1],
    [10, 7, 80, 9.77],
  ])('%d × %d in of %d lb cover weighs %d g', (width, height, pounds, expected) => {
    expect(toGrams(massOfCut(rect(width, height), lb(pounds, 'cover')))).toBeCloseTo(expected, 2);
  });

  test('a square metre weighs its grammage', () => {
    expect(
      massOfCut({ width: length(40_000_000), height: length(40_000_000) }, { unit: 'g/m²', amount: 160 }),
    ).toBe(grams(160));
  });

  test('cutting a piece in two loses and gains nothing but a rounding', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 300 }), fc.integer({ min: 1, max: 299 }), (width, at) => {
        fc.pre(at < width);
        const whole = massOfCut(rect(width, 7), lb(80, 'cover'));
        const halves = addMass(
          massOfCut(rect(at, 7), lb(80, 'cover')),
          massOfCut(rect(width - at, 7), lb(80, 'cover')),
        );
        expect(Math.abs(whole - halves)).toBeLessThanOrEqual(1);
      }),
      { seed: 4 },
    );
  });

  test('a shape weighs as much as the rectangle of its area', () => {
    const area = inches(4) * inches(5);
    expect(massOfShape(area, lb(65, 'cover'))).toBe(massOfCut(rect(4, 5), lb(65, 'cover')));
  });
});
