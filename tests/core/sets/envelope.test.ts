/** Lines envelopes of every fold and weighs their paper, against the flap's own corners and the blank's own size. */
import { describe, expect, test } from 'vitest';
import { DEFAULT_LIMITS } from '#core/envelope/fit.ts';
import { FOLDS } from '#core/envelope/folds.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import { tryMeasures } from '#core/envelope/recipes.ts';
import { linerOf, paperOf } from '#core/sets/envelope.ts';
import { inches, toInches } from '#shared/length.ts';
import { thin, tool } from '#tests/core/envelope/cast.ts';
import { sound } from '#tests/support/checked.ts';

const RECIPES: Recipe[] = Object.values(FOLDS).flatMap((fold) =>
  [thin(7, 5), thin(5, 7)].flatMap((card) =>
    fold.recipes({ card, notcher: tool(), want: {}, limits: DEFAULT_LIMITS }),
  ),
);

describe('a liner', () => {
  const wish = { glue: inches(0.5), clear: inches(1 / 16), copies: 1 };

  // Published how-to guides: ¼ in narrower than the envelope, to just below the gum.
  test('of any fold is ¼ in narrower than its opening and reaches from the bottom fold to below the glue', () => {
    for (const recipe of RECIPES) {
      const part = sound(linerOf(recipe, wish));
      const flap = recipe.flaps.find(({ letter }) => letter === 'D')!;
      const [mouth, down] =
        flap.side === 'top'
          ? [recipe.pocket.width, recipe.pocket.height]
          : [recipe.pocket.height, recipe.pocket.width];
      const kept = toInches(mouth) - toInches(part.width);
      expect(kept).toBeGreaterThan(0.25 - 1e-6);
      expect(kept).toBeLessThan(0.25 + 1 / 64);
      const short = toInches(down) - toInches(part.height) + toInches(part.scores[0]!.at);
      expect(short).toBeGreaterThan(-1e-6);
      expect(short).toBeLessThan(1 / 64);
      expect(part.height).toBeLessThanOrEqual(down + flap.reach - inches(0.5));
      expect(part.height).toBeGreaterThan(down);
    }
  });

  // Geometry: glue of ½ in along both edges of a right-angled tip reaches ½·√2 down from it.
  test('of a pointed diagonal flap stops √2 times the glue and its gap below the tip', () => {
    const recipe = tryMeasures({
      card: thin(7, 5),
      notcher: tool(1 / 16, { inset: inches(0) }),
      square: inches(9),
      start: inches(4),
    });
    const flap = recipe.flaps.find(({ letter }) => letter === 'D')!;
    const part = sound(linerOf(recipe, wish));
    const above = toInches(part.scores[0]!.at);
    expect(flap.finish.shape).toBe('pointed');
    const tip = toInches(flap.depth) - (0.5 + 1 / 16) * Math.SQRT2;
    expect(above).toBeLessThanOrEqual(tip);
    expect(above).toBeGreaterThan(tip - 1 / 64);
  });
});

describe('the paper', () => {
  test('of a diagonal fold is its square less what is trimmed and notched', () => {
    const recipe = tryMeasures({
      card: thin(7, 5),
      notcher: tool(1 / 16, { inset: inches(0) }),
      square: inches(9),
      start: inches(4),
    });
    expect(paperOf(recipe).area / (inches(9) * inches(9))).toBeCloseTo(1, 6);
    // Plane geometry: the start and what is left of the square are the legs' hypotenuses turned by 45°.
    const { width, height } = paperOf(recipe).size;
    expect(toInches(width)).toBeCloseTo(5 * Math.SQRT2, 5);
    expect(toInches(height)).toBeCloseTo(4 * Math.SQRT2, 5);
    // Without an inset side flaps and long flaps meet along 45°, and only the two long ones lie on each other.
    expect(paperOf(recipe).leaves).toBe(3);
  });

  test('lies at least twice and at most five times on itself', () => {
    for (const recipe of RECIPES) {
      const { leaves, area } = paperOf(recipe);
      expect(leaves).toBeGreaterThanOrEqual(3);
      expect(leaves).toBeLessThanOrEqual(5);
      expect(area).toBeGreaterThan(2 * recipe.pocket.width * recipe.pocket.height);
    }
  });
});
