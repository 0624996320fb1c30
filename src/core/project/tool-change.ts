/**
 * When a tool seems to have changed: where its pockets, in the order they were measured, fall into two runs that say
 * different things. Knows no page and moves no value.
 */
import { insetFrom, zeroOffsetFrom } from '#core/envelope/square.ts';
import { inches, type Length, roundLength } from '#shared/length.ts';
import type { Evidence } from './learning.ts';

/** What one pocket says of its tool. */
export interface ToolReading {
  readonly inset: Length;
  readonly zeroOffset: Length;
}

export interface ToolChange {
  /** The number of the first pocket after it, counted from 0, and when the last one before it was written down. */
  readonly first: number;
  readonly after: string;
  readonly was: ToolReading;
  readonly is: ToolReading;
}

/** On either side of a change there are so many pockets at least. */
const RUN = 3;
/** The middle values differ by more than this, a graduation of a common ruler… */
const LEAST = inches(1 / 32);
/** …and by more than so many times what pockets of one run differ from its middle on average. */
const ABOVE_NOISE = 4;

export const readingOf = ({ square, start, pocket }: Omit<Evidence, 'alike'>): ToolReading => ({
  inset: roundLength(insetFrom(square, pocket.width, pocket.height), 'nearest'),
  zeroOffset: roundLength(zeroOffsetFrom(square, start, pocket.width, pocket.height), 'nearest'),
});

/**
 * The one change that explains the pockets best: of all ways to part them into two runs, the one with the
 * least absolute deviation from the runs' medians (a single change point by least absolute deviations; Bai, "Estimation of
 * multiple-regime regressions with least absolutes deviation", 1998, from memory). Undefined where a run has fewer than three or the medians of inset
 * and zero offset both lie within 1/32 in or within four times the mean deviation.
 */
export function changeIn(observations: readonly Evidence[]): ToolChange | undefined {
  const readings = observations.map(readingOf);
  const splits = readings.slice(1).map((_, index) => {
    const [before, after] = [readings.slice(0, index + 1), readings.slice(index + 1)];
    return { first: index + 1, before, after, off: deviation(before) + deviation(after) };
  });
  const [best] = splits.sort((one, other) => one.off - other.off || one.first - other.first);
  if (!best || Math.min(best.before.length, best.after.length) < RUN) return undefined;
  const [was, is] = [middleOf(best.before), middleOf(best.after)];
  const differs = NAMES.some((name) => {
    const noise = (spread(best.before, name) + spread(best.after, name)) / readings.length;
    return Math.abs(is[name] - was[name]) > Math.max(LEAST, ABOVE_NOISE * noise);
  });
  return differs ? { first: best.first, after: observations[best.first - 1]!.at, was, is } : undefined;
}

const NAMES = ['inset', 'zeroOffset'] as const;

const deviation = (run: readonly ToolReading[]): number => spread(run, 'inset') + spread(run, 'zeroOffset');

/** The sum of distances from the median. */
function spread(run: readonly ToolReading[], name: keyof ToolReading): number {
  const middle = middleOf(run)[name];
  return run.reduce((sum, reading) => sum + Math.abs(reading[name] - middle), 0);
}

const middleOf = (run: readonly ToolReading[]): ToolReading => ({
  inset: median(run.map(({ inset }) => inset)),
  zeroOffset: median(run.map(({ zeroOffset }) => zeroOffset)),
});

/** The upper one of two in the middle. */
const median = (values: readonly Length[]): Length =>
  [...values].sort((one, other) => one - other)[values.length >> 1]!;
