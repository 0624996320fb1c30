/** Checks that what is said to fit does, that one more would not, and that the way back leads to the same box. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitsInto, type HolderWish, holderFor } from '#core/sets/holder.ts';
import { inches, length } from '#shared/length.ts';
import { rect, refused, sound } from '#tests/support/checked.ts';

const wish: HolderWish = {
  holder: { ...rect(6, 5), depth: inches(2) },
  play: inches(0.25),
  clearance: inches(0.25),
  setBulk: inches(1 / 8),
};

describe('a holder', () => {
  test('takes an envelope its play smaller, a card its clearance smaller, and whole sets', () => {
    expect(sound(fitsInto(wish))).toEqual({ envelope: rect(5.75, 4.75), card: rect(5.5, 4.5), sets: 16 });
    expect(sound(fitsInto({ ...wish, setBulk: inches(0.126) })).sets).toBe(15);
  });

  test('the holder made for what fits into one is that one, but for a last set that did not go in', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 60_000, max: 2_000_000 }),
        fc.integer({ min: 0, max: 500_000 }),
        (bulk, play) => {
          const asked = { ...wish, setBulk: length(bulk), play: length(play) };
          const { envelope, sets } = sound(fitsInto(asked));
          const back = sound(holderFor({ envelope, setBulk: length(bulk), sets, play: length(play) }));
          expect([back.width, back.height]).toEqual([wish.holder.width, wish.holder.height]);
          expect(back.depth).toBeLessThanOrEqual(wish.holder.depth);
          expect(back.depth + bulk).toBeGreaterThan(wish.holder.depth);
        },
      ),
      { seed: 4 },
    );
  });

  test('smaller than any card is refused beside the side that is too small', () => {
    expect(refused(fitsInto({ ...wish, holder: { ...rect(6, 1.4), depth: inches(2) } }))).toEqual([
      'holder.height',
    ]);
    expect(refused(fitsInto({ ...wish, holder: { ...rect(1, 1), depth: inches(0.1) } }))).toEqual([
      'holder.width',
      'holder.height',
      'holder.depth',
    ]);
    expect(sound(fitsInto({ ...wish, holder: { ...rect(1.5, 1.5), depth: inches(0.125) } })).sets).toBe(1);
  });

  test('says all else that is wrong, beside its fields', () => {
    expect(
      refused(fitsInto({ ...wish, play: inches(-1), clearance: inches(-1), setBulk: inches(0) })),
    ).toEqual(['play', 'clearance', 'setBulk']);
    expect(
      refused(holderFor({ envelope: rect(0, 5), setBulk: inches(0), sets: 1.5, play: inches(-1) })),
    ).toEqual(['width', 'setBulk', 'play', 'sets']);
  });
});
