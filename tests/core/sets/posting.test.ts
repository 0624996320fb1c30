/** What is reckoned of an envelope for the post, against sums done by hand and luminance as WCAG 2.2 defines it (where dark begins is ours). */
import { describe, expect, test } from 'vitest';
import { frontOf, reckonPosted } from '#core/sets/posting.ts';
import { length } from '#shared/length.ts';
import { toGrams } from '#shared/mass.ts';
import { RECIPE } from '#tests/support/cast.ts';

const swatch = { motif: 'plain', ground: '#f4efe6', inks: ['#3f6b4f'] } as const;

describe('reckonPosted', () => {
  // By the basic sheet of 20 × 26 in, 80 lb cover is 216.33 g/m². Three leaves of 5⅞ × 3 in and a 7½ in square of 120 g/m²
  // less its cuts.
  test('weighs card and paper, and no more than the uncut square', () => {
    const { posted } = reckonPosted(RECIPE);
    const card = 3 * 5.875 * 3 * 0.0254 ** 2 * 216.33;
    const uncut = 7.5 ** 2 * 0.0254 ** 2 * 120;
    expect(toGrams(posted.mass)).toBeLessThan(card + uncut);
    expect(toGrams(posted.mass)).toBeGreaterThan(card + uncut * 0.8);
  });

  test('is at least as thick as the card', () => {
    expect(reckonPosted(RECIPE).posted.thickness).toBeGreaterThan(RECIPE.card.bulk);
    const flat = { ...RECIPE, card: { ...RECIPE.card, bulk: length(0) } };
    expect(reckonPosted(flat).posted.thickness).toBeGreaterThan(0);
  });
});

describe('frontOf', () => {
  test('tells light from dark by luminance, and pattern from either', () => {
    expect(frontOf(swatch)).toBe('light');
    expect(frontOf({ ...swatch, ground: '#2f4a63' })).toBe('dark');
    expect(frontOf({ ...swatch, ground: '#ffffff' })).toBe('light');
    expect(frontOf({ ...swatch, ground: '#000000' })).toBe('dark');
    expect(frontOf({ ...swatch, motif: 'dots' })).toBe('patterned');
  });
});
