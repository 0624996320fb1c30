/** Inset and zero offset learnt from envelopes made: exact ones, rough ones, contradictions and nonsense. */
import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { calibrate, type Observation } from '#core/envelope/calibrate.ts';
import { DEFAULT_INSET } from '#core/envelope/fit.ts';
import { tryMeasures } from '#core/envelope/recipes.ts';
import { inches, length } from '#shared/length.ts';
import { anyMeasures, anyNotcher, SEED, thin } from './cast.ts';

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
    expect(found.problems[0]!.message).toMatch(/turned round/);
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
        const found = calibrate(all);
        expect(found.outliers).toEqual([place]);
        expect(found.problems[0]!.message).toMatch(/off from what the others say/);
      }
    }
  });

  it('refuses two that contradict each other, since neither can be told right', () => {
    const found = calibrate([GOOD, observed(7.5, 2.75, 5.71875, 3.28125)]);
    expect(found.outliers).toEqual([0, 1]);
    expect(found).toMatchObject({ inset: DEFAULT_INSET, zeroOffset: 0 });
    expect(found.problems.map(({ message }) => message)).toEqual([
      expect.stringMatching(/contradict/),
      expect.stringMatching(/contradict/),
    ]);
  });
});

describe('against a general least-squares solver', () => {
  /**
   * h/√2 = start + z − m and w/√2 = S − start − z − m (plane geometry of a square folded to its middle), for all
   * observations at once, solved by ml-matrix.
   */
  function leastSquares(observations: readonly Observation[]): [number, number] {
    const rows = observations.flatMap(() => [
      [-1, 1],
      [-1, -1],
    ]);
    const sides = observations.flatMap(({ square, start, pocket }) => [
      [pocket.height / Math.SQRT2 - start],
      [pocket.width / Math.SQRT2 - (square - start)],
    ]);
    const [inset, zeroOffset] = solve(new Matrix(rows), new Matrix(sides)).to1DArray();
    return [inset!, zeroOffset!];
  }

  const noise = fc.integer({ min: -inches(1 / 64), max: inches(1 / 64) });
  const pockets = anyNotcher.chain(({ inset, zeroOffset }) =>
    fc
      .array(
        fc.record({
          square: fc.integer({ min: inches(6), max: inches(12) }),
          share: fc.double({ min: 0.4, max: 0.6, noNaN: true }),
          off: fc.tuple(noise, noise),
        }),
        { minLength: 25, maxLength: 40 },
      )
      .map((all) =>
        all.map(({ square, share, off }): Observation => {
          const start = Math.round(square * share);
          return {
            square: length(square),
            start: length(start),
            pocket: {
              width: length(Math.round((square - start - zeroOffset - inset) * Math.SQRT2) + off[0]),
              height: length(Math.round((start + zeroOffset - inset) * Math.SQRT2) + off[1]),
            },
          };
        }),
      ),
  );

  it('comes to the same values from pockets read in 32nds, of any shape', () => {
    fc.assert(
      fc.property(pockets, (observations) => {
        const found = calibrate(observations);
        const [inset, zeroOffset] = leastSquares(observations);
        // Both estimates of some 30 values that spread over ±0.011 in stand a few thousandths apart.
        expect(Math.abs(found.inset - Math.max(0, inset))).toBeLessThan(inches(0.008));
        expect(Math.abs(found.zeroOffset - zeroOffset)).toBeLessThan(inches(0.008));
        expect(found.outliers).toEqual([]);
      }),
      SEED,
    );
  });

  it('and, where one of them is misread by ½ in, to what least squares gives without it', () => {
    fc.assert(
      fc.property(pockets, (observations) => {
        const [first, ...others] = observations;
        const { width, height } = first!.pocket;
        const misread = { ...first!, pocket: { width: length(width + inches(0.5)), height } };
        const found = calibrate([misread, ...others]);
        const [inset, zeroOffset] = leastSquares(others);
        expect(found.outliers).toEqual([0]);
        expect(Math.abs(found.inset - Math.max(0, inset))).toBeLessThan(inches(0.008));
        expect(Math.abs(found.zeroOffset - zeroOffset)).toBeLessThan(inches(0.008));
      }),
      SEED,
    );
  });
});

describe('one observation alone', () => {
  it('moves neither value further than it says, whatever was written down', () => {
    const any = fc.record({
      square: fc.integer({ min: inches(4), max: inches(12) }).map(length),
      start: fc.integer({ min: 0, max: inches(12) }).map(length),
      pocket: fc.record({
        width: fc.integer({ min: inches(1), max: inches(9) }).map(length),
        height: fc.integer({ min: inches(1), max: inches(9) }).map(length),
      }),
    });
    let counted = 0;
    fc.assert(
      fc.property(any, (one) => {
        const found = calibrate([one]);
        if (found.outliers.length === 0) counted++;
        // ½ in and ¼ in, as the README and the function say.
        expect(Math.abs(found.inset - DEFAULT_INSET)).toBeLessThanOrEqual(inches(1 / 2));
        expect(Math.abs(found.zeroOffset)).toBeLessThanOrEqual(inches(1 / 4));
      }),
      { ...SEED, numRuns: 3_000 },
    );
    expect(counted).toBeGreaterThan(5);
  });

  it('of an unusual tool waits for a second one', () => {
    const odd = {
      inset: inches(1.25),
      zeroOffset: inches(0),
      graduation: inches(1 / 16),
      largestSheet: inches(12),
    };
    const one = made({ notcher: odd, square: inches(9), start: inches(4) });
    const other = made({ notcher: odd, square: inches(10), start: inches(5.5) });
    expect(calibrate([one])).toMatchObject({ inset: DEFAULT_INSET, outliers: [0] });
    expect(calibrate([one]).problems[0]!.message).toMatch(/counts once a second pocket agrees/);
    expect(Math.abs(calibrate([one, other]).inset - inches(1.25))).toBeLessThanOrEqual(2);
  });
});

describe('sides swapped', () => {
  it('is no evidence, alone or twice, and leaves a good one standing', () => {
    expect(calibrate([SWAPPED])).toMatchObject({ inset: DEFAULT_INSET, zeroOffset: 0, outliers: [0] });
    expect(calibrate([SWAPPED]).problems[0]!.message).toMatch(/turned round/);
    expect(calibrate([SWAPPED, SWAPPED])).toMatchObject({ zeroOffset: 0, outliers: [0, 1] });
    const found = calibrate([GOOD, SWAPPED]);
    expect(found).toMatchObject({ outliers: [1], inset: calibrate([GOOD]).inset });
  });

  it.each<[string, Observation, RegExp]>([
    ['a zero offset over 1 in', observed(9, 1, 5, 6), /No ruler is this far off/],
    ['an inset over 3 in', observed(12, 6, 2, 2), /far too small for its square/],
  ])('so is %s, which the form of a tool refuses too', (_what, one, why) => {
    const found = calibrate([one, one]);
    expect(found).toMatchObject({ inset: DEFAULT_INSET, zeroOffset: 0, outliers: [0, 1] });
    expect(found.problems[0]!.message).toMatch(why);
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
