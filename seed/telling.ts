/** How the demo is told: days counted back from now, and envelopes as they come out on a tool a little off its scale. */
import type { Card, Recipe } from '#core/envelope/recipe.ts';
import { inches, type Length, millimetres, roundToStep, toInches } from '#shared/length.ts';
import type { Fit } from '#shared/outcome.ts';
import type { Size } from '#shared/size.ts';

const DAY = 24 * 60 * 60 * 1000;

/** Seven in the evening, so many days before `now`, and a few minutes on. */
export function evening(now: Date, daysAgo: number, minutes = 0): string {
  const day = new Date(now.getTime() - daysAgo * DAY);
  day.setUTCHours(19, minutes, 0, 0);
  return day.toISOString();
}

export const size = (width: number, height: number): Size => ({
  width: inches(width),
  height: inches(height),
});

export const card = (width: number, height: number, bulk = 1 / 32): Card => ({
  ...size(width, height),
  bulk: inches(bulk),
});

export const cardInMillimetres = (width: number, height: number): Card => ({
  width: millimetres(width),
  height: millimetres(height),
  bulk: inches(1 / 32),
});

/** What the demo's notcher really does, which its maker learns in the course of the year. */
const TRUE_INSET = inches(15 / 32);
const TRUE_OFFSET = inches(1 / 64);

/** The pocket that her ruler reads on an envelope made with these measures, to the nearest 1/32 in. */
export function measuredPocket(square: Length, start: Length): Size {
  const truly = start + TRUE_OFFSET;
  return {
    width: read((square - truly - TRUE_INSET) * Math.SQRT2),
    height: read((truly - TRUE_INSET) * Math.SQRT2),
  };
}

const read = (units: number): Length => roundToStep(units, inches(1 / 32), 'nearest');

/** How the card sits in it, as a hand feels it. */
export function felt(pocket: Size, { card }: Recipe): Fit {
  const spare = toInches(Math.min(pocket.width - card.width, pocket.height - card.height) - card.bulk);
  if (spare < 0) return "won't go";
  if (spare < 1 / 16) return 'tight';
  if (spare < 0.09) return 'snug';
  return spare < 3 / 8 ? 'easy' : 'loose';
}
