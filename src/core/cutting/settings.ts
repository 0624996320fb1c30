/**
 * How many distances from the fence a plan needs. A cut can be set by either of the two blocks it makes, so a few sizes
 * that name one side of every cut will do; the commonest is taken first, which need not come to the fewest.
 */
import type { Bin } from './board.ts';
import type { Job } from './job.ts';
import { CUT_X, CUT_Y, walk } from './nodes.ts';

/** The settings of some bins in grid units, the one used for most cuts first. */
export function settingsOf(job: Job, bins: readonly Bin[]): number[] {
  const sizes: [number, number][] = [];
  for (const { stock, pattern } of bins) {
    const { nodes } = pattern;
    walk(nodes, 0, job.stocks[stock]!.width, job.stocks[stock]!.height, (from, _, width, height) => {
      if (nodes[from] === CUT_X) sizes.push([nodes[from + 1]!, width - nodes[from + 1]!]);
      if (nodes[from] === CUT_Y) sizes.push([nodes[from + 1]!, height - nodes[from + 1]!]);
    });
  }
  return fewestSettings(sizes);
}

/** Sizes that hit every pair, by taking the commonest of those not yet hit until none is left. */
export function fewestSettings(pairs: readonly (readonly [number, number])[]): number[] {
  const chosen: number[] = [];
  let left = pairs;
  while (left.length > 0) {
    const counts = new Map<number, number>();
    for (const [one, other] of left) {
      counts.set(one, (counts.get(one) ?? 0) + 1);
      if (other !== one) counts.set(other, (counts.get(other) ?? 0) + 1);
    }
    let best = left[0]![0];
    for (const [size, count] of counts) {
      const most = counts.get(best)!;
      if (count > most || (count === most && size < best)) best = size;
    }
    chosen.push(best);
    left = left.filter(([one, other]) => one !== best && other !== best);
  }
  return chosen;
}
