/** Smaller envelopes for the same card, to fall back on where no paper is large enough. */
import { expect, test } from 'vitest';
import { solveEnvelope } from '#core/envelope/recipes.ts';
import { smallerEnvelopes } from '#core/envelope/smaller.ts';
import { areaOf } from '#shared/size.ts';
import { CARD, RECIPE } from '#tests/support/cast.ts';

const LOOSE = solveEnvelope({ card: CARD, notcher: RECIPE.notcher, want: { fit: 'loose' } })[0]!;

test('a loose one leaves easy ones, which hold the same card in less paper, of the same fold', () => {
  const smaller = smallerEnvelopes(LOOSE, 'easy');
  expect(smaller.length).toBeGreaterThan(0);
  for (const one of smaller) {
    expect(one).toMatchObject({ fit: 'easy', fold: LOOSE.fold, card: CARD });
    expect(areaOf(one.blank)).toBeLessThan(areaOf(LOOSE.blank));
  }
});

test('nothing is smaller than the smallest', () => {
  const least = [...smallerEnvelopes(LOOSE, 'easy')].sort((a, b) => areaOf(a.blank) - areaOf(b.blank))[0]!;
  expect(smallerEnvelopes(least, 'easy')).toEqual([]);
});
