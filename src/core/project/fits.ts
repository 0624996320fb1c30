/**
 * The limits a maker's fits are graded by: her own word before what her outcomes teach, the defaults before either.
 * Worked out afresh whenever they are read; knows no database.
 */
import { DEFAULT_LIMITS } from '#core/envelope/fit.ts';
import { lying, pocketOf } from '#core/envelope/pocket.ts';
import type { FitLimits, Recipe } from '#core/envelope/recipe.ts';
import { add, type Length, length, subtract } from '#shared/length.ts';
import type { Fit } from '#shared/outcome.ts';
import { type Size, turned } from '#shared/size.ts';
import { type FeltFit, type LearnedLimits, LIMIT_NAMES, type LimitName, learnLimits } from './fit-limits.ts';
import type { Outcome } from './journal.ts';

/** What she set herself; null is learned. Outcomes up to `since` are not learned from. */
export interface FitHabits {
  readonly pins: Readonly<Record<LimitName, Length | null>>;
  readonly since: string | null;
}

/** So many of the newest felt fits are read: older ones weigh under a thousandth. */
export const FELT_AT_MOST = 200;

export interface HerFits {
  readonly limits: FitLimits;
  readonly sources: Readonly<Record<LimitName, 'default' | 'learned' | 'pinned'>>;
  /** What the outcomes say by themselves, whatever is pinned. */
  readonly learned: LearnedLimits;
  /** Oldest first. */
  readonly felt: readonly FeltFit[];
}

export function learnFits(felt: readonly FeltFit[], { pins }: Pick<FitHabits, 'pins'>): HerFits {
  const learned = learnLimits(felt, DEFAULT_LIMITS);
  const sourceOf = (name: LimitName): HerFits['sources'][LimitName] => {
    if (pins[name] !== null) return 'pinned';
    return learned.limits[name] === DEFAULT_LIMITS[name] ? 'default' : 'learned';
  };
  const [snug, easy, loose] = LIMIT_NAMES.map(sourceOf);
  return {
    limits: pinnedOver(learned.limits, pins),
    sources: { snug: snug!, easy: easy!, loose: loose! },
    learned,
    felt,
  };
}

/** Pins stand; what is learned gives way to them where it would pass them. */
function pinnedOver({ snug, easy, loose }: FitLimits, pins: FitHabits['pins']): FitLimits {
  const highest = pins.loose ?? Number.POSITIVE_INFINITY;
  const first = pins.snug ?? length(Math.min(snug, pins.easy ?? highest, highest));
  const second = pins.easy ?? length(Math.min(Math.max(easy, first), highest));
  return { snug: first, easy: second, loose: pins.loose ?? length(Math.max(loose, second)) };
}

/** What of a recipe says how the envelope was to come out. */
export type PlannedPocket = Pick<
  Recipe,
  'card' | 'cardTurned' | 'fold' | 'pocket' | 'blank' | 'starts' | 'notcher'
>;

/** How an envelope came out; `start` is what its project used instead of the recipe's when it was made. */
export interface MadePocket extends Pick<Outcome, 'pocket' | 'asMade' | 'twin'> {
  readonly felt: Fit;
  readonly start: Length | null;
}

/** The clearance at which this fit was felt: in the pocket as measured, else as it follows from how it was made. */
export function feltIn(planned: PlannedPocket, made: MadePocket): FeltFit {
  const pocket = made.pocket ?? pocketMade(planned, made);
  const card = lying(planned.card, planned.cardTurned);
  const clearance = {
    width: subtract(pocket.width, add(card.width, card.bulk)),
    height: subtract(pocket.height, add(card.height, card.bulk)),
  };
  return { clearance, felt: made.felt };
}

function pocketMade(planned: PlannedPocket, { asMade, twin, start }: MadePocket): Size {
  const { fold, pocket, blank, starts, notcher } = planned;
  if (fold !== 'diagonal' || (asMade === null && start === null)) return pocket;
  const square = asMade?.square ?? blank.width;
  const read = asMade?.start ?? start ?? starts[0];
  const made = pocketOf(square, read, notcher);
  return asMade && twin ? turned(made) : made;
}
