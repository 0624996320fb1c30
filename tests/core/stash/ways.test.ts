/** Two blanks of one envelope from one design, each from a piece of its own. */
import { expect, test } from 'vitest';
import type { Design, Piece } from '#core/stash/stash.ts';
import { withMate } from '#core/stash/ways.ts';
import { FERN, HARE, MEADOW, scrap } from '#tests/support/cast.ts';

const design = (id: number, new_: typeof FERN): Design => ({
  ...new_,
  id,
  pad: { ...MEADOW, id: 1 },
  sheets: 1,
});
const [fern, hare] = [design(1, FERN), design(2, HARE)];

const offcut = (of: Design, id: number, count = 1): Piece => {
  const { note, place, ...rest } = scrap(6, 6);
  return {
    ...rest,
    design: of,
    count,
    offcut: { ...rest, id, code: `C${id}`, note, place, count, design: of },
  };
};

test('the first that has another of its design beside it is taken with that one', () => {
  const [lone, first, mate] = [offcut(hare, 1), offcut(fern, 2), offcut(fern, 3)];
  const mates = (of: Design): Piece[] => (of === fern ? [first, mate] : [lone]);
  expect(withMate([lone, first], mates)).toEqual([first, mate]);
});

test('a piece of which there are two is its own mate; a single one is none', () => {
  const two = offcut(fern, 4, 2);
  expect(withMate([two], () => [two])).toEqual([two, two]);
  expect(withMate([offcut(fern, 5)], () => [offcut(fern, 5)])).toEqual([]);
});
