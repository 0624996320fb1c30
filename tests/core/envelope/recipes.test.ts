/** The solver's answers: common-practice recipes, wishes and limits kept, and laws over arbitrary cards and tools. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEFAULT_LIMITS, goesFreely, gradeClearance, gradePocket } from '#core/envelope/fit.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import { solveEnvelope } from '#core/envelope/recipes.ts';
import { describeWarning } from '#core/envelope/warnings.ts';
import { inches, type Length, length, toInches } from '#shared/length.ts';
import { WANTED_FITS, worseFit } from '#shared/outcome.ts';
import { longer } from '#shared/size.ts';
import { anyCard, anyNotcher, SEED, thin, tool } from './cast.ts';

const measuresOf = ({ blank, starts }: Recipe): string => `${toInches(blank.width)} / ${toInches(starts[0])}`;
const diagonals = (recipes: Recipe[]): Recipe[] => recipes.filter(({ fold }) => fold === 'diagonal');
const kinds = ({ warnings }: Recipe): string[] => warnings.map(({ kind }) => kind);

/** Common practice, no source: a tool with an inset near 7/16 in, a thin card. */
describe('common practice', () => {
  it.each([1 / 8, 1 / 16, 1 / 32])(
    '6¼ × 3¼ in: square 8, start 2⅞ is among the first, graduation %f',
    (graduation) => {
      const recipes = diagonals(solveEnvelope({ card: thin(6.25, 3.25), notcher: tool(graduation) }));
      const place = recipes.map(measuresOf).indexOf('8 / 2.875');
      expect(place).toBeGreaterThanOrEqual(0);
      expect(place).toBeLessThan(graduation === 1 / 8 ? 3 : 5);
      expect(recipes[place]!.fit).toBe('easy');
    },
  );

  it('5½ × 4¼ in: start 3⅝ on square 8⅛ is offered, 3¾ is not', () => {
    const offered = solveEnvelope({ card: thin(5.5, 4.25), notcher: tool(1 / 8) }).map(measuresOf);
    expect(offered).toContain('8.125 / 3.625');
    expect(offered).not.toContain('8.125 / 3.75');
  });
});

// Plane geometry: a long-side flap overruns the opposite fold by w/2 + m√2 − h, here by 0.398 in.
it('both long flaps of a long card overrun and are trimmed alike, to a mark short of the fold', () => {
  const [best] = diagonals(solveEnvelope({ card: thin(5.875, 3), notcher: tool(1 / 8) }));
  const { flaps, pocket } = best!;
  const [a, b, c, d] = flaps;
  expect([a!.side, b!.side, c!.side, d!.side]).toEqual(['left', 'right', 'bottom', 'top']);
  const overrun = toInches(pocket.width) / 2 + (7 / 16) * Math.SQRT2 - toInches(pocket.height);
  for (const flap of [c!, d!]) {
    expect(toInches(flap.overrun)).toBeCloseTo(overrun, 4);
    expect(flap.finish).toEqual({ shape: 'straight', depth: inches(3.125) });
  }
  expect([a!.overrun, b!.overrun]).toEqual([0, 0]);
});

describe('wishes', () => {
  const card = thin(5, 7);

  it.each(WANTED_FITS)('the fit wanted comes first: %s', (fit) => {
    const [best] = solveEnvelope({ card, notcher: tool(1 / 32), want: { fit } });
    expect(best!.fit).toBe(fit);
  });

  it('a fit is judged by the maker’s own limits when she has some', () => {
    const limits = { snug: inches(1 / 4), easy: inches(1 / 2), loose: inches(1) };
    const [best] = solveEnvelope({ card, notcher: tool(), limits });
    expect(best!.fit).toBe('easy');
    expect(best!.clearance.width).toBeGreaterThanOrEqual(inches(1 / 2));
  });

  it('has to go into a box 4¼ in high: the snuggest that goes in freely is first, all within', () => {
    const want = { largestOuter: { height: inches(4.25) } };
    const recipes = solveEnvelope({ card: thin(2.75, 4), notcher: tool(), want });
    const room = recipes.map(({ clearance }) => clearance.width + clearance.height);
    expect(goesFreely(recipes[0]!.fit)).toBe(true);
    expect(diagonals(recipes).map(({ clearance }) => clearance.width + clearance.height)).toEqual(
      diagonals(recipes)
        .map(({ clearance }) => clearance.width + clearance.height)
        .toSorted((a, b) => a - b),
    );
    expect(room.length).toBeGreaterThan(1);
    for (const { pocket } of recipes) expect(pocket.height).toBeLessThanOrEqual(inches(4.25));
    expect(recipes.flatMap(kinds)).not.toContain('larger than the limit');
  });

  it('a limit given both ways may be met turned, one given alone may not', () => {
    const within = { width: inches(4.5), height: inches(3.25) };
    const both = solveEnvelope({ card: thin(2.75, 4), notcher: tool(), want: { largestOuter: within } });
    expect(both[0]!.pocket.height).toBeGreaterThan(within.height);
    expect(kinds(both[0]!)).not.toContain('larger than the limit');
    const [alone] = solveEnvelope({
      card: thin(2.75, 4),
      notcher: tool(),
      want: { largestOuter: { height: inches(3) } },
    });
    expect(kinds(alone!)).toContain('larger than the limit');
  });

  it('a limit no envelope meets brings the nearest, saying by how much', () => {
    const want = { largestOuter: { height: inches(3.9) } };
    const [nearest] = diagonals(solveEnvelope({ card: thin(2.75, 4), notcher: tool(), want }));
    const warning = nearest!.warnings.find(({ kind }) => kind === 'larger than the limit')!;
    expect(warning.amount).toBe(nearest!.pocket.height - inches(3.9));
    expect(describeWarning(warning, { unit: 'in', step: 32 })).toBe(
      'The envelope is larger than you allow. It is ≈¼″ over.',
    );
  });

  it('a print that must lie straight is not promised by a diagonal fold', () => {
    const solve = (front: 'along' | 'diagonal') =>
      diagonals(solveEnvelope({ card, notcher: tool(), want: { front } }))[0]!;
    expect(kinds(solve('along'))).toContain('print lies otherwise');
    expect(kinds(solve('diagonal'))).not.toContain('print lies otherwise');
  });
});

describe('what the tool cannot take', () => {
  it('comes back with a warning, best first', () => {
    const recipes = diagonals(solveEnvelope({ card: thin(14, 10), notcher: tool() }));
    expect(recipes.length).toBeGreaterThan(0);
    expect(recipes[0]!.fit).toBe('easy');
    for (const { blank, warnings } of recipes) {
      const warning = warnings.find(({ kind }) => kind === 'larger than the tool');
      expect(warning?.amount).toBe(blank.width - inches(12));
    }
  });

  it('is left aside while the tool’s largest square still does', () => {
    // Aimed at ¼ in, this card needs 12.1 in of square; 12 in still leaves 0.3 in to share.
    const [best] = diagonals(solveEnvelope({ card: thin(7.75, 7.625), notcher: tool(1 / 16) }));
    expect(best!.blank.width).toBe(inches(12));
    expect(goesFreely(best!.fit)).toBe(true);
    expect(kinds(best!)).not.toContain('larger than the tool');
  });
});

describe('properties', () => {
  const anyWant = fc.record(
    {
      fit: fc.constantFrom(...WANTED_FITS),
      largestOuter: fc.record(
        {
          width: fc.integer({ min: 1, max: inches(12) }).map(length),
          height: fc.integer({ min: 1, max: inches(12) }).map(length),
        },
        { requiredKeys: [] },
      ),
    },
    { requiredKeys: [] },
  );

  it('every recipe adds up, lies on the graduation and says honestly how it fits', () => {
    fc.assert(
      fc.property(anyCard, anyNotcher, anyWant, (card, notcher, want) => {
        const recipes = diagonals(solveEnvelope({ card, notcher, want }));
        expect(recipes.length).toBeGreaterThan(0);
        expect(recipes.length).toBeLessThanOrEqual(12);
        expect(new Set(recipes.map(({ blank, starts }) => `${blank.width} ${starts[0]}`)).size).toBe(
          recipes.length,
        );
        for (const recipe of recipes) expectHonest(recipe);
      }),
      SEED,
    );
  });

  function expectHonest(recipe: Recipe): void {
    const { card, notcher, blank, starts, pocket, clearance } = recipe;
    const [S, p, m] = [blank.width, starts[0] + notcher.zeroOffset, notcher.inset];
    expect(blank.height).toBe(S);
    expect([S % notcher.graduation, starts[0] % notcher.graduation]).toEqual([0, 0]);
    expect(starts[0] + starts[1] + 2 * notcher.zeroOffset).toBe(S);
    // The promise is rounded down: never more than the geometry gives, and less by under 25 nm.
    expect((S - p - m) * Math.SQRT2 - pocket.width).toBeGreaterThanOrEqual(0);
    expect((S - p - m) * Math.SQRT2 - pocket.width).toBeLessThan(1);
    expect((p - m) * Math.SQRT2 - pocket.height).toBeGreaterThanOrEqual(0);
    expect((p - m) * Math.SQRT2 - pocket.height).toBeLessThan(1);
    expect(clearance.width + card.width + card.bulk).toBe(pocket.width);
    expect(clearance.height + card.height + card.bulk).toBe(pocket.height);
    expect(recipe.fit).toBe(worseFit(recipe.fits.width, recipe.fits.height));
    expect(recipe.cardTurned).toBe(false);
    expect(kinds(recipe).includes('larger than the tool')).toBe(longer(blank) > notcher.largestSheet);
    expect(kinds(recipe).includes("won't go")).toBe(recipe.fit === "won't go");
    expectSlips(recipe);
  }

  function expectSlips({ card, blank, starts, notcher, slips, survives }: Recipe): void {
    const pocketAt = (S: number, start: number) => ({
      width: Math.floor((S - start - notcher.zeroOffset - notcher.inset) * Math.SQRT2) as Length,
      height: Math.floor((start + notcher.zeroOffset - notcher.inset) * Math.SQRT2) as Length,
    });
    expect(slips.map(({ off, by }) => [off, toInches(by)])).toEqual([
      ['square', -1 / 32],
      ['square', 1 / 32],
      ['start', -1 / 16],
      ['start', 1 / 16],
    ]);
    for (const { off, by, pocket, fit } of slips) {
      const expected = pocketAt(
        blank.width + (off === 'square' ? by : 0),
        starts[0] + (off === 'start' ? by : 0),
      );
      expect(pocket).toEqual(expected);
      expect(fit).toBe(gradePocket(expected, card, DEFAULT_LIMITS).fit);
    }
    for (const off of ['square', 'start'] as const) {
      expect(survives[off]).toBe(slips.every((slip) => slip.off !== off || goesFreely(slip.fit)));
    }
  }

  it.each(['snug', 'easy'] as const)(
    'no %s envelope that a plain search of the whole tool finds is missed',
    (fit) => {
      fc.assert(
        fc.property(anyCard, anyNotcher, (card, notcher) => {
          const [best] = solveEnvelope({ card, notcher, want: { fit }, folds: ['diagonal'] });
          if (best!.fit === fit && longer(best!.blank) <= notcher.largestSheet) return;
          const { graduation: g, zeroOffset, inset } = notcher;
          const room = (length: number, side: number) => Math.floor(length * Math.SQRT2) - side - card.bulk;
          const least = (card.width + card.height) / Math.SQRT2 + 2 * inset;
          const most = Math.min(notcher.largestSheet, least + inches(1));
          const missed: object[] = [];
          for (let square = Math.ceil(least / g) * g; square <= most; square += g) {
            for (let start = 0; start < square; start += g) {
              const p = start + zeroOffset;
              const [width, height] = [room(square - p - inset, card.width), room(p - inset, card.height)];
              if (width < 0 || height < 0) continue;
              const grades = [width, height].map((one) => gradeClearance(length(one), DEFAULT_LIMITS));
              if (worseFit(grades[0]!, grades[1]!) === fit) missed.push({ square, start });
            }
          }
          expect(missed).toEqual([]);
        }),
        SEED,
      );
    },
  );

  it('a card given the other way round gets the same envelopes, turned', () => {
    fc.assert(
      fc.property(anyCard, (card) => {
        const turnedCard = { width: card.height, height: card.width, bulk: card.bulk };
        const [one, other] = [card, turnedCard].map((given) =>
          solveEnvelope({ card: given, notcher: tool(), folds: ['diagonal'] }),
        );
        expect(other![0]!.blank).toEqual(one![0]!.blank);
        expect(other!.flatMap(kinds)).not.toContain('turn the card');
      }),
      SEED,
    );
  });

  it('gives the same answer every time', () => {
    const asked = { card: thin(5.875, 3), notcher: tool() };
    expect(solveEnvelope(asked)).toEqual(solveEnvelope(asked));
    expect(JSON.parse(JSON.stringify(solveEnvelope(asked)))).toEqual(solveEnvelope(asked));
  });
});
