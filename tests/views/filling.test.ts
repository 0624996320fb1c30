/** Things in ones and in many, as the sentence over a filled piece names them. */
import { expect, test } from 'vitest';
import { sayThing } from '#views/filling/words.ts';

test.each([
  ['envelope', 'Seed card', 'Seed card envelope', 'Seed card envelopes'],
  ['card', 'Gift tag', 'Gift tag', 'Gift tags'],
  ['card', 'Half letter', 'Half letter card', 'Half letter cards'],
  ['card', 'Thank-you notes', 'Thank-you notes', 'Thank-you notes'],
  ['part', 'Box', 'Box', 'Boxes'],
  ['part', 'Lily', 'Lily', 'Lilies'],
  ['part', 'Tray', 'Tray', 'Trays'],
  ['part', 'Gloss', 'Gloss', 'Glosses'],
  ['part', 'piece of 8 × 4″', 'piece of 8 × 4″', 'pieces of 8 × 4″'],
] as const)('%s: %s', (of, name, one, many) => {
  expect(sayThing({ of, name })).toBe(one);
  expect(sayThing({ of, name }, 3)).toBe(many);
});
