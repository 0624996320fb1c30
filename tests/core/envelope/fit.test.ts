/**
 * Grades of clearance: against published size charts, which pair cards with envelopes but give no grade (the
 * grades are ours), and where the defaults agree with common practice, with the ends of every range.
 */
import { describe, expect, it } from 'vitest';
import {
  DEFAULT_INSET,
  DEFAULT_LIMITS,
  goesFreely,
  gradeClearance,
  gradePocket,
  idealClearance,
  leastClearance,
  THIN_BULK,
} from '#core/envelope/fit.ts';
import type { FitLimits } from '#core/envelope/recipe.ts';
import { tryMeasures } from '#core/envelope/recipes.ts';
import { add, inches, length, PER_INCH, roundLength, subtract } from '#shared/length.ts';
import { FITS, WANTED_FITS, worseFit } from '#shared/outcome.ts';
import { thin, tool } from './cast.ts';

describe('published pairs of card and envelope (envelope makers’ and printers’ size charts), graded by us', () => {
  it.each([
    ['A1 (4-bar)', [5.125, 3.625], [4.875, 3.5], 'easy', 'easy'],
    ['A2', [5.75, 4.375], [5.5, 4.125], 'easy', 'easy'],
    ['A2, half-letter card', [5.75, 4.375], [5.5, 4.25], 'easy', 'easy'],
    ['A6', [6.5, 4.75], [6.25, 4.5], 'easy', 'easy'],
    ['A7', [7.25, 5.25], [7, 5], 'easy', 'easy'],
    ['A8', [8.125, 5.5], [7.875, 5.25], 'easy', 'easy'],
    ['A9', [8.75, 5.75], [8.5, 5.5], 'easy', 'easy'],
    ['A10', [9.5, 6], [9.25, 5.75], 'easy', 'easy'],
    ['slimline', [8.875, 3.875], [8.625, 3.625], 'easy', 'easy'],
    // The charts leave ½ in one way here; that we call loose.
    ['booklet', [7.5, 5.5], [7, 5.25], 'loose', 'easy'],
  ] as const)('%s', (_name, [width, height], [cardWidth, cardHeight], along, across) => {
    const pocket = { width: inches(width), height: inches(height) };
    const graded = gradePocket(pocket, thin(cardWidth, cardHeight), DEFAULT_LIMITS);
    expect(graded.fits).toEqual({ width: along, height: across });
    expect(graded.fit).toBe(worseFit(along, across));
  });

  it('a half-letter card in an A2 stays easy when its pocket is rounded down by a hair', () => {
    const pocket = { width: inches(5.75), height: subtract(inches(4.375), inches(0.002)) };
    expect(gradePocket(pocket, thin(5.5, 4.25), DEFAULT_LIMITS).fit).toBe('easy');
  });

  it('a thick card needs its thickness more, by the girth round it: card + thickness in each dimension', () => {
    const pocket = { width: inches(7.25), height: inches(5.25) };
    const thick = { ...thin(7, 5), bulk: inches(1 / 4) };
    expect(gradePocket(pocket, thick, DEFAULT_LIMITS)).toMatchObject({
      clearance: { width: 0, height: 0 },
      fit: 'tight',
    });
    expect(gradePocket(pocket, { ...thick, bulk: add(inches(1 / 4), length(1)) }, DEFAULT_LIMITS).fit).toBe(
      "won't go",
    );
  });
});

describe('limits', () => {
  it('each grade begins at its limit, to the last 25 nm', () => {
    const { snug, easy, loose } = DEFAULT_LIMITS;
    const grades = [-1, 0, snug - 1, snug, easy - 1, easy, loose, loose + 1].map((clearance) =>
      gradeClearance(length(clearance), DEFAULT_LIMITS),
    );
    expect(grades).toEqual(["won't go", 'tight', 'tight', 'snug', 'snug', 'easy', 'easy', 'loose']);
    expect(FITS.filter(goesFreely)).toEqual(['snug', 'easy', 'loose']);
  });

  it('the clearance aimed at, and the least, earn the fit wanted, whatever the limits', () => {
    const others: FitLimits[] = [
      DEFAULT_LIMITS,
      { snug: inches(0), easy: inches(1 / 4), loose: inches(1) },
      { snug: inches(1 / 64), easy: inches(1 / 32), loose: inches(1 / 8) },
    ];
    for (const limits of others) {
      for (const fit of WANTED_FITS) {
        expect(gradeClearance(idealClearance(fit, limits), limits)).toBe(fit);
        expect(gradeClearance(leastClearance(fit, limits), limits)).toBe(fit);
        expect(gradeClearance(length(leastClearance(fit, limits) - 1), limits)).not.toBe(fit);
      }
    }
    expect(add(idealClearance('easy', DEFAULT_LIMITS), THIN_BULK)).toBe(inches(1 / 4));
  });
});

/** Common practice, no source. */
describe('common practice', () => {
  interface Agreement {
    readonly name: string;
    readonly inset: readonly [number, number];
    readonly bulk: readonly [number, number];
    readonly holds: (inset: number, bulk: number) => boolean;
  }

  function fitsOf(
    card: readonly [number, number],
    square: number,
    start: number,
    inset: number,
    bulk: number,
  ) {
    const exact = (value: number) => roundLength(value * PER_INCH, 'nearest');
    return tryMeasures({
      card: { width: exact(card[0]), height: exact(card[1]), bulk: exact(bulk) },
      notcher: tool(1 / 8, { inset: exact(inset) }),
      square: exact(square),
      start: exact(start),
    });
  }

  const agreements: Agreement[] = [
    {
      name: 'square 5¼ with start 3 takes a 2½ × 3½ card closely',
      inset: [0.397, 0.46],
      bulk: [0, 0.063],
      holds: (inset, bulk) => ['tight', 'snug'].includes(fitsOf([2.5, 3.5], 5.25, 3, inset, bulk).fit),
    },
    {
      name: 'square 8⅛ with start 3¾ is tight along a 5½ × 4¼ card’s length',
      inset: [0.42, 0.463],
      bulk: [0.006, 0.068],
      holds: (inset, bulk) => fitsOf([5.5, 4.25], 8.125, 3.75, inset, bulk).fits.width === 'tight',
    },
    {
      name: '… and roomy the other way',
      inset: [0, 0.457],
      bulk: [0, 0.059],
      holds: (inset, bulk) => fitsOf([5.5, 4.25], 8.125, 3.75, inset, bulk).fits.height === 'loose',
    },
    {
      name: 'start 3⅝ on the same square fits well',
      inset: [0.333, 0.525],
      bulk: [0, 0.155],
      holds: (inset, bulk) => fitsOf([5.5, 4.25], 8.125, 3.625, inset, bulk).fit === 'easy',
    },
    {
      name: 'square 8 with start 2⅞ takes a 6¼ × 3¼ card easily',
      inset: [0.419, 0.491],
      bulk: [0.005, 0.107],
      holds: (inset, bulk) => fitsOf([6.25, 3.25], 8, 2.875, inset, bulk).fit === 'easy',
    },
  ];

  const STEP = 0.001;
  const [inset, bulk] = [DEFAULT_INSET / PER_INCH, THIN_BULK / PER_INCH];

  it.each(agreements)('$name, over its range of inset and of bulk and no further', ({ holds, ...range }) => {
    const agreed = (from: number, to: number, test: (value: number) => boolean) => {
      for (let value = from; value <= to + 1e-9; value += STEP)
        expect([value, test(value)]).toEqual([value, true]);
      if (from > 0) expect(test(from - STEP)).toBe(false);
      expect(test(to + STEP)).toBe(false);
    };
    expect(holds(inset, bulk)).toBe(true);
    agreed(...range.inset, (value) => holds(value, bulk));
    agreed(...range.bulk, (value) => holds(inset, value));
  });

  it('the defaults lie well inside the range in which all of them hold', () => {
    const ends = { inset: [0.42, 0.457], bulk: [0.006, 0.059] };
    expect(Math.max(...agreements.map((one) => one.inset[0]))).toBe(ends.inset[0]);
    expect(Math.min(...agreements.map((one) => one.inset[1]))).toBe(ends.inset[1]);
    expect(Math.max(...agreements.map((one) => one.bulk[0]))).toBe(ends.bulk[0]);
    expect(Math.min(...agreements.map((one) => one.bulk[1]))).toBe(ends.bulk[1]);
    expect(inset).toBeGreaterThan(0.43);
    expect(inset).toBeLessThan(0.447);
  });
});
