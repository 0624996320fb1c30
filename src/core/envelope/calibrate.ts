/**
 * Learns a tool's inset and zero offset from envelopes made on it: one pocket measured both ways gives both, several
 * agree on a middle value. Names the ones that do not agree. Knows no envelope's name and keeps nothing.
 */
import type { Problem } from '#shared/checked.ts';
import { inches, type Length, LONGEST, length, roundLength } from '#shared/length.ts';
import { LARGEST_CORRECTION, LARGEST_INSET } from '#shared/notcher.ts';
import { type Size, turned } from '#shared/size.ts';
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

/**
 * The most that one observation alone may move either value from its default; what would move one further waits for a
 * second pocket that agrees. A side misread by d moves both by d/(2√2), so a slip of ¾ in no longer counts. Sides taken
 * for each other move the zero offset by their difference/√2. Choices of ours: tools made for notching keep within.
 */
const ALONE_AT_MOST = { inset: inches(1 / 2), zeroOffset: inches(1 / 4) };

interface Reading {
  readonly index: number;
  readonly inset: number;
  readonly zeroOffset: number;
}

/**
 * The medians of all observations that agree within 1/16 in, when these are more than half of those that can be true at
 * all; until then, and when they contradict each other, the defaults stand. What a tool cannot have, what only fits with
 * its sides turned round, and what stands alone further than `ALONE_AT_MOST` from the defaults does not count. Never
 * throws: whatever is wrong is named in `problems`.
 */
export function calibrate(observations: readonly Observation[]): Calibration {
  const faults = observations.map(faultIn);
  const readings = observations.map(readingOf).filter(({ index }) => faults[index] === undefined);
  const agreed = largestAgreement(readings);
  const counts = agreed.length * 2 > readings.length && (agreed.length > 1 || agreed.every(isNearUsual));
  const problems = observations.flatMap((_, index) => {
    const message = faults[index] ?? disagreement(index, { agreed, counts, of: readings.length });
    return message ? [{ index, problem: { field: `observations.${index}`, message } }] : [];
  });
  return {
    ...(counts ? middleOf(agreed) : DEFAULTS),
    outliers: problems.map(({ index }) => index),
    problems: problems.map(({ problem }) => problem),
  };
}

const DEFAULTS = {
  inset: DEFAULT_INSET,
  zeroOffset: length(0),
  spread: { inset: length(0), zeroOffset: length(0) },
};

function faultIn(observation: Observation, index: number): string | undefined {
  const { square, start, pocket } = observation;
  const all = [square, start, pocket.width, pocket.height];
  if (!all.every((one) => Number.isSafeInteger(one) && one <= LONGEST)) return 'These are not lengths.';
  if (square <= 0 || pocket.width <= 0 || pocket.height <= 0)
    return 'Square and pocket have to be more than nothing.';
  if (start < 0 || start >= square) return 'The start lies outside the square.';
  const { inset, zeroOffset } = readingOf(observation, index);
  if (inset < -TOLERANCE) return 'No square this small folds to such a pocket.';
  if (isTurned(observation)) return 'It fits with its sides turned round: were width and height swapped?';
  if (inset > LARGEST_INSET) return 'The pocket is far too small for its square.';
  if (Math.abs(zeroOffset) > LARGEST_CORRECTION)
    return 'No ruler is this far off: look at its sides and its start.';
  return undefined;
}

/** Whether only the pocket with its sides turned round gives a zero offset that one observation may be believed for. */
const isTurned = (seen: Observation): boolean =>
  !isNearZero(readingOf(seen, 0)) && isNearZero(readingOf({ ...seen, pocket: turned(seen.pocket) }, 0));

const isNearZero = ({ zeroOffset }: Reading): boolean => Math.abs(zeroOffset) <= ALONE_AT_MOST.zeroOffset;

const isNearUsual = (reading: Reading): boolean =>
  isNearZero(reading) && Math.abs(reading.inset - DEFAULT_INSET) <= ALONE_AT_MOST.inset;

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

function disagreement(
  index: number,
  { agreed, counts, of }: { agreed: readonly Reading[]; counts: boolean; of: number },
): string | undefined {
  if (!counts && of === 1)
    return 'This one alone says something unusual. It counts once a second pocket agrees.';
  if (!counts) return 'This one and the others contradict each other. Measure again, or make one more.';
  if (agreed.some((reading) => reading.index === index)) return undefined;
  return 'This one is off from what the others say. Measure it again.';
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
