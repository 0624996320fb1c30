/** Holds the address area and the bar code's place against the published figures, on fronts of several sizes. */
import { describe, expect, test } from 'vitest';
import { addressPlaces } from '#core/post/address.ts';
import { add, inches } from '#shared/length.ts';

const rect = (width: number, height: number) => ({ width: inches(width), height: inches(height) });

describe('the address', () => {
  // USPS DMM 202.2.1: ½ in from left and right, ⅝ to 2¾ in up from the bottom.
  test('lies between ⅝ and 2¾ in up, ½ in in from the sides', () => {
    const { area, front } = addressPlaces(rect(5.25, 7.25), 'along')!;
    expect(front).toEqual(rect(7.25, 5.25));
    expect(area).toEqual({ x: inches(0.5), y: inches(2.5), width: inches(6.25), height: inches(2.125) });
    expect(add(area.y, area.height)).toBe(inches(5.25 - 0.625));
  });

  // USPS DMM 202.5 and Publication 28, appendix A1: the clear zone is 4¾ × ⅝ in at the lower right.
  test('leaves the bar code its 4¾ × ⅝ in at the lower right', () => {
    const { clear } = addressPlaces(rect(7.25, 5.25), 'along')!;
    expect(clear).toEqual({ x: inches(2.5), y: inches(4.625), width: inches(4.75), height: inches(0.625) });
  });

  test('follows the address when it runs up the envelope', () => {
    const { area, front, clear } = addressPlaces(rect(7.25, 5.25), 'up')!;
    expect(front).toEqual(rect(5.25, 7.25));
    expect(area.width).toBe(inches(4.25));
    expect(clear.x).toBe(inches(0.5));
  });

  test('a label keeps inside the area and off the bar code, on every standard front', () => {
    for (const [width, height] of [
      [3.625, 5.125],
      [4.375, 5.75],
      [5.25, 7.25],
      [4.125, 9.5],
      [2.5, 4],
      [6, 6],
    ]) {
      for (const way of ['along', 'up'] as const) {
        const { area, clear, label } = addressPlaces(rect(width!, height!), way)!;
        expect(label.x).toBeGreaterThan(area.x);
        expect(label.y).toBeGreaterThan(area.y);
        expect(label.x + label.width).toBeLessThan(area.x + area.width);
        expect(label.y + label.height).toBeLessThan(clear.y);
      }
    }
  });

  test('a front too small for an address has none', () => {
    expect(addressPlaces(rect(1.25, 3), 'up')).toBeUndefined();
    expect(addressPlaces(rect(1, 3), 'along')).toBeUndefined();
  });
});
