/** What lengths promise: exact units, forgiving reading, honest printing. Knows the exact inch (25.4 mm) of the international yard and pound agreement of 1959. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  add,
  inches,
  type Length,
  length,
  millimetres,
  printExact,
  printExactSize,
  printLength,
  printNumber,
  printSize,
  readLength,
  readSignedLength,
  roundLength,
  roundToStep,
  subtract,
  times,
  toInches,
  toMillimetres,
  typedLength,
  type Units,
} from '#shared/length.ts';

const EIGHTHS: Units = { unit: 'in', step: 8 };
const SIXTEENTHS: Units = { unit: 'in', step: 16 };
const THIRTY_SECONDS: Units = { unit: 'in', step: 32 };
const MM: Units = { unit: 'mm' };
const ALL_UNITS = [EIGHTHS, SIXTEENTHS, THIRTY_SECONDS, MM];
const SEED = { seed: 20261125, numRuns: 500 };

const gridStep = (units: Units): number => (units.unit === 'in' ? 1_016_000 / units.step : 4_000);

function read(text: string, units: Units = EIGHTHS): Length {
  const found = readLength(text, units);
  if (!found.ok) throw new Error(`${text}: ${found.problems[0]!.message}`);
  return found.value.length;
}

function refusal(text: string, units: Units = EIGHTHS): string {
  const found = readLength(text, units, 'width');
  if (found.ok) throw new Error(`${text} was read as ${found.value.length}`);
  expect(found.problems).toHaveLength(1);
  expect(found.problems[0]!.field).toBe('width');
  return found.problems[0]!.message;
}

describe('units', () => {
  it('keeps 64ths, thousandths of an inch and hundredths of a millimetre exact', () => {
    expect([inches(1), inches(1 / 64), inches(0.001), millimetres(1), millimetres(0.01)]).toEqual([
      1_016_000, 15_875, 1_016, 40_000, 400,
    ]);
    // 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
    expect(millimetres(25.4)).toBe(inches(1));
    expect(toMillimetres(inches(1))).toBe(25.4);
    expect(toInches(millimetres(25.4))).toBe(1);
  });

  it('throws on what is no whole number of 25 nm', () => {
    for (const value of [0.5, NaN, Infinity, 2 ** 53]) expect(() => length(value)).toThrow(/^invalid length/);
    expect(() => inches(1 / 3)).toThrow(/^invalid length/);
    expect(() => roundLength(NaN, 'down')).toThrow(/^invalid length/);
  });

  it('adds, subtracts and multiplies without loss', () => {
    expect(add(inches(1 / 64), millimetres(0.01), length(1))).toBe(16_276);
    expect(subtract(inches(7.5), inches(2.75))).toBe(inches(4.75));
    expect(times(inches(3.875), 3)).toBe(inches(11.625));
  });

  it('rounds only by name', () => {
    expect([roundLength(1.5, 'up'), roundLength(1.5, 'down'), roundLength(1.4, 'nearest')]).toEqual([
      2, 1, 1,
    ]);
    const step = inches(1 / 8);
    const between = add(inches(4.75), length(1));
    expect(roundToStep(between, step, 'down')).toBe(inches(4.75));
    expect(roundToStep(between, step, 'up')).toBe(inches(4.875));
    expect(roundToStep(between, step, 'nearest')).toBe(inches(4.75));
    expect(roundToStep(inches(4.875), step, 'up')).toBe(inches(4.875));
  });
});

describe('reading', () => {
  it.each([
    ['4 7/8', 4.875],
    ['4-7/8', 4.875],
    ['4 - 7/8', 4.875],
    ['4–7/8', 4.875],
    ['4—7/8', 4.875],
    ['4‑7/8', 4.875],
    ['4 − 7/8', 4.875],
    ['4–⅞', 4.875],
    ['4⅞', 4.875],
    ['4 ⅞', 4.875],
    ['4³⁄₁₆', 4.1875],
    ['4.875', 4.875],
    ['4 7/8"', 4.875],
    ['4⅞″', 4.875],
    ['4 7/8”', 4.875],
    ["4 7/8''", 4.875],
    ['4.875 in', 4.875],
    ['4.875in.', 4.875],
    ['4 inches', 4],
    ['  4 \t 7 / 8  ', 4.875],
    ['7/8', 0.875],
    ['9/8', 1.125],
    ['.5', 0.5],
    [',5', 0.5],
    ['4.', 4],
    ['0,125', 0.125],
    ['0', 0],
    ['≈4⅞″', 4.875],
    ['≈ 4⅞″', 4.875],
  ])('reads %j as %f in', (text, expected) => {
    expect(read(text)).toBe(inches(expected));
    expect(read(text.includes('in') || /["”″']/.test(text) ? text : `${text} in`, MM)).toBe(inches(expected));
  });

  it.each([
    ['133 mm', 133],
    ['133mm', 133],
    ['13,3 cm', 133],
    ['13.3 CM', 133],
    ['0.01 mm', 0.01],
    ['5 millimeters', 5],
  ])('reads %j as %f mm, whatever the reader’s own unit', (text, expected) => {
    for (const units of ALL_UNITS) expect(read(text, units)).toBe(millimetres(expected));
  });

  it('takes a bare number in the reader’s own unit', () => {
    expect(read('133', MM)).toBe(millimetres(133));
    expect(read('5', SIXTEENTHS)).toBe(inches(5));
  });

  it.each([
    ['', /^Type a length/],
    ['   ', /^Type a length/],
    ['mm', /^Type a length/],
    ['-4', /negative/],
    ['−4', /negative/],
    ['1,234', /two ways/],
    ['4,875', /two ways/],
    ['12,345,678', /two ways/],
    ['four', /isn’t a length/],
    ['4 7', /isn’t a length/],
    ['4 7/8 7/8', /isn’t a length/],
    ['4½½', /isn’t a length/],
    ['4 9/8', /isn’t a length/],
    ['7/0', /isn’t a length/],
    ['1.2.3', /isn’t a length/],
    ['1e3', /isn’t a length/],
    ['0x10', /isn’t a length/],
    ['Infinity', /isn’t a length/],
    ['4 mm in', /isn’t a length/],
    ["4'", /isn’t a length/],
    ['4 & 5', /isn’t a length/],
    ['5 7/8 mm', /^Fractions are read as inches/],
    ['½ cm', /^Fractions are read as inches/],
    ['10001 mm', /more than 10 m/],
    ['999999999', /more than 10 m/],
  ])('refuses %j, saying why', (text, why) => {
    expect(refusal(text)).toMatch(why);
  });

  it('says what would be understood', () => {
    expect(refusal('<b>🂡</b>')).toContain('4 7/8');
    expect(refusal('4 7/8', MM)).toMatch(/^Fractions are read as inches/);
    expect(refusal('x'.repeat(5_000)).length).toBeLessThan(150);
  });

  it('refuses what is too long unread, and in no time', () => {
    for (const piece of ['⁴', '½', ' 1', '1,111', '–']) {
      const started = performance.now();
      expect(refusal(`1${piece.repeat(80_000)}`)).toMatch(/isn’t a length/);
      expect(performance.now() - started).toBeLessThan(100);
    }
  });

  it('tells when what was typed lay off the grid', () => {
    const third = readLength('1/3', EIGHTHS);
    expect(third).toEqual({ ok: true, value: { length: 338_667, rounded: true } });
    expect(readLength('4.875', EIGHTHS)).toMatchObject({ value: { rounded: false } });
    expect(readLength('0.00003 mm', EIGHTHS)).toMatchObject({ value: { length: 1, rounded: true } });
    expect(readLength('10000 mm', MM)).toMatchObject({
      value: { length: 400_000_000, rounded: false },
    });
  });

  it('takes a sign only where one is asked for', () => {
    const signed = (text: string) => readSignedLength(text, EIGHTHS);
    expect(signed('-1/16')).toMatchObject({ value: { length: -inches(1 / 16) } });
    expect(signed('− 1/16')).toMatchObject({ value: { length: -inches(1 / 16) } });
    expect(signed('+1/16')).toMatchObject({ value: { length: inches(1 / 16) } });
    expect(signed('1/16')).toMatchObject({ value: { length: inches(1 / 16) } });
    expect(signed('--1/16').ok).toBe(false);
    const zero = signed('-0');
    expect(zero.ok && Object.is(zero.value.length, 0)).toBe(true);
  });
});

describe('printing', () => {
  it('prints inches to the reader’s step and marks what it rounded', () => {
    expect(printLength(inches(4.875), EIGHTHS)).toBe('4⅞″');
    expect(printLength(inches(4.1875), SIXTEENTHS)).toBe('4³⁄₁₆″');
    expect(printLength(inches(4.1875), EIGHTHS)).toBe('≈4¼″');
    expect(printLength(inches(4.1875), EIGHTHS, 'down')).toBe('≈4⅛″');
    expect(printLength(inches(4.1875), EIGHTHS, 'up')).toBe('≈4¼″');
    expect(printLength(inches(31 / 32), THIRTY_SECONDS)).toBe('³¹⁄₃₂″');
    expect(printLength(inches(12), EIGHTHS)).toBe('12″');
    expect(printLength(length(0), EIGHTHS)).toBe('0″');
  });

  it('prints millimetres to a tenth', () => {
    expect(printLength(inches(4.875), MM)).toBe('≈123.8 mm');
    expect(printLength(millimetres(133), MM)).toBe('133 mm');
    expect(printLength(millimetres(100), MM)).toBe('100 mm');
    expect(printNumber(millimetres(0.5), MM)).toBe('0.5');
  });

  it('prints sizes width first and negatives with a minus', () => {
    expect(printSize({ width: inches(5.875), height: inches(3) }, EIGHTHS)).toBe('5⅞ × 3″');
    expect(printLength(length(-inches(1 / 16)), SIXTEENTHS)).toBe('−¹⁄₁₆″');
    expect(printLength(length(-1), SIXTEENTHS)).toBe('≈0″');
  });
});

describe('printing what is to be set or cut', () => {
  it.each([
    [inches(4.1875), '4³⁄₁₆″'],
    [inches(1 / 32), '¹⁄₃₂″'],
    [inches(6 + 5 / 64), '6⁵⁄₆₄″'],
    [inches(9.5), '9½″'],
    [inches(5.602), '5.602″'],
    [millimetres(119.5), '119.5 mm'],
    [length(5_691_524), '≈5.602″'],
    [length(-inches(1 / 64)), '−¹⁄₆₄″'],
  ])('prints %i in inches as %s, whatever the step', (one, text) => {
    for (const units of [EIGHTHS, SIXTEENTHS, THIRTY_SECONDS]) expect(printExact(one, units)).toBe(text);
  });

  it.each([
    [millimetres(119.5), '119.5 mm'],
    [millimetres(0.01), '0.01 mm'],
    // 4³⁄₁₆ · 25.4, ¹⁄₃₂ · 25.4 (1 in = 25.4 mm exactly, international yard and pound agreement, 1959).
    [inches(4.1875), '106.3625 mm'],
    [inches(1 / 32), '≈0.79 mm'],
    [length(5_691_524), '≈142.29 mm'],
  ])('prints %i in millimetres as %s', (one, text) => {
    expect(printExact(one, MM)).toBe(text);
  });

  it('prints sizes with one unit where both sides have the same', () => {
    expect(printExactSize({ width: inches(4.75), height: inches(5.0625) }, EIGHTHS)).toBe('4¾ × 5¹⁄₁₆″');
    expect(printExactSize({ width: inches(4.75), height: millimetres(119.5) }, EIGHTHS)).toBe(
      '4¾″ × 119.5 mm',
    );
    expect(printExactSize({ width: length(5_691_524), height: inches(5) }, EIGHTHS)).toBe('≈5.602 × 5″');
  });

  it('reads back as the same length from every ruler’s grid, and says so where it lies on none', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...ALL_UNITS),
        fc.integer({ min: 0, max: 399_990_000 }),
        fc.constantFrom(15_875, 1_016, 400, 1),
        (shown, value, step) => {
          const one = length(value - (value % step));
          const printed = printExact(one, shown);
          const exact = [shown.unit === 'in' ? 15_875 : 63_500, 1_016, 400];
          expect(printed.startsWith('≈')).toBe(exact.every((grid) => one % grid !== 0));
          if (printed.startsWith('≈')) expect(Math.abs(read(printed, shown) - one)).toBeLessThanOrEqual(508);
          else expect(read(printed, shown)).toBe(one);
        },
      ),
      SEED,
    );
  });
});

describe('properties', () => {
  const units = fc.constantFrom(...ALL_UNITS);

  it('print, then read, gives the same length for every value on the printed grid', () => {
    fc.assert(
      fc.property(units, fc.integer({ min: 0, max: 3_000 }), (shown, steps) => {
        const one = length(steps * gridStep(shown));
        const printed = printLength(one, shown);
        expect(printed).not.toContain('≈');
        expect(readLength(printed, shown)).toEqual({ ok: true, value: { length: one, rounded: false } });
        expect(read(printNumber(one, shown), shown)).toBe(one);
        for (const other of ALL_UNITS) expect(read(printed, other)).toBe(one);
      }),
      SEED,
    );
    for (const shown of ALL_UNITS) {
      for (let steps = 0; steps <= 700; steps++) {
        const one = length(steps * gridStep(shown));
        expect(read(printLength(one, shown), shown)).toBe(one);
      }
    }
  });

  it('prints within half a step, on the side its rounding names, and marks exactly what it changed', () => {
    fc.assert(
      fc.property(units, fc.integer({ min: 0, max: 400_000_000 - 200_000 }), (shown, value) => {
        const one = length(value);
        const back = (how: 'up' | 'down' | 'nearest') => read(printLength(one, shown, how), shown);
        expect(Math.abs(back('nearest') - one)).toBeLessThanOrEqual(gridStep(shown) / 2);
        expect(back('down')).toBeLessThanOrEqual(one);
        expect(back('up')).toBeGreaterThanOrEqual(one);
        expect(back('up') - back('down')).toBe(value % gridStep(shown) === 0 ? 0 : gridStep(shown));
        expect(printLength(one, shown).startsWith('≈')).toBe(value % gridStep(shown) !== 0);
      }),
      SEED,
    );
  });

  it('typedLength reads back exactly, whatever the length and the unit', () => {
    fc.assert(
      fc.property(units, fc.integer({ min: -400_000_000, max: 400_000_000 }), (shown, value) => {
        const typed = typedLength(length(value), shown);
        expect(readSignedLength(typed, shown)).toEqual({
          ok: true,
          value: { length: value, rounded: false },
        });
      }),
      SEED,
    );
    expect(typedLength(inches(4.875), EIGHTHS)).toBe('4 7/8');
    expect(typedLength(inches(4.001), EIGHTHS)).toBe('4.001');
    expect(typedLength(inches(60), EIGHTHS)).toBe('60 in');
    expect(typedLength(length(1), MM)).toBe('0.000025');
    expect(typedLength(length(1), EIGHTHS)).toBe('0.000025 mm');
  });

  it('reading never throws and never makes anything but a length', () => {
    const soup = fc.string({ unit: fc.constantFrom(...'0123456789 ,./-−⅞¼⁄³₁″"mcin≈<é'), maxLength: 14 });
    fc.assert(
      fc.property(units, fc.oneof(soup, fc.string({ unit: 'binary' })), (shown, text) => {
        const found = readLength(text, shown);
        if (found.ok) expect(Number.isSafeInteger(found.value.length) && found.value.length >= 0).toBe(true);
        else expect(found.problems[0]!.message.length).toBeGreaterThan(10);
      }),
      { ...SEED, numRuns: 3_000 },
    );
  });
});
