/**
 * The only place where prices are read and printed. Money is a whole number of hundredths of what her own sign stands
 * for; shares of it are exact fractions until they are shown. Knows no paper.
 */
import { accept, type Checked, refuse } from './checked.ts';

/** An exact share of money: hundredths over a positive whole number. */
export interface Share {
  readonly over: bigint;
  readonly under: bigint;
}

export const NOTHING: Share = { over: 0n, under: 1n };

/** `hundredths` times `part` of `whole`, which is above zero. */
export const shareOf = (hundredths: number, part: bigint, whole: bigint): Share =>
  lowest({ over: BigInt(hundredths) * part, under: whole });

export const addShares = (shares: readonly Share[]): Share =>
  shares.reduce(
    (sum, one) => lowest({ over: sum.over * one.under + one.over * sum.under, under: sum.under * one.under }),
    NOTHING,
  );

export const splitShare = ({ over, under }: Share, among: number): Share =>
  lowest({ over, under: under * BigInt(among) });

/** To the nearest hundredth, halves away from zero. */
export function toHundredths({ over, under }: Share): number {
  const twice = (over < 0n ? -over : over) * 2n + under;
  const nearest = Number(twice / (2n * under));
  return over < 0n ? -nearest : nearest;
}

/** Shares in whole hundredths that add up to their rounded sum: the largest remainders are rounded up. */
export function roundTogether(shares: readonly Share[]): number[] {
  const floors = shares.map(({ over, under }) => Number(over / under));
  const left = toHundredths(addShares(shares)) - floors.reduce((sum, one) => sum + one, 0);
  const up = shares
    .map(({ over, under }, index) => ({ index, rest: Number(((over % under) * 1_000_000_000n) / under) }))
    .sort((a, b) => b.rest - a.rest)
    .slice(0, Math.max(0, left))
    .map(({ index }) => index);
  return floors.map((floor, index) => floor + (up.includes(index) ? 1 : 0));
}

/** `£12.50`, `12.50 kr`; only the number where she has said no sign. */
export function printMoney(hundredths: number, sign: string): string {
  const number = typedMoney(hundredths);
  if (sign === '') return number;
  return /^\p{L}/u.test(sign) ? `${number} ${sign}` : `${sign}${number}`;
}

/** Plain text for the value of a field: `12.50`. */
export const typedMoney = (hundredths: number): string => (hundredths / 100).toFixed(2);

export interface MoneyTyped {
  readonly hundredths: number;
  /** As it was typed beside the number; empty where none was. */
  readonly sign: string;
}

/** Reads `12.50`, `12,5`, `£12.50`, `12.50 €`. */
export function readMoney(text: string, field = ''): Checked<MoneyTyped> {
  const found = /^([^\d\s.,-]{0,4})\s*(\d{1,6})(?:[.,](\d{1,2}))?\s*([^\d\s.,-]{0,4})$/u.exec(text.trim());
  if (!found || (found[1] !== '' && found[4] !== '')) return refuse(field, UNDERSTOOD);
  const hundredths = Number(found[2]) * 100 + Number((found[3] ?? '').padEnd(2, '0'));
  return accept({ hundredths, sign: found[1] || found[4] || '' });
}

const UNDERSTOOD = 'Write a price like 12.50 or £12.50.';

function lowest({ over, under }: Share): Share {
  let [a, b] = [over < 0n ? -over : over, under];
  while (b > 0n) [a, b] = [b, a % b];
  return a > 1n ? { over: over / a, under: under / a } : { over, under };
}
