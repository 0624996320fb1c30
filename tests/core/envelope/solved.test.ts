/** The solver's memory: the very same answer for the same question, the solver's own for every other. */
import { expect, test } from 'vitest';
import { solveEnvelope } from '#core/envelope/recipes.ts';
import { solvedEnvelope } from '#core/envelope/solved.ts';
import { inches } from '#shared/length.ts';
import { CARD, RECIPE } from '#tests/support/cast.ts';

const [card, { notcher: NOTCHER }] = [CARD, RECIPE];

test('answers as the solver does, once for each question', () => {
  const asked = { card, notcher: NOTCHER };
  const first = solvedEnvelope(asked);
  expect(first).toEqual(solveEnvelope(asked));
  expect(solvedEnvelope({ card: { ...card }, notcher: { ...NOTCHER } })).toBe(first);
});

test('tells apart whatever the answer rests on', () => {
  const others = [
    { card: { ...card, bulk: inches(1 / 8) }, notcher: NOTCHER },
    { card, notcher: { ...NOTCHER, inset: inches(1 / 2) } },
    { card, notcher: NOTCHER, want: { fit: 'snug' as const } },
    { card, notcher: NOTCHER, folds: ['side-seam' as const] },
  ];
  for (const asked of others) expect(solvedEnvelope(asked)).toEqual(solveEnvelope(asked));
});
