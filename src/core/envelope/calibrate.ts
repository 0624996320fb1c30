/**
 * Learns a tool's inset and zero offset from envelopes made on it: one pocket measured both ways gives both, several
 * agree on a middle value. Names the ones that are off. Knows no envelope's name and keeps nothing.
 */
import type { Problem } from '#shared/checked.ts';
import { inches, type Length, LONGEST, length, roundLength } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';
import { DEFAULT_INSET } from './fit.ts';
import { insetFrom, zeroOffsetFrom } from './square.ts';

/** One envelope as made: what its square and start were, and its pocket measured flat; height is the start's side. */
export interface Observation {
  readonly square: Length;
  readonly start: Length;
  readonly pocket: Size;
}

export interface Calibration {
  readonly inset: Length;
  readonly zeroOffset: Length;
  /** How far the observations that count lie from these values at most. */
  readonly spread: { readonly inset: Length; readonly zeroOffset: Length };
  /** Which observations do not count: impossible in themselves, or far from what most of them say. */
  readonly outliers: readonly number[];
  /** Why, in plain words, each beside `observations.<index>`; empty when every observation is fine. */
  readonly problems: readonly Problem[];
}

/**
 * Two careful measurements of a pocket, each out by 1/32 in, move inset and zero offset by less than this; so do the
 * tolerances of hand work. What lies further from the others contradicts them.
 */
const TOLERANCE = inches(1 / 16);

interface Reading {
  readonly index: number;
  readonly inset: number;
  readonly zeroOffset: number;
}

/**
 * The medians of all observations that agree within 1/16 in, when these are more than half; until then, and when they
 * contradict each other, the defaults stand. Never throws: whatever is wrong is named in `problems`.
 */
export function calibrate(observations: readonly Observation[]): Calibration {
  const faults = observations.map(faultIn);
  const readings = observations.map(readingOf).filter(({ index }) => faults[index] === undefined);
  const agreed = largestAgreement(readings);
  const isMajority = agreed.length * 2 > readings.length;
  const problems = observations.flatMap((_, index) => {
    const message = faults[index] ?? disagreement(index, agreed, isMajority);
    return message ? [{ index, problem: { field: `observations.${index}`, message } }] : [];
  });
  return {
    ...(isMajority ? middleOf(agreed) : DEFAULTS),
    outliers: problems.map(({ index }) => index),
    problems: problems.map(({ problem }) => problem),
  };
}

const DEFAULTS = {
  inset: DEFAULT_INSET,
  zeroOffset: length(0),
  spread: { inset: length(0), zeroOffset: length(0) },
};

function faultIn({ square, start, pocket }: Observation): string | undefined {
  const all = [square, start, pocket.width, pocket.height];
  if (!all.every((one) => Number.isSafeInteger(one) && one <= LONGEST)) return 'These are not lengths.';
  if (square <= 0 || pocket.width <= 0 || pocket.height <= 0)
    return 'Square and pocket have to be more than nothing.';
  if (start < 0 || start >= square) return 'The start lies outside the square.';
  if (insetFrom(square, pocket.width, pocket.height) < -TOLERANCE)
    return 'No square this small folds to such a pocket.';
  return undefined;
}

const readingOf = ({ square, start, pocket }: Observation, index: number): Reading => ({
  index,
  inset: insetFrom(square, pocket.width, pocket.height),
  zeroOffset: zeroOffsetFrom(square, start, pocket.width, pocket.height),
});

/** The most readings that lie about one of them; of several such groups, the tightest. */
function largestAgreement(readings: readonly Reading[]): Reading[] {
  const groups = readings.map((centre) => {
    const members = readings.filter((other) => apart(centre, other) <= TOLERANCE);
    return { members, width: Math.max(...members.map((other) => apart(centre, other))) };
  });
  groups.sort((one, other) => other.members.length - one.members.length || one.width - other.width);
  return groups[0]?.members ?? [];
}

const apart = (one: Reading, other: Reading): number =>
  Math.max(Math.abs(one.inset - other.inset), Math.abs(one.zeroOffset - other.zeroOffset));

function disagreement(index: number, agreed: readonly Reading[], isMajority: boolean): string | undefined {
  if (!isMajority) return 'This one and the others contradict each other. Measure again, or make one more.';
  if (agreed.some((reading) => reading.index === index)) return undefined;
  return 'This one is off from what the others say. Was it measured the other way round?';
}

function middleOf(readings: readonly Reading[]): typeof DEFAULTS {
  const insets = readings.map(({ inset }) => inset);
  const offsets = readings.map(({ zeroOffset }) => zeroOffset);
  const [inset, zeroOffset] = [Math.max(0, median(insets)), median(offsets)];
  return {
    inset: roundLength(inset, 'nearest'),
    zeroOffset: roundLength(zeroOffset, 'nearest'),
    spread: { inset: farthest(insets, inset), zeroOffset: farthest(offsets, zeroOffset) },
  };
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((one, other) => one - other);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

const farthest = (values: readonly number[], from: number): Length =>
  roundLength(Math.max(...values.map((value) => Math.abs(value - from))), 'up');
