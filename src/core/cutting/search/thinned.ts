/** Leaves parts out of a pattern. Knows the encoding; decides nothing. */
import type { Job, Stock } from './job.ts';
import { isPartNode, type Pattern, REST, readPattern } from './nodes.ts';

/** The pattern without what `available` does not hold; what it does hold is taken out of it. */
export function thinned(job: Job, stock: Stock, pattern: Pattern, available: Int32Array): Pattern {
  const nodes = pattern.nodes.slice();
  for (let at = 0; at < nodes.length; at += 2) {
    if (!isPartNode(nodes[at]!)) continue;
    const part = nodes[at + 1]!;
    if (available[part]! > 0) available[part]! -= 1;
    else nodes.fill(REST, at, at + 2);
  }
  return readPattern(job, stock, nodes);
}
