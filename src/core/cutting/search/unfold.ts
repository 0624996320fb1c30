/**
 * Turns packed patterns into the tree of cuts on named pieces, in the caller's lengths. Knows the pattern's encoding and
 * the plan's words.
 */

import { withBorder } from '../border.ts';
import type { CutTree, PlacedPart, Rectangle, UsedPiece } from '../cuts.ts';
import { halvesOf } from '../trimmer/tree.ts';
import type { Bin } from './board.ts';
import type { Job, Stock } from './job.ts';
import { AS_IS, CUT_X, CUT_Y, REST, TURNED } from './nodes.ts';

/** One entry for each piece cut, sheets before offcuts; pieces alike are taken in the order they were given. */
export function unfold(job: Job, bins: readonly Bin[]): UsedPiece[] {
  const taken = new Map<number, number>();
  const inOrder = bins.toSorted(
    (one, other) => one.stock - other.stock || other.pattern.area - one.pattern.area,
  );
  return inOrder.map((bin) => {
    const before = taken.get(bin.stock) ?? 0;
    taken.set(bin.stock, before + 1);
    return unfoldBin(job, bin, nameOf(job.stocks[bin.stock]!, before));
  });
}

function nameOf({ ids }: Stock, taken: number): string {
  let left = taken;
  for (const { id, copies } of ids) {
    if (left < copies) return id;
    left -= copies;
  }
  throw new Error(`invalid bins: more than ${taken} of a stock`);
}

function unfoldBin(job: Job, bin: Bin, piece: string): UsedPiece {
  const stock = job.stocks[bin.stock]!;
  const reading: Reading = { job, nodes: bin.pattern.nodes, at: 0, rectangles: [], leftovers: [] };
  const cuts = readNode(reading, { x: 0, y: 0, width: stock.width, height: stock.height });
  const above = { piece, rectangles: reading.rectangles, leftovers: reading.leftovers, cuts };
  const { below } = stock;
  const whole = scaled(job, { x: 0, y: 0, width: stock.width, height: stock.height + below });
  return withBorder(
    above,
    { ...whole, border: below * job.grid },
    { keepAtLeast: job.keepAtLeast * job.grid },
  );
}

interface Reading {
  readonly job: Job;
  readonly nodes: Int32Array;
  at: number;
  readonly rectangles: PlacedPart[];
  readonly leftovers: Rectangle[];
}

function readNode(reading: Reading, block: Rectangle): CutTree {
  const kind = reading.nodes[reading.at++]!;
  const what = reading.nodes[reading.at++]!;
  if (kind === CUT_X || kind === CUT_Y) return readCut(reading, block, kind === CUT_X ? 'x' : 'y', what);
  if (kind === REST) return readRest(reading, block);
  if (kind !== AS_IS && kind !== TURNED) throw new Error(`invalid node: ${kind}`);
  const leaf = { part: reading.job.parts[what]!.id, turned: kind === TURNED };
  reading.rectangles.push({ part: leaf.part, ...scaled(reading.job, block), turned: leaf.turned });
  return leaf;
}

function readCut(reading: Reading, block: Rectangle, along: 'x' | 'y', first: number): CutTree {
  const at = block[along] + first;
  const [near, far] = halvesOf({ at, along }, block);
  const parts = [readNode(reading, near), readNode(reading, far)] as const;
  return { at: at * reading.job.grid, along, parts };
}

function readRest(reading: Reading, block: Rectangle): CutTree {
  if (Math.min(block.width, block.height) < reading.job.keepAtLeast) return { waste: true };
  reading.leftovers.push(scaled(reading.job, block));
  return { leftover: true };
}

const scaled = ({ grid }: Job, { x, y, width, height }: Rectangle): Rectangle => ({
  x: x * grid,
  y: y * grid,
  width: width * grid,
  height: height * grid,
});
