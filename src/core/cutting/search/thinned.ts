/** Leaves parts out of a pattern. Knows the encoding; decides nothing. */

import { worth } from '../worth.ts';
import type { Job, Stock } from './job.ts';
import { AS_IS, type Pattern, REST, TURNED, walk } from './nodes.ts';

/** The pattern without what `available` does not hold; what it does hold is taken out of it. */
export function thinned(
  job: Job,
  { width, height }: Stock,
  pattern: Pattern,
  available: Int32Array,
): Pattern {
  const nodes = pattern.nodes.slice();
  const parts: number[] = [];
  let [area, left] = [0, 0];
  walk(nodes, 0, width, height, (at, _, wide, high) => {
    const part = nodes[at + 1]!;
    const placed = nodes[at] === AS_IS || nodes[at] === TURNED;
    if (placed && available[part]! > 0) {
      available[part]! -= 1;
      parts.push(part);
      area += job.area[part]!;
      return;
    }
    if (placed) nodes.fill(REST, at, at + 2);
    if (nodes[at] === REST) left += worth({ width: wide, height: high }, job.keepAtLeast);
  });
  return { nodes, parts: Int32Array.from(parts), area, left };
}
