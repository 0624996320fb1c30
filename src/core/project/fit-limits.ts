/**
 * Learns where a maker's *tight*, *snug*, *easy* and *loose* begin from what she felt at which clearance. Starts from the
 * limits given and keeps nothing; knows no recipe, no page and no pins.
 *
 * Each limit is a threshold of the ordered logistic model (cumulative logits: McCullagh, "Regression models for ordinal
 * data", 1980), its slope known and its likelihood contaminated by slips (Huber, "Robust estimation of a location
 * parameter", 1964): one word, however wrong, weighs only so much. The prior has a peak at the default, so that a limit
 * stays there until outcomes outweigh it, and long tails, so that one who really differs is not held back (Armagan,
 * Dunson & Lee, "Generalized double Pareto shrinkage", 2013); its mode is sought on a grid. Outcomes fade by halves, and
 * once the defaults would have done better, a cumulative sum (Page, "Continuous inspection schemes", 1954) starts afresh.
 * All sources from memory.
 */
import { assertLimits } from '#core/envelope/door.ts';
import { gradeClearance } from '#core/envelope/fit.ts';
import type { FitLimits } from '#core/envelope/recipe.ts';
import { inches, type Length, length, millimetres, roundLength } from '#shared/length.ts';
import { FITS, type Fit, worseFit } from '#shared/outcome.ts';
import type { Size } from '#shared/size.ts';

/** Pocket less card less bulk each way, and how the card sat: the worse of its two dimensions. */
export interface FeltFit {
  readonly clearance: Size;
  readonly felt: Fit;
}

export const LIMIT_NAMES = ['snug', 'easy', 'loose'] as const;

export type LimitName = (typeof LIMIT_NAMES)[number];

/** What speaks for one limit: of the outcomes that still count and lie near it, how many it grades as they were felt. */
interface LimitEvidence {
  readonly near: number;
  readonly agree: number;
}

export interface LearnedLimits {
  readonly limits: FitLimits;
  readonly evidence: Readonly<Record<LimitName, LimitEvidence>>;
}

/** No limit moves further than this when one more outcome is added, whatever it says. */
export const MOST_PER_OUTCOME = inches(1 / 64);

/** After so many later outcomes one weighs half. */
export const HALF_LIFE = 20;

/** So many of the newest are counted as evidence: any older one weighs less than an eighth. */
export const SPEAKS_FOR = 3 * HALF_LIFE;

/** Once the defaults were right so many times more often than the learned limits, those start afresh. */
const BEHIND_AT_MOST = 3;

/** The share of outcomes whose word or clearance is a slip. */
const SLIPS = 0.1;

/** The further from the default, the slower the prior falls: as this power of the distance in the end. */
const TAIL = 6;

/** No grade gets narrower than this, unless it was by default. */
const NARROWEST = inches(1 / 64);

interface Threshold {
  /** Snug and easy are decided by the tighter dimension, loose by the wider one. */
  readonly decides: (one: number, other: number) => number;
  readonly under: readonly Fit[];
  readonly over: readonly Fit[];
  /** The logistic scale of what she feels. */
  readonly blur: Length;
  /** Beside the default the prior falls by a factor of e over this distance. */
  readonly pull: Length;
  /** The grid, and how far it goes from the default. */
  readonly step: Length;
  readonly reach: Length;
}

/** A fit that is in neither list says nothing of that limit: what is tight may well be loose the other way. */
const THRESHOLDS: Record<LimitName, Threshold> = {
  snug: {
    ...{ decides: Math.min, under: ["won't go", 'tight'], over: ['snug', 'easy', 'loose'] },
    ...{ blur: inches(1 / 100), pull: inches(1 / 80), step: millimetres(0.1), reach: inches(1 / 2) },
  },
  easy: {
    ...{ decides: Math.min, under: ["won't go", 'tight', 'snug'], over: ['easy'] },
    ...{ blur: inches(1 / 100), pull: inches(1 / 80), step: millimetres(0.1), reach: inches(1 / 2) },
  },
  loose: {
    ...{ decides: Math.max, under: ['snug', 'easy'], over: ['loose'] },
    ...{ blur: inches(1 / 40), pull: inches(1 / 32), step: millimetres(0.2), reach: inches(3 / 4) },
  },
};

/** Near enough to a limit to speak for it, in blurs. */
const NEAR = 10;

/**
 * The limits after these outcomes, in the order they happened: one more moves each by `MOST_PER_OUTCOME` at most; they
 * stay in order, and none is negative or more than ½ in (loose: ¾ in) from its default. No outcomes give the defaults.
 * Throws on defaults that are no limits and on outcomes that are none; a clearance may be any finite number of 25 nm.
 */
export function learnLimits(outcomes: readonly FeltFit[], defaults: FitLimits): LearnedLimits {
  assertLimits(defaults);
  outcomes.forEach(assertOutcome);
  const watched = LIMIT_NAMES.map((name) => watch(name, defaults));
  const [fewestGap, widestGap] = [defaults.easy - defaults.snug, defaults.loose - defaults.easy];
  const gaps = [0, Math.min(NARROWEST, fewestGap), Math.min(NARROWEST, widestGap)];
  let limits = defaults;
  let [behind, since] = [0, 0];
  outcomes.forEach((outcome, index) => {
    behind = Math.max(0, behind + missed(outcome, limits) - missed(outcome, defaults));
    if (behind >= BEHIND_AT_MOST) {
      [behind, since] = [0, index];
      for (const { scores } of watched) scores.fill(0);
    }
    for (const one of watched) hear(one, outcome);
    limits = towards(limits, inOrder(watched.map(mode), gaps));
  });
  const counted = outcomes.slice(Math.max(since, outcomes.length - SPEAKS_FOR));
  return { limits, evidence: evidenceFor(limits, counted) };
}

/** The fit of an envelope by these limits: the worse of its two dimensions. */
export const fitAt = ({ width, height }: Size, limits: FitLimits): Fit =>
  worseFit(gradeClearance(width, limits), gradeClearance(height, limits));

const missed = ({ clearance, felt }: FeltFit, limits: FitLimits): number =>
  fitAt(clearance, limits) === felt ? 0 : 1;

function assertOutcome({ clearance, felt }: FeltFit): void {
  if (!FITS.includes(felt)) throw new Error(`invalid fit: ${felt}`);
  for (const side of [clearance.width, clearance.height])
    if (!Number.isFinite(side)) throw new Error(`invalid clearance: ${side}`);
}

/** One limit's grid, with the weighed log likelihood of what was felt so far at each of its places. */
interface Watched extends Omit<Threshold, 'pull'> {
  readonly default: Length;
  /** How many steps below the default the grid begins. */
  readonly below: number;
  readonly scores: Float64Array;
  /** The log of the prior at each place. */
  readonly prior: Float64Array;
  /** By how many steps a place lies over the clearance, from `-scores.length` on: that she says it is over the limit. */
  readonly saysOver: Float64Array;
}

function watch(name: LimitName, defaults: FitLimits): Watched {
  const threshold = THRESHOLDS[name];
  const { blur, pull, step, reach } = threshold;
  const below = Math.floor(Math.min(defaults[name], reach) / step);
  const places = below + Math.floor(reach / step) + 1;
  const saysOver = Float64Array.from({ length: 2 * places + 1 }, (_, at) =>
    Math.log(SLIPS / 2 + (1 - SLIPS) / (1 + Math.exp(((at - places) * step) / blur))),
  );
  const prior = Float64Array.from(
    { length: places },
    (_, place) => -TAIL * Math.log1p((Math.abs(place - below) * step) / pull / TAIL),
  );
  return { ...threshold, default: defaults[name], below, scores: new Float64Array(places), prior, saysOver };
}

const FADE = 0.5 ** (1 / HALF_LIFE);

/** Fades what was heard before, and weighs this outcome in where it tells of this limit. */
function hear(
  { decides, under, over, scores, saysOver, step, below, ...limit }: Watched,
  heard: FeltFit,
): void {
  const { clearance, felt } = heard;
  const places = scores.length;
  const isOver = over.includes(felt);
  const tells = isOver || under.includes(felt);
  const at = Math.round((decides(clearance.width, clearance.height) - limit.default) / step) + below;
  for (let place = 0; place < places; place += 1) {
    const apart = Math.max(-places, Math.min(places, isOver ? place - at : at - place));
    scores[place] = scores[place]! * FADE + (tells ? saysOver[apart + places]! : 0);
  }
}

/** The likeliest place, the one nearest the default where several are alike. */
function mode({ scores, prior, below, step, default: from }: Watched): number {
  let [best, top] = [below, Number.NEGATIVE_INFINITY];
  scores.forEach((score, place) => {
    const value = score + prior[place]!;
    const nearer = Math.abs(place - below) < Math.abs(best - below);
    if (value > top + ALIKE || (nearer && value > top - ALIKE)) [best, top] = [place, Math.max(value, top)];
  });
  return from + (best - below) * step;
}

const ALIKE = 1e-9;

/** Each at least its gap above the one before. */
function inOrder([snug, easy, loose]: readonly number[], gaps: readonly number[]): number[] {
  const second = Math.max(easy!, snug! + gaps[1]!);
  return [snug!, second, Math.max(loose!, second + gaps[2]!)];
}

/** Two rows in order, each clamped about the other, stay in order. */
function towards(limits: FitLimits, targets: readonly number[]): FitLimits {
  const [snug, easy, loose] = LIMIT_NAMES.map((name, index) => {
    const move = targets[index]! - limits[name];
    return length(limits[name] + Math.max(-MOST_PER_OUTCOME, Math.min(MOST_PER_OUTCOME, Math.round(move))));
  });
  return { snug: snug!, easy: easy!, loose: loose! };
}

function evidenceFor(limits: FitLimits, outcomes: readonly FeltFit[]): LearnedLimits['evidence'] {
  const [snug, easy, loose] = LIMIT_NAMES.map((name) => {
    const { decides, under, over, blur } = THRESHOLDS[name];
    const near = outcomes.filter(
      ({ clearance, felt }) =>
        (under.includes(felt) || over.includes(felt)) &&
        Math.abs(decides(clearance.width, clearance.height) - limits[name]) <= NEAR * blur,
    );
    const agree = near.filter(({ clearance, felt }) => {
      const side = roundLength(decides(clearance.width, clearance.height), 'down');
      return under.includes(gradeClearance(side, limits)) === under.includes(felt);
    });
    return { near: near.length, agree: agree.length };
  });
  return { snug: snug!, easy: easy!, loose: loose! };
}
