/**
 * A packed tree of cuts: two numbers a node in prefix order, its kind and the position of a cut within its block, or the
 * part that the block becomes. Knows the encoding, and what a whole tree comes to.
 */
import { worth } from '../worth.ts';
import type { Job, Stock } from './job.ts';

/** Kinds of node; a cut is followed by the nodes of its two blocks. */
export const REST = 0;
export const AS_IS = 1;
export const TURNED = 2;
export const CUT_X = 3;
export const CUT_Y = 4;

/** How one block is cut, in grid units. */
export interface Pattern {
  /** One entry for each copy placed. */
  readonly parts: Int32Array;
  readonly nodes: Int32Array;
  readonly area: number;
  /** Worth of what is left. */
  readonly left: number;
}

export const isCutNode = (kind: number): boolean => kind === CUT_X || kind === CUT_Y;

export const isPartNode = (kind: number): boolean => kind === AS_IS || kind === TURNED;

type Visit = (from: number, to: number, width: number, height: number) => void;

/** Visits every node, inner ones first, with the range of its nodes and the size of its block; returns where it ends. */
export function walk(nodes: Int32Array, from: number, width: number, height: number, visit: Visit): number {
  const kind = nodes[from]!;
  const at = nodes[from + 1]!;
  let to = from + 2;
  if (kind === CUT_X) {
    to = walk(nodes, to, at, height, visit);
    to = walk(nodes, to, width - at, height, visit);
  } else if (kind === CUT_Y) {
    to = walk(nodes, to, width, at, visit);
    to = walk(nodes, to, width, height - at, visit);
  }
  visit(from, to, width, height);
  return to;
}

/** What these nodes make of a block of so much width and height. */
export function readPattern(
  { area, keepAtLeast }: Job,
  { width, height }: Pick<Stock, 'width' | 'height'>,
  nodes: Int32Array,
): Pattern {
  const found = new Int32Array(nodes.length / 2);
  let [count, placed, left] = [0, 0, 0];
  walk(nodes, 0, width, height, (at, _, wide, high) => {
    if (nodes[at] === REST) left += worth({ width: wide, height: high }, keepAtLeast);
    if (!isPartNode(nodes[at]!)) return;
    found[count++] = nodes[at + 1]!;
    placed += area[nodes[at + 1]!]!;
  });
  return { nodes, parts: found.slice(0, count), area: placed, left };
}
