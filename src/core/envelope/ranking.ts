/**
 * Which of two envelopes suits the maker better: whether the print lies as it must, whether it can be made, how it fits,
 * how near it comes to the clearance aimed at, how much paper it takes. Weights are our own choice.
 */
import type { FoldName } from '#shared/fold.ts';
import { type Length, toInches } from '#shared/length.ts';
import type { Fit, WantedFit } from '#shared/outcome.ts';
import type { FrontLie } from '#shared/print.ts';
import { longer, type Size } from '#shared/size.ts';
import { goesFreely, idealClearance } from './fit.ts';
import type { FitLimits, Notcher, Want } from './recipe.ts';

export interface Ranked {
  readonly fold: FoldName;
  readonly front: FrontLie;
  readonly blank: Size;
  readonly pocket: Size;
  readonly clearance: Size;
  readonly fit: Fit;
}

export interface Taste {
  readonly want: Want;
  readonly limits: FitLimits;
  readonly notcher: Notcher;
}

export interface Rank {
  /** Whole steps: nothing of a lower one ever comes after a higher one. */
  readonly tier: number;
  /** The notcher's own fold comes before those that are scored along a ruler; the shelf may say otherwise. */
  readonly detour: 0 | 1;
  readonly badness: number;
  readonly paper: number;
}

/** Falling short of the ideal is worse than exceeding it; room along the longer side is felt a little less. */
const SHORT = 2;
const OVER_LONGER = 0.7;

export const EASY: WantedFit = 'easy';

/** Lower is better, tier first. With a limit on the outer size: within it before beyond it, then the snuggest. */
export function rankOf(envelope: Ranked, taste: Taste): Rank {
  const paper = envelope.blank.width * envelope.blank.height;
  const beyond = beyondOuter(envelope.pocket, taste.want);
  const tier =
    tierOf(envelope, taste) +
    (beyond > 0 ? BEYOND_LIMIT : 0) +
    (liesOtherwise(envelope, taste) ? OTHER_LIE : 0);
  const detour = envelope.fold === 'diagonal' ? 0 : 1;
  return { tier, detour, badness: beyond > 0 ? beyond : badnessOf(envelope, taste), paper };
}

export const byRank = (one: Rank, other: Rank): number =>
  one.tier - other.tier ||
  one.detour - other.detour ||
  one.badness - other.badness ||
  one.paper - other.paper;

/** By how much a pocket exceeds the limit on the outer size; 0 within it. Turning is allowed when both are given. */
export function beyondOuter(pocket: Size, { largestOuter }: Want): number {
  const { width = Infinity, height = Infinity } = largestOuter ?? {};
  const asItLies = Math.max(0, pocket.width - width, pocket.height - height);
  const mayTurn = Number.isFinite(width) && Number.isFinite(height);
  return mayTurn ? Math.min(asItLies, Math.max(0, pocket.height - width, pocket.width - height)) : asItLies;
}

const BEYOND_LIMIT = 10;
const OTHER_LIE = 20;
const WONT_GO = 40;

const liesOtherwise = ({ front }: Ranked, { want }: Taste): boolean =>
  want.front !== undefined && front !== want.front;

/** 0 as wanted, 1 goes in without force; 2 and 3 the same on too large a sheet; 4 and 5 tight; won't go after all. */
function tierOf({ blank, fit }: Ranked, { want, notcher }: Taste): number {
  if (fit === "won't go") return WONT_GO;
  const tooLarge = longer(blank) > notcher.largestSheet;
  if (!goesFreely(fit)) return tooLarge ? 5 : 4;
  return (tooLarge ? 2 : 0) + (isWanted(fit, want) ? 0 : 1);
}

/** Within a limit on the outer size and no fit named, every fit without force is as wanted. */
const isWanted = (fit: Fit, { fit: wanted, largestOuter }: Want): boolean =>
  wanted === undefined && largestOuter !== undefined ? true : fit === (wanted ?? EASY);

function badnessOf({ pocket, clearance }: Ranked, { want, limits }: Taste): number {
  if (want.largestOuter !== undefined && want.fit === undefined) return clearance.width + clearance.height;
  const ideal = idealClearance(want.fit ?? EASY, limits);
  const wide = pocket.width >= pocket.height;
  return missBy(clearance.width, ideal, wide) + missBy(clearance.height, ideal, !wide);
}

function missBy(clearance: Length, ideal: Length, alongLonger: boolean): number {
  const over = toInches(clearance - ideal);
  return over < 0 ? -over * SHORT : over * (alongLonger ? OVER_LONGER : 1);
}
