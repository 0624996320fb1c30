/** When a tool seems to have changed: real changes found where they are, and none where only hands are unsteady. */
import { describe, expect, it } from 'vitest';
import { pocketOf } from '#core/envelope/pocket.ts';
import type { Evidence } from '#core/project/learning.ts';
import { changeIn } from '#core/project/tool-change.ts';
import { inches, type Length, length, roundToStep, toInches } from '#shared/length.ts';
import { later } from '#tests/support/cast.ts';
import { chance, normal } from '#tests/support/makers.ts';

/** Pockets of a tool whose inset is as given, each side measured to the nearest 1/32 in with an unsteady hand. */
function pockets(insets: readonly number[], seed: number, noise: number): Evidence[] {
  const random = chance(seed);
  const read = (side: Length): Length =>
    roundToStep(side + inches(1) * noise * normal(random), inches(1 / 32), 'nearest');
  return insets.map((inset, index) => {
    const square = inches(7 + Math.round(random() * 24) / 8);
    const start = length(Math.round(square * (0.4 + random() / 10)));
    const notcher = {
      ...{ inset: length(Math.round(inches(1) * inset)), zeroOffset: inches(0) },
      ...{ graduation: inches(1 / 8), largestSheet: inches(12) },
    };
    const { width, height } = pocketOf(square, start, notcher);
    const pocket = { width: read(width), height: read(height) };
    const project = { id: index + 1, title: 'Batch' };
    return { square, start, pocket, envelope: index, number: 1, project, at: later(index), alike: [] };
  });
}

const times = (count: number, inset: number): number[] => Array.from({ length: count }, () => inset);
const SEEDS = Array.from({ length: 40 }, (_, index) => index + 1);

describe('a tool that changed', () => {
  it('by 1/8 in is found, with what it was and is, and when', () => {
    for (const seed of SEEDS) {
      const seen = pockets([...times(6, 0.4375), ...times(5, 0.5625)], seed, 1 / 64);
      const found = changeIn(seen)!;
      expect(found).toMatchObject({ first: 6, after: later(5) });
      expect(Math.abs(toInches(found.was.inset) - 0.4375)).toBeLessThan(1 / 32);
      expect(Math.abs(toInches(found.is.inset) - 0.5625)).toBeLessThan(1 / 32);
    }
  });

  it('is not told of before three pockets say so', () => {
    expect(changeIn(pockets([...times(6, 0.4375), ...times(2, 0.5625)], 1, 0))).toBeUndefined();
    expect(changeIn(pockets([...times(6, 0.4375), ...times(3, 0.5625)], 1, 0))).toMatchObject({ first: 6 });
    expect(changeIn([])).toBeUndefined();
  });

  it('is hardly ever told of where only hands are unsteady: in 2 of 40 books of 14 pockets at most', () => {
    const told = SEEDS.filter((seed) => changeIn(pockets(times(14, 0.4375), seed, 1 / 64)));
    expect(told.length).toBeLessThanOrEqual(2);
  });
});
