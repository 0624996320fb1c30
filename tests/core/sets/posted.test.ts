/** Takes a layered card and its envelope to the post office's counter, against sums done by hand. */
import { expect, test } from 'vitest';
import { describeLayers, type Layer } from '#core/paper/layers.ts';
import { classify } from '#core/post/classify.ts';
import { type ToPost, toPost } from '#core/sets/posted.ts';
import { inches, millimetres, toInches } from '#shared/length.ts';
import { toGrams } from '#shared/mass.ts';
import { rect } from '#tests/support/checked.ts';

const cover = { unit: 'lb', amount: 80, grade: 'cover' } as const;
const text = { unit: 'lb', amount: 80, grade: 'text' } as const;

const base: Layer = {
  name: 'Base',
  size: rect(10, 7),
  paper: { weight: cover, measured: inches(0.012) },
  leaves: 2,
};

const toCounter = (layers: Layer[]): ToPost => ({
  card: describeLayers(layers),
  envelope: {
    size: rect(7.25, 5.25),
    area: inches(10) * inches(10),
    paper: { weight: text, measured: inches(0.006) },
    leaves: 3,
  },
  address: 'along',
  front: 'patterned',
});

test('thickness and mass are the card’s and the envelope’s together', () => {
  const posted = toPost(toCounter([base]));
  expect(posted.thickness).toBe(inches(0.042));
  // By the definition of basis weight: 216.33 g/m² on 70 in² and 118.41 g/m² on 100 in², at 0.00064516 m² to the in².
  expect(toGrams(posted.mass)).toBeCloseTo(216.33 * 0.0451612 + 118.41 * 0.064516, 2);
  expect(classify(posted, 'us')).toMatchObject({ sizeClass: 'letter', isLetter: true });
});

test('a bow on the card takes it from the machine, and too high a one from the letters', () => {
  const bowed = (by: number): ToPost => toCounter([base, { ...base, leaves: 1, raisedBy: millimetres(by) }]);
  expect(classify(toPost(bowed(3)), 'us').sizeClass).toBe('nonmachinable letter');
  expect(classify(toPost(bowed(8)), 'us').sizeClass).toBe('parcel');
});

test('what nobody measured counts with the most that it may be', () => {
  // Cover stock charts give 80 lb cover 9½ pt, a paper mill's example bulk 2.0 at the most: 216.33 × 2 µm. Two leaves of
  // it lie in three of the envelope's 0.006 in.
  const { thickness } = toPost(toCounter([{ ...base, paper: { weight: cover } }]));
  expect(toInches(thickness)).toBeGreaterThan(2 * 0.0095 + 0.018);
  expect(toInches(thickness)).toBeLessThan(2 * toInches(millimetres(0.43)) + 0.018);
});

test('a clasp and rigid contents are passed on', () => {
  expect(toPost({ ...toCounter([base]), clasp: true, rigid: true }).troubles).toEqual(['rigid', 'clasp']);
});
