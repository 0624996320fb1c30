/** Which bought envelopes a card goes into, against the published size charts. */
import { describe, expect, test } from 'vitest';
import { DEFAULT_LIMITS, THIN_BULK } from '#core/envelope/fit.ts';
import { fitReadyMade, type ReadyMade } from '#core/stash/ready-made.ts';
import { inches, length } from '#shared/length.ts';
import { size } from '#tests/support/cast.ts';

const bought = (id: number, width: number, height: number, count = 12): ReadyMade => ({
  id,
  name: `${width} × ${height}`,
  ...size(width, height),
  note: '',
  count,
});

const A2 = bought(1, 4.375, 5.75);
const A6 = bought(2, 4.75, 6.5);
const A7 = bought(3, 5.25, 7.25);
const HALF_LETTER = { ...size(5.5, 4.25), bulk: THIN_BULK };

describe('fitReadyMade', () => {
  // Envelope makers' size charts: a half-letter card goes into an A2 with ⅛ and ¼ to spare, its bulk left out.
  test('turns the envelope where that is needed, and tells what is to spare as the card lies', () => {
    const [best] = fitReadyMade([A6, A2], HALF_LETTER, DEFAULT_LIMITS).fitting;
    expect(best!.readyMade).toBe(A2);
    expect(best!.fit).toBe('easy');
    expect(best!.clearance).toEqual({
      width: length(inches(1 / 4) - THIN_BULK),
      height: length(inches(1 / 8) - THIN_BULK),
    });
  });

  test('the better grade first, then the closer one', () => {
    const order = fitReadyMade([A7, A6, A2], HALF_LETTER, DEFAULT_LIMITS).fitting.map(
      ({ fit, readyMade }) => [readyMade.id, fit],
    );
    expect(order).toEqual([
      [1, 'easy'],
      [2, 'loose'],
      [3, 'loose'],
    ]);
  });

  test('leaves out what is used up, and what the card won’t go into or lies loose in, and says so', () => {
    const all = [{ ...A2, count: 0 }, bought(4, 4.25, 5.5), A7];
    expect(fitReadyMade(all, HALF_LETTER, DEFAULT_LIMITS, { loose: false })).toEqual({
      fitting: [],
      leftOut: [
        { readyMade: all[0], why: 'none left' },
        { readyMade: all[1], why: "won't go" },
        { readyMade: all[2], why: 'loose' },
      ],
    });
  });
});
