/**
 * A packed tree of cuts: two numbers a node in prefix order, its kind and the position of a cut within its block, or the
 * part that the block becomes. Knows the encoding only.
 */

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

/** The parts among the nodes of a range. */
export function partsIn(nodes: Int32Array, from: number, to: number): Int32Array {
  let count = 0;
  for (let at = from; at < to; at += 2) if (nodes[at] === AS_IS || nodes[at] === TURNED) count += 1;
  const parts = new Int32Array(count);
  for (let at = from; at < to; at += 2)
    if (nodes[at] === AS_IS || nodes[at] === TURNED) parts[--count] = nodes[at + 1]!;
  return parts;
}
