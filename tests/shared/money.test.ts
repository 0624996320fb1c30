/** Prices read and printed; shares that lose nothing. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { addShares, printMoney, readMoney, roundTogether, shareOf, toHundredths } from '#shared/money.ts';

it.each([
  ['12.50', 1250, ''],
  ['12,5', 1250, ''],
  ['£12.50', 1250, '£'],
  ['12 €', 1200, '€'],
  ['0.05', 5, ''],
])('reads %s', (text, hundredths, sign) => {
  expect(readMoney(text)).toEqual({ ok: true, value: { hundredths, sign } });
});

it.each(['', 'free', '-3', '1.234', '1 2', '£3€', '9999999'])('refuses “%s”', (text) => {
  expect(readMoney(text).ok).toBe(false);
});

it('prints with her sign where it stands', () => {
  expect([printMoney(1250, '£'), printMoney(5, 'kr'), printMoney(100, '')]).toEqual([
    '£12.50',
    '0.05 kr',
    '1.00',
  ]);
});

it('parts of a price add up to it, exactly and as shown', () => {
  fc.assert(
    fc.property(
      fc.nat(100_000),
      fc.array(fc.bigInt({ min: 1n, max: 10n ** 15n }), { minLength: 1, maxLength: 12 }),
      (price, areas) => {
        const whole = areas.reduce((sum, one) => sum + one, 0n);
        const shares = areas.map((area) => shareOf(price, area, whole));
        expect(toHundredths(addShares(shares))).toBe(price);
        expect(roundTogether(shares).reduce((sum, one) => sum + one, 0)).toBe(price);
      },
    ),
  );
});
