/** Which side of a sheet is to be checked before it is cut, and how its strip comes off. */
import { describe, expect, test } from 'vitest';
import type { FoundPlan } from '#core/batch/planned.ts';
import { sidesToCheck, stripsFirst } from '#core/batch/sheets-first.ts';
import { toPiece } from '#core/batch/to-order.ts';
import { planCuts } from '#core/cutting/plan.ts';
import type { Pad } from '#core/stash/stash.ts';
import { pieceOfSheet } from '#core/stash/stash.ts';
import { inches, millimetres } from '#shared/length.ts';
import { FERN, MEADOW } from '#tests/support/cast.ts';

const CHALK = { ...MEADOW, name: 'Chalk', sheet: { width: millimetres(210), height: millimetres(297) } };

/** Only what the two questions read of a plan. */
function planOf(asIs: Partial<Pad>, [width, height]: readonly [number, number], copies: number) {
  const pad: Pad = { ...CHALK, ...asIs, id: 7 };
  const pieces = [toPiece(pieceOfSheet({ ...FERN, id: 3, pad, sheets: 9 }))];
  const order = { parts: [{ id: 'a', width: millimetres(width), height: millimetres(height), copies }] };
  const plan = planCuts(order, pieces, { work: 60, seed: 1 });
  expect(plan.unplaced).toEqual([]);
  return [{ order, pieces, plan } as unknown as FoundPlan, new Map([[3, { pad }]])] as const;
}

const sides = (...asked: Parameters<typeof planOf>) =>
  sidesToCheck(...planOf(...asked)).map(({ side, measure, spare }) => [
    side,
    measure / 40_000,
    spare / 40_000,
  ]);

describe('a side to check', () => {
  test('is none where there is paper to spare', () => {
    expect(sides({}, [100, 140], 4)).toEqual([]);
  });

  test('is one that the parts need all of, by the size it is sold by', () => {
    expect(sides({}, [105, 140], 4)).toEqual([['width', 210, 0]]);
    expect(sides({}, [210, 297], 1)).toEqual([
      ['width', 210, 0],
      ['height', 297, 0],
    ]);
  });

  // 1/16 in is 1.5875 mm.
  test('is one with less than 1/16 in to spare, and none with more', () => {
    expect(sides({}, [104.25, 140], 4)).toEqual([['width', 210, 1.5]]);
    expect(sides({}, [104.2, 140], 4)).toEqual([]);
  });

  test('is one that measures other than it is sold by, however much is to spare', () => {
    expect(sides({ measured: { width: millimetres(209.5) } }, [100, 140], 4)).toEqual([
      ['width', 209.5, 9.5],
    ]);
    expect(sides({ measured: CHALK.sheet }, [100, 140], 4)).toEqual([]);
  });

  test('is said of the whole sheet where the parts need all that its strip leaves', () => {
    const strip = { edge: 'left', depth: millimetres(10) } as const;
    expect(sides({ strip }, [100, 140], 4)).toEqual([['width', 210, 0]]);
  });
});

describe('a strip', () => {
  test.each([
    ['left', 'right', 200, 297],
    ['right', 'left', 200, 297],
    ['top', 'bottom', 287, 210],
    ['bottom', 'top', 287, 210],
  ] as const)('along the %s edge falls off with the %s edge at the fence', (edge, fence, set, length) => {
    const [plan, designs] = planOf({ strip: { edge, depth: millimetres(10) } }, [100, 140], 8);
    expect(stripsFirst(plan, designs)).toMatchObject([
      { fence, set: millimetres(set), length: millimetres(length), sheets: 2 },
    ]);
  });

  test('is none where the pad has none', () => {
    expect(stripsFirst(...planOf({}, [100, 140], 8))).toEqual([]);
    expect(inches(1 / 16)).toBe(millimetres(1.5875));
  });
});
