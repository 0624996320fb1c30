/** Holds card bases, panels and inserts against common practice and against sums that have to come out. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { area } from '#core/geometry/polygon.ts';
import { type BaseWish, cardBase } from '#core/sets/base.ts';
import { foldedInsert, frontPanels, insidePanel } from '#core/sets/panels.ts';
import { outlineOf, scoreLines, toOrder } from '#core/sets/part.ts';
import { inches, length } from '#shared/length.ts';
import { rect, refused, sound } from '#tests/support/checked.ts';

const wish: BaseWish = { card: rect(2.5, 3.5), fold: 'top', copies: 4 };

describe('the card base', () => {
  // Common practice, no source.
  test('one that folds to 2½ × 3½ is cut 2½ × 7 and scored in the middle', () => {
    expect(sound(cardBase(wish))).toMatchObject({
      ...rect(2.5, 7),
      scores: [{ from: 'top', at: inches(3.5) }],
      grain: 'width',
    });
  });

  test('a book is as wide again and scored across its width, whichever side it opens', () => {
    for (const fold of ['left', 'right'] as const) {
      const base = sound(cardBase({ ...wish, card: rect(5, 7), fold }));
      expect(base).toMatchObject({
        ...rect(10, 7),
        scores: [{ from: 'left', at: inches(5) }],
        grain: 'height',
      });
    }
    expect(sound(cardBase({ ...wish, fold: 'left' })).opens).toContain('right');
    expect(sound(cardBase({ ...wish, fold: 'right' })).opens).toContain('left');
    expect(sound(cardBase(wish)).opens).toContain('tent');
  });

  test('a gate’s leaves meet but for the gap, and add up to the card whatever its width', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1_000_000, max: 9_000_000 }),
        fc.integer({ min: 0, max: 50_000 }),
        (width, gap) => {
          const card = { width: length(width), height: inches(4) };
          const base = sound(cardBase({ ...wish, card, fold: 'sides', gap: length(gap) }));
          const [first, second] = base.scores.map((score): number => score.at) as [number, number];
          const [left, back, right] = [first, second - first, base.width - second];
          expect(back).toBe(width);
          expect(left + right + gap).toBe(width);
          expect(Math.abs(left - right)).toBeLessThanOrEqual(1);
        },
      ),
      { seed: 4 },
    );
  });

  test('a gate up and down is a gate turned', () => {
    const base = sound(cardBase({ ...wish, card: rect(4, 6), fold: 'top and bottom', gap: inches(0) }));
    expect(base).toMatchObject({ ...rect(4, 12), grain: 'width' });
    expect(base.scores).toEqual([
      { from: 'top', at: inches(3) },
      { from: 'top', at: inches(9) },
    ]);
  });

  test('says all that is wrong, beside its fields', () => {
    expect(refused(cardBase({ ...wish, card: rect(0, -1), copies: 0 }))).toEqual([
      'width',
      'height',
      'copies',
    ]);
    expect(refused(cardBase({ ...wish, fold: 'sides', gap: inches(-0.125) }))).toEqual(['gap']);
    expect(refused(cardBase({ ...wish, fold: 'sides', gap: inches(2.5) }))).toEqual(['gap']);
    expect(refused(cardBase({ ...wish, copies: 10_001 }))).toEqual(['copies']);
    expect(refused(cardBase({ ...wish, copies: Number.NaN }))).toEqual(['copies']);
  });
});

describe('what is layered on it', () => {
  const front = { card: rect(5, 7), copies: 2 };

  test('each layer is its margin smaller all round than the one under it', () => {
    const parts = sound(frontPanels({ ...front, margins: [inches(1 / 8), inches(1 / 16), inches(1 / 4)] }));
    expect(parts.map((part) => part.name)).toEqual(['Mat 1', 'Mat 2', 'Front panel']);
    expect(parts.map(({ width, height }) => ({ width, height }))).toEqual([
      rect(4.75, 6.75),
      rect(4.625, 6.625),
      rect(4.125, 6.125),
    ]);
  });

  test('a margin of nothing covers the whole front', () => {
    expect(sound(frontPanels({ ...front, margins: [inches(0)] }))[0]).toMatchObject({
      ...rect(5, 7),
      name: 'Front panel',
    });
  });

  test('an inside panel keeps its margin on all four sides, a folded insert on three', () => {
    expect(sound(insidePanel({ ...front, margin: inches(0.25) }))).toMatchObject(rect(4.5, 6.5));
    const insert = sound(foldedInsert({ ...front, margin: inches(0.25) }));
    expect(insert).toMatchObject({ ...rect(9.5, 6.5), scores: [{ from: 'left', at: inches(4.75) }] });
  });

  test('negative margins and margins that leave nothing are refused beside their own field', () => {
    expect(refused(frontPanels({ ...front, margins: [inches(0.125), inches(-0.125)] }))).toEqual([
      'margins.1',
    ]);
    expect(refused(frontPanels({ ...front, margins: [inches(1), inches(1.5), inches(1)] }))).toEqual([
      'margins.1',
    ]);
    expect(refused(frontPanels({ ...front, margins: [] }))).toEqual(['margins']);
    expect(refused(insidePanel({ ...front, margin: inches(2.5) }))).toEqual(['margin']);
    expect(refused(foldedInsert({ ...front, margin: inches(-1) }))).toEqual(['margin']);
  });
});

test('parts become an order under names of their own, without ribbons', () => {
  const panel = sound(
    frontPanels({ card: rect(5, 7), copies: 2, upright: true, margins: [inches(0.125)] }),
  )[0]!;
  expect(toOrder([panel, { ...panel, material: 'ribbon' }, panel])).toEqual([
    { id: 'Front panel', ...rect(4.75, 6.75), copies: 2, upright: true },
    { id: 'Front panel 2', ...rect(4.75, 6.75), copies: 2, upright: true },
  ]);
});

test('outline and scores come as shapes, for drawings and templates', () => {
  const base = sound(cardBase(wish));
  expect(area(outlineOf(base))).toBe(base.width * base.height);
  expect(scoreLines(base)).toEqual([
    { from: { x: 0, y: inches(3.5) }, to: { x: inches(2.5), y: inches(3.5) } },
  ]);
  const gate = sound(cardBase({ ...wish, fold: 'sides', gap: inches(0) }));
  expect(scoreLines(gate).map(({ from, to }) => [from.x, to.x, from.y, to.y])).toEqual([
    [inches(1.25), inches(1.25), 0, gate.height],
    [inches(3.75), inches(3.75), 0, gate.height],
  ]);
  const outline = [{ x: 0, y: 0 }];
  expect(outlineOf({ ...base, outline })).toBe(outline);
});
