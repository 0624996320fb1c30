/** Inset and zero offset learnt from envelopes made: exact ones, rough ones, contradictions and nonsense. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { calibrate, type Observation } from '#core/envelope/calibrate.ts';
import { DEFAULT_INSET } from '#core/envelope/fit.ts';
import { tryMeasures } from '#core/envelope/recipes.ts';
import { inches, length } from '#shared/length.ts';
import { anyMeasures, SEED, thin } from './cast.ts';

const HAIR = inches(0.001);

/** An envelope really made on a tool: what its pocket then measures. */
const made = (measures: Omit<Parameters<typeof tryMeasures>[0], 'card'>): Observation => ({
  square: measures.square,
  start: measures.start,
  pocket: tryMeasures({ card: thin(3, 2), ...measures }).pocket,
});

const observed = (square: number, start: number, width: number, height: number): Observation => ({
  square: inches(square),
  start: inches(start),
  pocket: { width: inches(width), height: inches(height) },
});

/** Square 7½, start 2¾ on a tool with inset 7/16 and an honest ruler, measured with a ruler in 32nds. */
const GOOD = observed(7.5, 2.75, 6.09375, 3.28125);
const GOOD_TOO = observed(8, 3.5, 5.75, 4.34375);
/** The same as GOOD, width and height taken for each other. */
const SWAPPED = observed(7.5, 2.75, 3.28125, 6.09375);

describe('one pocket measured both ways', () => {
  it('gives both values back, whatever the tool', () => {
    fc.assert(
      fc.property(anyMeasures, (measures) => {
        const found = calibrate([made(measures)]);
        expect(Math.abs(found.inset - measures.notcher.inset)).toBeLessThanOrEqual(1);
        expect(Math.abs(found.zeroOffset - measures.notcher.zeroOffset)).toBeLessThanOrEqual(1);
        expect(found).toMatchObject({ outliers: [], problems: [], spread: { inset: 0 } });
      }),
      SEED,
    );
  });

  it('on a portrait envelope too, the height being the start’s side', () => {
    const found = calibrate([observed(7.5, 4.75, 3.28125, 6.09375)]);
    expect(Math.abs(found.inset - inches(7 / 16))).toBeLessThan(inches(1 / 64));
    expect(Math.abs(found.zeroOffset)).toBeLessThan(inches(1 / 64));
  });
});

describe('several', () => {
  it('rough measurements settle on the middle, with their spread', () => {
    const error = fc.integer({ min: -inches(1 / 64), max: inches(1 / 64) });
    const errors = fc.array(fc.tuple(error, error), { minLength: 1, maxLength: 9 });
    fc.assert(
      fc.property(anyMeasures, errors, (measures, off) => {
        const exact = made(measures);
        const rough = off.map(([width, height]) => ({
          ...exact,
          pocket: { width: length(exact.pocket.width + width), height: length(exact.pocket.height + height) },
        }));
        const found = calibrate(rough);
        // Two errors of e move either value by at most e/√2.
        const most = inches(1 / 64) / Math.SQRT2 + 2;
        expect(found.outliers).toEqual([]);
        expect(Math.abs(found.inset - measures.notcher.inset)).toBeLessThanOrEqual(most);
        expect(Math.abs(found.zeroOffset - measures.notcher.zeroOffset)).toBeLessThanOrEqual(most);
        expect(found.spread.inset).toBeLessThanOrEqual(2 * most);
      }),
      SEED,
    );
  });

  it('names the one that is off and leaves it out', () => {
    const found = calibrate([GOOD, SWAPPED, GOOD_TOO]);
    expect(found.outliers).toEqual([1]);
    expect(found.problems).toHaveLength(1);
    expect(found.problems[0]).toMatchObject({ field: 'observations.1' });
    expect(found.problems[0]!.message).toMatch(/off from what the others say/);
    const without = calibrate([GOOD, GOOD_TOO]);
    expect([found.inset, found.zeroOffset, found.spread]).toEqual([
      without.inset,
      without.zeroOffset,
      without.spread,
    ]);
    expect(Math.abs(found.inset - inches(7 / 16))).toBeLessThan(inches(1 / 32));
  });

  it('names it wherever it stands among good ones, and whether it is large or small', () => {
    const wrong = [
      observed(7.5, 2.75, 5.71875, 3.28125),
      observed(7.5, 2.75, 6.09375, 2.90625),
      observed(7.5, 2.375, 6.09375, 3.28125),
    ];
    for (const one of wrong) {
      for (const place of [0, 1, 2, 3]) {
        const all = [GOOD, GOOD_TOO, GOOD].toSpliced(place, 0, one);
        expect(calibrate(all).outliers).toEqual([place]);
      }
    }
  });

  it('refuses two that contradict each other, since neither can be told right', () => {
    const found = calibrate([GOOD, SWAPPED]);
    expect(found.outliers).toEqual([0, 1]);
    expect(found).toMatchObject({ inset: DEFAULT_INSET, zeroOffset: 0 });
    expect(found.problems.map(({ message }) => message)).toEqual([
      expect.stringMatching(/contradict/),
      expect.stringMatching(/contradict/),
    ]);
  });
});

describe('nothing to go by', () => {
  it('the defaults stand until then', () => {
    expect(calibrate([])).toEqual({
      inset: DEFAULT_INSET,
      zeroOffset: 0,
      spread: { inset: 0, zeroOffset: 0 },
      outliers: [],
      problems: [],
    });
  });

  it.each<[string, Observation, RegExp]>([
    ['a start outside the square', observed(7.5, 7.5, 6.09375, 3.28125), /outside the square/],
    ['a start below nothing', { ...GOOD, start: length(-1) }, /outside the square/],
    ['no square', { ...GOOD, square: length(0) }, /more than nothing/],
    ['a negative pocket', { ...GOOD, pocket: { width: length(-5), height: inches(3) } }, /more than nothing/],
    ['a pocket no such square gives', observed(7.5, 2.75, 7.5, 4), /No square this small/],
    ['not a number', { ...GOOD, square: Number.NaN as never }, /not lengths/],
    ['between two lengths', { ...GOOD, start: 1.5 as never }, /not lengths/],
    ['beyond ten metres', { ...GOOD, square: length(2 ** 40) }, /not lengths/],
  ])('names %s and goes by the others', (_what, wrong, message) => {
    const found = calibrate([GOOD, wrong]);
    expect(found.outliers).toEqual([1]);
    expect(found.problems[0]!.message).toMatch(message);
    expect(found.inset).toBe(calibrate([GOOD]).inset);
    expect(calibrate([wrong])).toMatchObject({ inset: DEFAULT_INSET, outliers: [0] });
  });

  it('a tool with its notch on the very edge is not called impossible for a hair', () => {
    const found = calibrate([observed(8, 4, 5.6875, 5.6563 - 0.0003)]);
    expect(found.outliers).toEqual([]);
    expect(found.inset).toBeLessThan(HAIR);
  });
});
