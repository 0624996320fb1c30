/**
 * A first plan in next to no time, however many kinds there are: into the corner of each block goes the largest part that
 * fits, and what remains of the block is filled likewise. Knows nothing of goals; leaves pinned parts to others.
 */
import type { Sides } from '../order.ts';
import type { Board } from './board.ts';
import { isFree, type Stock } from './job.ts';
import { AS_IS, CUT_X, CUT_Y, REST, readPattern, TURNED } from './nodes.ts';

/** Puts parts on the board until none fits: offcuts first, then sheets, the largest first. */
export function placeQuickly(board: Board): void {
  const { stocks } = board.job;
  const order = [...stocks.keys()].filter((stock) => stocks[stock]!.border === 0);
  order.sort(
    (one, other) =>
      Number(stocks[one]!.sheet) - Number(stocks[other]!.sheet) || stocks[other]!.area - stocks[one]!.area,
  );
  const fillers = new Map<number, QuickFiller>();
  for (const stock of order) {
    const { paper } = stocks[stock]!;
    const filler = fillers.get(paper) ?? new QuickFiller(board, paper);
    fillers.set(paper, filler);
    while (board.unplaced > 0 && board.shelf[stock]! > 0) {
      const nodes = filler.fill(stocks[stock]!);
      if (!nodes) break;
      const pattern = readPattern(board.job, stocks[stock]!, nodes);
      board.put({ stock, pattern, lost: board.lossOf(stock, pattern) });
    }
  }
}

/** A part as it lies in the corner of a block, and which way the first cut of the block goes. */
interface Lay extends Sides {
  readonly part: number;
  readonly turned: boolean;
  readonly along: 'x' | 'y';
}

/** The parts of one paper under a tree over them, largest first, whose nodes know the least sides beneath them. */
class QuickFiller {
  private readonly board: Board;
  private readonly lies: Uint8Array;
  private readonly parts: readonly number[];
  private readonly leaves: number;
  private readonly shorter: Float64Array;
  private readonly longer: Float64Array;
  private left: Int32Array = new Int32Array(0);
  private nodes: number[] = [];

  constructor(board: Board, paper: number) {
    const { width, height, area, papers, parts } = board.job;
    this.board = board;
    this.lies = papers[paper]!.lies;
    this.parts = [...parts.keys()]
      .filter((part) => isFree(this.lies[part]!))
      .sort((one, other) => area[other]! - area[one]!);
    this.leaves = 2 ** Math.ceil(Math.log2(Math.max(1, this.parts.length)));
    this.shorter = new Float64Array(2 * this.leaves).fill(Number.POSITIVE_INFINITY);
    this.longer = this.shorter.slice();
    for (const [leaf, part] of this.parts.entries()) {
      this.shorter[this.leaves + leaf] = Math.min(width[part]!, height[part]!);
      this.longer[this.leaves + leaf] = Math.max(width[part]!, height[part]!);
    }
    for (let node = this.leaves - 1; node > 0; node -= 1) this.renew(node);
  }

  /** The nodes of a filled stock; undefined where nothing fits. */
  fill(stock: Stock): Int32Array | undefined {
    this.left = this.board.allowed(stock.paper).slice();
    this.nodes = [];
    this.fillBlock(stock.width, stock.height);
    return this.nodes[0] === REST ? undefined : Int32Array.from(this.nodes);
  }

  private fillBlock(width: number, height: number): void {
    const lay = this.largestIn(1, width, height);
    if (!lay) {
      this.nodes.push(REST, 0);
      return;
    }
    this.left[lay.part]! -= 1;
    const [beside, above] = [width - lay.width, height - lay.height];
    const [cutsBeside, cutsAbove] = [[CUT_X, lay.width] as const, [CUT_Y, lay.height] as const];
    const acrossFirst = lay.along === 'x';
    if (acrossFirst && beside > 0) this.nodes.push(...cutsBeside);
    if (above > 0) this.nodes.push(...cutsAbove);
    if (!acrossFirst && beside > 0) this.nodes.push(...cutsBeside);
    this.nodes.push(lay.turned ? TURNED : AS_IS, lay.part);
    if (!acrossFirst && beside > 0) this.fillBlock(beside, lay.height);
    if (above > 0) this.fillBlock(acrossFirst ? lay.width : width, above);
    if (acrossFirst && beside > 0) this.fillBlock(beside, height);
  }

  private largestIn(node: number, width: number, height: number): Lay | undefined {
    if (this.shorter[node]! > Math.min(width, height) || this.longer[node]! > Math.max(width, height))
      return undefined;
    if (node >= this.leaves) return this.layOf(node, width, height);
    return this.largestIn(2 * node, width, height) ?? this.largestIn(2 * node + 1, width, height);
  }

  private layOf(node: number, width: number, height: number): Lay | undefined {
    const part = this.parts[node - this.leaves]!;
    if (this.board.pool[part] === 0) this.drop(node);
    if (this.left[part]! <= 0) return undefined;
    const [wide, high] = [this.board.job.width[part]!, this.board.job.height[part]!];
    const asIs = this.firstCut({ width, height }, { width: wide, height: high });
    if (asIs) return { part, turned: false, width: wide, height: high, along: asIs };
    const turned = this.lies[part] === 2 && this.firstCut({ width, height }, { width: high, height: wide });
    return turned ? { part, turned: true, width: high, height: wide, along: turned } : undefined;
  }

  /** Of the ways that the trimmer can cut, the one that leaves more in one block; undefined where there is none. */
  private firstCut(block: Sides, { width, height }: Sides): 'x' | 'y' | undefined {
    const [beside, above] = [block.width - width, block.height - height];
    if (beside < 0 || above < 0) return undefined;
    const { longestCut } = this.board.job;
    const can = (cut: number, length: number): boolean => cut === 0 || length <= longestCut;
    const x = can(beside, block.height) && can(above, width);
    const y = can(above, block.width) && can(beside, height);
    if (x && y) return beside * block.height > above * block.width ? 'x' : 'y';
    return x ? 'x' : y ? 'y' : undefined;
  }

  private drop(leaf: number): void {
    this.shorter[leaf] = Number.POSITIVE_INFINITY;
    this.longer[leaf] = Number.POSITIVE_INFINITY;
    for (let node = leaf >> 1; node > 0; node >>= 1) this.renew(node);
  }

  private renew(node: number): void {
    this.shorter[node] = Math.min(this.shorter[2 * node]!, this.shorter[2 * node + 1]!);
    this.longer[node] = Math.min(this.longer[2 * node]!, this.longer[2 * node + 1]!);
  }
}
