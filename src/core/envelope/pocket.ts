/**
 * What a square and a start on the ruler really give: pocket, clearance and fit, each length rounded once. Knows how
 * a card may be turned, not which measures would be better.
 */
import { add, type Length, roundLength, subtract, times } from '#shared/length.ts';
import type { Fit } from '#shared/outcome.ts';
import { type Size, turned } from '#shared/size.ts';
import { type Graded, gradePocket } from './fit.ts';
import type { Card, FitLimits, Notcher } from './recipe.ts';
import { pocketHeight, pocketWidth } from './square.ts';

/** The measures of a square before flaps, seam and warnings are worked out. */
export interface Pocketed extends Graded {
  readonly square: Length;
  readonly start: Length;
  readonly pocket: Size;
  readonly cardTurned: boolean;
}

export interface Setting {
  readonly card: Card;
  readonly notcher: Notcher;
  readonly limits: FitLimits;
}

export const trueStart = (start: Length, notcher: Notcher): Length => add(start, notcher.zeroOffset);

/** The reading for the same notch from the other corner: the true starts add up to the square. */
export const twinOf = (square: Length, start: Length, notcher: Notcher): Length =>
  subtract(subtract(square, start), times(notcher.zeroOffset, 2));

/** Rounded down: a promise of room that is never exceeded. */
export const pocketOf = (square: Length, start: Length, notcher: Notcher): Size => ({
  width: roundLength(pocketWidth(square, trueStart(start, notcher), notcher.inset), 'down'),
  height: roundLength(pocketHeight(trueStart(start, notcher), notcher.inset), 'down'),
});

/** Whether that square and start leave any pocket at all. */
export function isPocket(square: Length, start: Length, notcher: Notcher): boolean {
  const { width, height } = pocketOf(square, start, notcher);
  return width > 0 && height > 0;
}

/** The card as it lies, or turned by a quarter when it goes in only that way. */
export function fitEitherWay(square: Length, start: Length, setting: Setting): Pocketed {
  const asItLies = fitLying(square, start, setting, false);
  if (asItLies.fit !== WONT_GO) return asItLies;
  const other = fitLying(square, start, setting, true);
  return other.fit === WONT_GO ? asItLies : other;
}

/** The card as it lies, or after a quarter turn. */
export function fitLying(square: Length, start: Length, setting: Setting, cardTurned: boolean): Pocketed {
  const pocket = pocketOf(square, start, setting.notcher);
  return {
    square,
    start,
    pocket,
    cardTurned,
    ...gradePocket(pocket, lying(setting.card, cardTurned), setting.limits),
  };
}

const WONT_GO: Fit = "won't go";

/** The card as it lies in the pocket. */
export const lying = (card: Card, cardTurned: boolean): Card =>
  cardTurned ? { ...turned(card), bulk: card.bulk } : card;
