/** Holds bands, strips and ribbons against the girth they go round, and against what their path does to opening. */
import { describe, expect, test } from 'vitest';
import { openingOf, type Path, type Run, type WrapWish, wrap } from '#core/sets/wraps.ts';
import { add, inches, length } from '#shared/length.ts';
import { foldedRound, rect, refused, sound } from '#tests/support/checked.ts';

const wish: WrapWish = {
  kind: 'belly band',
  card: { ...rect(5, 7), bulk: inches(1 / 8) },
  fold: 'left',
  path: 'whole card',
  run: 'across',
  breadth: inches(1.5),
  overlap: inches(0.5),
  ends: 'straight',
  copies: 1,
};

describe('the length', () => {
  test('is the girth, bulk included, and the overlap', () => {
    expect(sound(wrap(wish))).toMatchObject(rect(2 * (5 + 1 / 8) + 0.5, 1.5));
    expect(sound(wrap({ ...wish, run: 'up' })).width).toBe(inches(2 * (7 + 1 / 8) + 0.5));
  });

  test('angled ends take the strip’s breadth more', () => {
    expect(sound(wrap({ ...wish, ends: 'angled' })).width).toBe(inches(2 * (5 + 1 / 8) + 0.5 + 1.5));
  });

  test('round one leaf counts that leaf’s bulk: half the card’s unless it is given', () => {
    const round = { ...wish, path: 'front leaf', run: 'up' } as const;
    expect(sound(wrap(round)).width).toBe(inches(2 * (7 + 1 / 16) + 0.5));
    expect(sound(wrap({ ...round, leafBulk: inches(1 / 32) })).width).toBe(inches(2 * (7 + 1 / 32) + 0.5));
  });

  test('scored pieces fold round the front with their ends on the middle of the back', () => {
    const { scores, width } = sound(wrap(wish));
    const ends = [...scores.map((score) => score.at), width];
    const stretches = ends.map((end, index) => end - (ends[index - 1] ?? 0));
    expect(stretches).toEqual([2.5, 1 / 8, 5, 1 / 8, 2.5 + 0.5].map(inches));
  });

  test('folded round the card by right angles, it comes back to where it began and laps over itself', () => {
    const card = { ...rect(4.75, 3.25), bulk: inches(3 / 32) };
    const strip = sound(wrap({ ...wish, card, breadth: inches(1) }));
    // The card's section: as thick across as its bulk, as long as its width; it begins in the middle of the back.
    const corners = foldedRound(strip, { x: 0, y: 0 });
    const half = inches(4.75 / 2);
    expect(corners.slice(1, 5)).toEqual([
      { x: 0, y: half },
      { x: card.bulk, y: half },
      { x: card.bulk, y: half - inches(4.75) },
      { x: 0, y: half - inches(4.75) },
    ]);
    expect(corners.at(-1)).toEqual({ x: 0, y: wish.overlap });
  });

  test('an odd width loses nothing', () => {
    const card = { width: length(5_080_001), height: inches(7), bulk: length(1) };
    expect(sound(wrap({ ...wish, card, overlap: inches(0) })).width).toBe(2 * (5_080_001 + 1));
  });

  test('a ribbon has no scores and is no paper', () => {
    expect(sound(wrap({ ...wish, kind: 'ribbon' }))).toMatchObject({ scores: [], material: 'ribbon' });
  });
});

describe('the path', () => {
  test('round the whole card it ties it shut, and says which way it slips off', () => {
    expect(openingOf(wish)).toMatchObject({ tiesShut: true, stopsAtFold: false });
    expect(openingOf(wish).words).toContain(
      'This ties the card shut: it must slip off over the top or the bottom.',
    );
    expect(openingOf({ ...wish, run: 'up' }).words).toContain('slip off to one side');
    expect(sound(wrap(wish)).notes).toContain(openingOf(wish).words);
  });

  test.each<[WrapWish['fold'], Run, Path, boolean]>([
    ['left', 'up', 'front leaf', false],
    ['left', 'across', 'front leaf', true],
    ['right', 'across', 'inside back', true],
    ['top', 'across', 'front leaf', false],
    ['top', 'up', 'inside back', true],
    ['sides', 'across', 'inside back', true],
    ['sides', 'up', 'inside back', false],
  ])('fold at the %s, strip %s, round the %s: stops at the fold = %s', (fold, run, path, stops) => {
    expect(openingOf({ fold, run, path })).toMatchObject({ tiesShut: false, stopsAtFold: stops });
  });

  test('where it stops at the fold it goes over one edge only, and has no overlap', () => {
    const stopped = sound(wrap({ ...wish, path: 'front leaf' }));
    expect(stopped.width).toBe(add(inches(5), inches(1 / 16), inches(5)));
    expect(stopped.scores).toHaveLength(2);
  });

  test('round an envelope nothing is tied shut', () => {
    expect(openingOf({ fold: 'none', path: 'whole card', run: 'up' })).toMatchObject({ tiesShut: false });
  });
});

test('says all that is wrong, beside its fields', () => {
  const wrong = {
    ...wish,
    card: { ...rect(5, 7), bulk: inches(-1) },
    breadth: inches(0),
    overlap: inches(-1),
    copies: 0,
  };
  expect(refused(wrap(wrong))).toEqual(['copies', 'breadth', 'overlap', 'bulk']);
  expect(refused(wrap({ ...wish, breadth: inches(8) }))).toEqual(['breadth']);
  expect(refused(wrap({ ...wish, fold: 'none', path: 'front leaf' }))).toEqual(['path']);
  expect(refused(wrap({ ...wish, fold: 'sides', path: 'front leaf' }))).toEqual(['path']);
  expect(refused(wrap({ ...wish, leafBulk: inches(-1) }))).toEqual(['leafBulk']);
});
