/** The small cast shared by the envelope's tests: a few tools and cards, and arbitrary ones. Knows no expectations. */
import fc from 'fast-check';
import { THIN_BULK } from '#core/envelope/fit.ts';
import type { Card, Notcher } from '#core/envelope/recipe.ts';
import { inches, type Length, length } from '#shared/length.ts';

export const SEED = { seed: 20261125, numRuns: 200 };

/** A tool with the default inset, an honest ruler and room for any pad. */
export const tool = (graduation = 1 / 16, changes: Partial<Notcher> = {}): Notcher => ({
  inset: inches(7 / 16),
  zeroOffset: inches(0),
  graduation: inches(graduation),
  largestSheet: inches(12),
  ...changes,
});

/** A thin card of this many inches. */
export const thin = (width: number, height: number): Card => ({
  width: inches(width),
  height: inches(height),
  bulk: THIN_BULK,
});

const whole = (min: number, max: number) => fc.integer({ min, max }).map(length);

export const anyCard: fc.Arbitrary<Card> = fc.record({
  width: whole(inches(1.5), inches(11)),
  height: whole(inches(1.5), inches(11)),
  bulk: whole(0, inches(1 / 4)),
});

export const anyNotcher: fc.Arbitrary<Notcher> = fc.record({
  inset: whole(0, inches(3 / 4)),
  zeroOffset: whole(-inches(1 / 8), inches(1 / 8)),
  graduation: fc.constantFrom(inches(1 / 8), inches(1 / 16), inches(1 / 32), length(40_000), length(20_000)),
  largestSheet: fc.constantFrom(inches(8), inches(12), inches(24)),
});

/** A square and a start that leave a pocket of at least half an inch either way. */
export const anyMeasures: fc.Arbitrary<{ notcher: Notcher; square: Length; start: Length }> =
  anyNotcher.chain((notcher) =>
    whole(inches(4), inches(14)).chain((square) =>
      whole(
        notcher.inset - notcher.zeroOffset + inches(0.5),
        square - notcher.inset - notcher.zeroOffset - inches(0.5),
      ).map((start) => ({ notcher, square, start })),
    ),
  );
