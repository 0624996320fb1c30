/** Takes one block out of a packed pattern and puts another filling of it in its place. Knows the encoding only. */

import { worth } from '../worth.ts';
import type { Job, Stock } from './job.ts';
import { isCutNode, type Pattern, partsIn, REST, walk } from './nodes.ts';
import type { Chance } from './random.ts';

/** A block of a pattern that is cut further, as the range of its nodes. */
export interface Spot {
  readonly from: number;
  readonly to: number;
  readonly width: number;
  readonly height: number;
  readonly parts: Int32Array;
}

/** One of the cut blocks of a pattern, small or large with equal chance; undefined where there is nothing but one part. */
export function pickSpot(pattern: Pattern, stock: Stock, random: Chance): Spot | undefined {
  const { nodes } = pattern;
  let cuts = 0;
  for (let at = 0; at < nodes.length; at += 2) if (isCutNode(nodes[at]!)) cuts += 1;
  if (cuts === 0) return undefined;
  let chosen = random.below(cuts);
  let found: Spot | undefined;
  walk(nodes, 0, stock.width, stock.height, (from, to, width, height) => {
    if (isCutNode(nodes[from]!) && chosen-- === 0)
      found = { from, to, width, height, parts: partsIn(nodes, from, to) };
  });
  return found;
}

/** The pattern with a new filling of the spot, or none. */
export function graft(
  job: Job,
  stock: Stock,
  pattern: Pattern,
  spot: Spot,
  filling: Pattern | undefined,
): Pattern {
  const inner = filling?.nodes ?? Int32Array.of(REST, 0);
  const nodes = new Int32Array(pattern.nodes.length - (spot.to - spot.from) + inner.length);
  nodes.set(pattern.nodes.subarray(0, spot.from));
  nodes.set(inner, spot.from);
  nodes.set(pattern.nodes.subarray(spot.to), spot.from + inner.length);
  const parts = partsIn(nodes, 0, nodes.length);
  let [area, left] = [0, 0];
  for (const part of parts) area += job.area[part]!;
  walk(nodes, 0, stock.width, stock.height, (at, _, width, height) => {
    if (nodes[at] === REST) left += worth({ width, height }, job.keepAtLeast);
  });
  return { nodes, parts, area, left };
}
