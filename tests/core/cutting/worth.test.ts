/** Worth rewards large and square pieces, and never grows under a cut. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { regret, worth } from '#core/cutting/worth.ts';

describe('worth', () => {
  it('is width · height · shorter side, and nothing under the keeping size', () => {
    expect(worth({ width: 4, height: 6 })).toBe(96);
    expect(worth({ width: 4, height: 6 }, 4)).toBe(96);
    expect(worth({ width: 4, height: 6 }, 5)).toBe(0);
  });

  it('never grows under a cut', () => {
    const side = fc.integer({ min: 1, max: 12_192_000 });
    fc.assert(
      fc.property(side, side, side, side, (width, height, cut, keep) => {
        fc.pre(cut < width);
        const halves = worth({ width: cut, height }, keep) + worth({ width: width - cut, height }, keep);
        expect(halves).toBeLessThanOrEqual(worth({ width, height }, keep) * (1 + 1e-12));
      }),
      { seed: 20261125 },
    );
  });

  it('is regretted less where one large leftover stays than two thin ones', () => {
    const sheet = { width: 12, height: 12 };
    expect(regret(sheet, [{ width: 6, height: 12 }])).toBeLessThan(
      regret(sheet, [
        { width: 3, height: 12 },
        { width: 3, height: 12 },
      ]),
    );
    expect(regret(sheet, [sheet])).toBe(0);
  });
});
