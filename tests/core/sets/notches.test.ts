/** Holds ribbon notches against common practice and checks that panel and base line up. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { area } from '#core/geometry/polygon.ts';
import { type NotchWish, notchedPair } from '#core/sets/notches.ts';
import { inches, length } from '#shared/length.ts';
import { rect, refused, sound } from '#tests/support/checked.ts';

const wish: NotchWish = {
  panel: rect(5.25, 2.25),
  base: rect(5.5, 2.5),
  edges: 'top and bottom',
  at: inches(1.125),
  ribbon: inches(0.25),
  depth: inches(1 / 16),
  copies: 1,
};

describe('notches for a ribbon', () => {
  // Common practice, no source.
  test('a 5¼ × 2¼ panel notched at 1⅛ sits on a 5½ × 2½ base notched at 1¼', () => {
    const { panel, base } = sound(notchedPair(wish));
    expect([panel.notchAt, base.notchAt]).toEqual([inches(1.125), inches(1.25)]);
  });

  test('lie in line when the panel is centred on its base, whatever the sizes', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 500_000 }),
        fc.integer({ min: 1, max: 4_000_000 }),
        (margin, at) => {
          const panel = { width: length(5_000_000), height: length(3_000_000) };
          const base = { width: length(5_000_000 + 2 * margin), height: length(3_000_000 + 2 * margin) };
          const pair = sound(
            notchedPair({ ...wish, panel, base, at: length(at + 200_000), ribbon: length(100_000) }),
          );
          expect(pair.base.notchAt - pair.panel.notchAt).toBe(margin);
        },
      ),
      { seed: 4 },
    );
  });

  test('are cut out of two opposite edges, at the same measure', () => {
    for (const edges of ['top and bottom', 'left and right'] as const) {
      const { panel } = sound(notchedPair({ ...wish, edges }));
      const whole = panel.width * panel.height;
      expect(whole - area(panel.outline!)).toBe(2 * inches(0.25) * inches(1 / 16));
      expect(Math.max(...panel.outline!.map(({ x }) => x))).toBe(panel.width);
      expect(Math.max(...panel.outline!.map(({ y }) => y))).toBe(panel.height);
    }
  });

  test('flipping the piece as the note says lays one notch over the other, turning it does not', () => {
    const { panel } = sound(notchedPair(wish));
    const key = ({ x, y }: { x: number; y: number }): string => `${x},${y}`;
    const corners = new Set(panel.outline!.map(key));
    const flipped = panel.outline!.map(({ x, y }) => key({ x, y: panel.height - y }));
    const turned = panel.outline!.map(({ x, y }) => key({ x: panel.width - x, y: panel.height - y }));
    expect(flipped.every((one) => corners.has(one))).toBe(true);
    expect(turned.every((one) => corners.has(one))).toBe(false);
    expect(panel.notes.join(' ')).toMatch(/flip .*Don’t turn/);
  });

  test('says all that is wrong, beside its fields', () => {
    expect(refused(notchedPair({ ...wish, base: rect(5, 2.5) }))).toEqual(['base.width']);
    expect(refused(notchedPair({ ...wish, at: inches(0.0625) }))).toEqual(['at']);
    expect(refused(notchedPair({ ...wish, at: inches(5.25) }))).toEqual(['at']);
    expect(refused(notchedPair({ ...wish, depth: inches(1.125), ribbon: inches(0) }))).toEqual([
      'ribbon',
      'depth',
    ]);
    expect(refused(notchedPair({ ...wish, depth: inches(-0.125) }))).toEqual(['depth']);
  });
});
