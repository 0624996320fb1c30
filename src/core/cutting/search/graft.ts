/** Takes one block out of a packed pattern and puts another filling of it in its place. Knows the encoding only. */
import type { Stock } from './job.ts';
import { isCutNode, type Pattern, REST, walk } from './nodes.ts';
import type { Chance } from './random.ts';

/** A block of a pattern that is cut further, as the range of its nodes. */
export interface Spot {
  readonly from: number;
  readonly to: number;
  readonly width: number;
  readonly height: number;
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
    if (isCutNode(nodes[from]!) && chosen-- === 0) found = { from, to, width, height };
  });
  return found;
}

/** The pattern's nodes with a new filling of the spot, or none. */
export function graft({ nodes: old }: Pattern, { from, to }: Spot, filling: Pattern | undefined): Int32Array {
  const inner = filling?.nodes ?? Int32Array.of(REST, 0);
  const nodes = new Int32Array(old.length - (to - from) + inner.length);
  nodes.set(old.subarray(0, from));
  nodes.set(inner, from);
  nodes.set(old.subarray(to), from + inner.length);
  return nodes;
}
