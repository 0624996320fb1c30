/**
 * How many distances from the fence a plan needs. A cut can be set by either of the two blocks it makes, so a few sizes
 * that name one side of every cut will do; the commonest is taken first, which need not come to the fewest.
 */

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
