/**
 * Keeps hundreds of thousands of blocks side by side in arrays, and shelves of blocks with a common side in order of the
 * other. Knows nothing of what makes a block good.
 */
import { grown } from '../arrays.ts';

/** A block is a lay (first = -1, second its index) or a join of two (`down`: one below). */
export interface Blocks {
  size: number;
  width: Float64Array;
  height: Float64Array;
  /** Without the prices of the parts in it. */
  value: Float64Array;
  price: Float64Array;
  /** A small random price, different in each run. */
  whim: Float64Array;
  hash: Float64Array;
  rank: Float64Array;
  first: Int32Array;
  second: Int32Array;
  down: Uint8Array;
}

/** Blocks that have one side in common. */
export interface Shelf {
  readonly side: number;
  readonly blocks: number[];
}

export function newBlocks(room: number): Blocks {
  const floats = (): Float64Array => new Float64Array(room);
  return {
    size: 0,
    width: floats(),
    height: floats(),
    value: floats(),
    price: floats(),
    whim: floats(),
    hash: floats(),
    rank: floats(),
    first: new Int32Array(room),
    second: new Int32Array(room),
    down: new Uint8Array(room),
  };
}

/** A place for one more. */
export function addBlock(blocks: Blocks): number {
  if (blocks.size === blocks.width.length) grow(blocks);
  blocks.size += 1;
  return blocks.size - 1;
}

/** Makes room for twice as many. */
function grow(blocks: Blocks): void {
  for (const field of ['width', 'height', 'value', 'price', 'whim', 'hash', 'rank'] as const)
    blocks[field] = grown(blocks[field]);
  blocks.first = grown(blocks.first);
  blocks.second = grown(blocks.second);
  blocks.down = grown(blocks.down);
}

export function copyBlock(from: Blocks, source: number, to: Blocks, target: number): void {
  to.width[target] = from.width[source]!;
  to.height[target] = from.height[source]!;
  to.value[target] = from.value[source]!;
  to.price[target] = from.price[source]!;
  to.whim[target] = from.whim[source]!;
  to.hash[target] = from.hash[source]!;
  to.rank[target] = from.rank[source]!;
  to.first[target] = from.first[source]!;
  to.second[target] = from.second[source]!;
  to.down[target] = from.down[source]!;
}

/** Keeps shelves in order of their common side, and the blocks of a shelf in order of the other. */
export function shelve(shelves: Shelf[], side: number, others: Float64Array, block: number): void {
  const at = placeOf(shelves, side);
  if (shelves[at]?.side !== side) shelves.splice(at, 0, { side, blocks: [] });
  const { blocks } = shelves[at]!;
  let place = blocks.length;
  while (place > 0 && others[blocks[place - 1]!]! > others[block]!) place -= 1;
  blocks.splice(place, 0, block);
}

/** The index of the first shelf whose side is not below `side`. */
export function placeOf(shelves: readonly Shelf[], side: number): number {
  let low = 0;
  let high = shelves.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (shelves[middle]!.side < side) low = middle + 1;
    else high = middle;
  }
  return low;
}
