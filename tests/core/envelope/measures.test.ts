/** Any chart's square and start: the pocket they really give, the nearest better start, and what is refused at the door. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkMeasures } from '#core/envelope/door.ts';
import type { Card, Notcher } from '#core/envelope/recipe.ts';
import { solveEnvelope, tryMeasures } from '#core/envelope/recipes.ts';
import { inches, type Length, length, toInches, type Units } from '#shared/length.ts';
import { FITS, WANTED_FITS, worseFit } from '#shared/outcome.ts';
import { anyCard, anyMeasures, SEED, thin, tool } from './cast.ts';

const THIRTY_SECONDS: Units = { unit: 'in', step: 32 };

const tried = (card: Card, square: number, start: number, notcher = tool(1 / 8)) =>
  tryMeasures({ card, notcher, square: inches(square), start: inches(start) });

describe('a start an eighth too long', () => {
  // Plane geometry, an inset of 7/16 in: w = (S − p − m)√2 and h = (p − m)√2, each less the card and its bulk of 1/32.
  it('is tight along the card and loose across it, and the start before is better', () => {
    const wrong = tried(thin(5.5, 3.5), 7.625, 3.25);
    const room = (across: number, card: number) => across * Math.SQRT2 - card - 1 / 32;
    expect(toInches(wrong.clearance.width)).toBeCloseTo(room(7.625 - 3.25 - 7 / 16, 5.5), 5);
    expect(toInches(wrong.clearance.height)).toBeCloseTo(room(3.25 - 7 / 16, 3.5), 5);
    expect(wrong.fits).toEqual({ width: 'tight', height: 'loose' });
    expect(wrong.fit).toBe('tight');
    expect(toInches(wrong.better!.starts[0])).toBe(3.125);
    expect(wrong.better!.fit).toBe('easy');
    expect(wrong.better!.blank).toEqual(wrong.blank);
  });
});

describe('a portrait card', () => {
  it('gets the start for its height, the longer side, without being told to turn', () => {
    // 3 × 5⅞ in: the start's twin of the landscape card's 2¾ on the same square.
    const recipe = tried(thin(3, 5.875), 7.5, 4.75);
    expect(recipe).toMatchObject({ cardTurned: false, fit: 'easy', warnings: [] });
    expect(recipe.pocket.height).toBeGreaterThan(recipe.pocket.width);
    expect(recipe.flaps.map(({ side }) => side)).toEqual(['top', 'bottom', 'left', 'right']);
    const landscape = tried(thin(5.875, 3), 7.5, 2.75);
    expect(recipe.flaps.map(({ depth, reach }) => [depth, reach])).toEqual(
      landscape.flaps.map(({ depth, reach }) => [depth, reach]),
    );
    expect(recipe.seam.area).toBeCloseTo(landscape.seam.area, 9);
    expect(recipe.seam.glueArea).toBeCloseTo(landscape.seam.glueArea, 9);
  });

  it('that only goes in after a quarter turn is graded that way round, with a warning', () => {
    const recipe = tried(thin(3, 5.875), 7.5, 2.75);
    expect(recipe).toMatchObject({ cardTurned: true, fit: 'easy' });
    expect(recipe.warnings).toEqual([
      { kind: 'turn the card', message: 'The card goes in only after a quarter turn.' },
    ]);
    expect(recipe.clearance).toEqual(tried(thin(5.875, 3), 7.5, 2.75).clearance);
  });

  it('that goes in neither way is graded as it lies', () => {
    const recipe = tried(thin(9, 4), 7.5, 2.75);
    expect(recipe).toMatchObject({ cardTurned: false, fit: "won't go" });
    const lacking = Math.min(recipe.clearance.width, recipe.clearance.height);
    expect(recipe.warnings[0]).toMatchObject({ kind: "won't go", amount: -lacking });
  });
});

describe('the nearest better start', () => {
  it('fits as well as the square can, is nearest, and better than the one given', () => {
    fc.assert(
      fc.property(anyCard, anyMeasures, (card, { notcher, square, start }) => {
        const coarse = { ...notcher, graduation: inches(1 / 8) };
        const recipe = tryMeasures({ card, notcher: coarse, square, start });
        const others = [];
        for (let other = 0; other < square; other += coarse.graduation) {
          const [p, m] = [other + notcher.zeroOffset, notcher.inset];
          if (p <= m + 1 || p >= square - m - 1) continue;
          others.push(tryMeasures({ card, notcher: coarse, square, start: length(other) }));
        }
        const best = others.reduce(
          (fit, other) => (worseFit(fit, other.fit) === fit ? other.fit : fit),
          recipe.fit,
        );
        expect(recipe.better?.fit ?? recipe.fit).toBe(best);
        if (!recipe.better) return;
        expect(recipe.better.fit).not.toBe(recipe.fit);
        const away = Math.abs(recipe.better.starts[0] - start);
        for (const other of others.filter(({ fit }) => fit === best)) {
          expect(Math.abs(other.starts[0] - start)).toBeGreaterThanOrEqual(away);
        }
      }),
      { ...SEED, numRuns: 40 },
    );
  });

  it('agrees with the solver on measures the solver offers', () => {
    for (const recipe of solveEnvelope({ card: thin(5.875, 3), notcher: tool() })) {
      if (recipe.fold !== 'diagonal') continue;
      const [start] = recipe.starts;
      const { better, ...again } = tryMeasures({
        card: recipe.card,
        notcher: tool(),
        square: recipe.blank.width,
        start,
      });
      expect(again).toEqual(recipe);
      if (recipe.fit === 'easy') expect(better).toBeUndefined();
    }
  });
});

describe('at the door', () => {
  const card = thin(5, 4);
  const measures = { card, notcher: tool(), square: inches(8), start: inches(3.5) };

  const changed: [string, Record<string, unknown>][] = [
    ['invalid card width', { card: { ...card, width: 0 } }],
    ['invalid card width', { card: { ...card, width: -inches(1) } }],
    ['invalid card width', { card: { ...card, width: 1.5 } }],
    ['invalid card height', { card: { ...card, height: Number.NaN } }],
    ['invalid card height', { card: { ...card, height: 2 ** 60 } }],
    ['invalid card bulk', { card: { ...card, bulk: -1 } }],
    ['invalid inset', { notcher: { ...tool(), inset: -1 } }],
    ['invalid zero offset', { notcher: { ...tool(), zeroOffset: inches(3) } }],
    ['invalid graduation', { notcher: { ...tool(), graduation: 0 } }],
    ['invalid largest sheet', { notcher: { ...tool(), largestSheet: Number.POSITIVE_INFINITY } }],
  ];

  it.each(changed)('throws %s', (message, change) => {
    expect(() => tryMeasures({ ...measures, ...change } as typeof measures)).toThrow(message);
    expect(() => solveEnvelope({ ...measures, ...change } as typeof measures)).toThrow(message);
  });

  it('throws where no pocket is left, and where the start lies outside the square', () => {
    for (const start of [0, inches(7 / 16), inches(8 - 7 / 16), inches(8), inches(9), -1, 3.5]) {
      expect(() => tryMeasures({ ...measures, start: start as Length })).toThrow('invalid start');
    }
    expect(() => tryMeasures({ ...measures, square: length(0) })).toThrow('invalid square');
    for (const start of [inches(7 / 16) + 1, inches(8 - 7 / 16) - 1]) {
      expect(tryMeasures({ ...measures, start: length(start) }).fit).toBe("won't go");
    }
  });

  it('throws on wishes and limits that are none', () => {
    const asked = { card, notcher: tool() };
    expect(() => solveEnvelope({ ...asked, want: { fit: 'tight' as 'easy' } })).toThrow(
      'invalid wanted fit: tight',
    );
    expect(() => solveEnvelope({ ...asked, want: { front: 'up' as 'along' } })).toThrow('invalid front: up');
    expect(() => solveEnvelope({ ...asked, want: { largestOuter: { width: length(0) } } })).toThrow(
      'invalid largest outer',
    );
    const limits = { snug: inches(1 / 8), easy: inches(1 / 16), loose: inches(1) };
    expect(() => solveEnvelope({ ...asked, limits })).toThrow('invalid limit of easy');
  });

  it('answers typed measures beside their fields, in the reader’s units', () => {
    expect(checkMeasures(measures, THIRTY_SECONDS)).toEqual({ ok: true, value: measures });
    expect(checkMeasures({ ...measures, start: inches(9) }, THIRTY_SECONDS)).toEqual({
      ok: false,
      problems: [
        { field: 'start', message: 'On this square the start has to lie between ⁷⁄₁₆″ and 7⁹⁄₁₆″.' },
      ],
    });
    const bad = {
      card: { width: length(0), height: length(-1), bulk: length(-1) },
      square: inches(1 / 2),
      start: inches(1),
    };
    const found = checkMeasures({ ...measures, ...bad }, THIRTY_SECONDS);
    expect(found.ok ? [] : found.problems.map(({ field }) => field)).toEqual([
      'width',
      'height',
      'bulk',
      'square',
    ]);
  });

  it('lets through exactly what does not throw', () => {
    const anyStart = fc.integer({ min: -inches(1), max: inches(10) });
    fc.assert(
      fc.property(anyStart, fc.integer({ min: 0, max: inches(9) }), (start, square) => {
        const given = { ...measures, square: length(square), start: length(start) };
        const throws = (() => {
          try {
            return tryMeasures(given) === undefined;
          } catch {
            return true;
          }
        })();
        expect(checkMeasures(given, THIRTY_SECONDS).ok).toBe(!throws);
      }),
      SEED,
    );
  });

  it('takes plain integers, however small or large the envelope', () => {
    const notcher: Notcher = {
      ...tool(),
      inset: length(0),
      graduation: length(1),
      largestSheet: inches(300),
    };
    for (const size of [40_000, inches(200)]) {
      const [best] = solveEnvelope({
        card: { width: length(size), height: length(size), bulk: length(0) },
        notcher,
      });
      expect(FITS).toContain(best!.fit);
      expect(WANTED_FITS).toContain(best!.fit);
    }
  });
});
