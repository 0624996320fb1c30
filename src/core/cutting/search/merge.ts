/**
 * Packs a few pieces almost without waste: parts are merged, two blocks at a time, into every block that wastes no more
 * than allowed, and disjoint blocks that fill a piece each are chosen. Knows at most `MOST_PARTS` parts at once.
 */

import { type Assembly, join, type Lay } from '../one-piece/unlimited.ts';
import { patternOf } from './assembled.ts';
import type { Job, Stock } from './job.ts';
import { AS_IS, CUT_X, CUT_Y, type Pattern, TURNED } from './nodes.ts';

// A set of parts is the bits of one number, hence 30; the others are untuned, taken as reasonable.
export const MOST_PARTS = 30;
const MOST_BLOCKS = 16_000;
const MOST_PAIRS = 400_000;
const MOST_VISITS = 20_000;
const BUCKETS = 1024;
const HASHES = 1 << 14;
/** Shares of the waste allowed that are tried in turn: with little, the blocks are few and large ones come up soon. */
const SHARES = [0.01, 0.05, 0.2, 1];

/** A trimmer that cannot make every cut is beyond it: then there is none. */
export function merger(job: Job): Merger | undefined {
  const long = Math.max(0, ...job.stocks.flatMap((stock) => [stock.width, stock.height]));
  return long > job.longestCut ? undefined : new Merger(job);
}

export class Merger {
  /** Grows with the work done. */
  effort = 0;
  private readonly job: Job;
  private parts: readonly number[] = [];
  private count = 0;
  private pairs = 0;
  private waste = 0;
  private widest = 0;
  private highest = 0;
  private narrowest = 0;
  private step = 1;
  private readonly wide = new Int32Array(MOST_BLOCKS);
  private readonly high = new Int32Array(MOST_BLOCKS);
  /** The parts of a block, one bit each. */
  private readonly set = new Int32Array(MOST_BLOCKS);
  private readonly area = new Float64Array(MOST_BLOCKS);
  private readonly values = new Float64Array(MOST_BLOCKS);
  /** Two blocks side by side (`CUT_X`), one above the other, or one part. */
  private readonly how = new Int8Array(MOST_BLOCKS);
  private readonly left = new Int32Array(MOST_BLOCKS);
  private readonly right = new Int32Array(MOST_BLOCKS);
  /** Blocks by about their height and width, and by their set: the last one, and each one's predecessor. */
  private readonly atHeight = new Int32Array(BUCKETS);
  private readonly atWidth = new Int32Array(BUCKETS);
  private readonly ofSet = new Int32Array(HASHES);
  private readonly sameHeight = new Int32Array(MOST_BLOCKS);
  private readonly sameWidth = new Int32Array(MOST_BLOCKS);
  private readonly sameHash = new Int32Array(MOST_BLOCKS);

  constructor(job: Job) {
    this.job = job;
  }

  /**
   * Patterns for the stocks, which are of one paper, from `parts` (one entry for each copy), wasting at most `waste`
   * each: for all of them at once if that can be found, with most value; else for one after the other, as far as that
   * goes. Undefined where it goes nowhere.
   */
  pack(
    stocks: readonly number[],
    parts: readonly number[],
    value: Float64Array,
    waste: number,
  ): (Pattern | undefined)[] | undefined {
    const patterns: (Pattern | undefined)[] = stocks.map(() => undefined);
    let left = [...stocks.keys()];
    this.parts = parts;
    while (left.length > 0 && this.parts.length > 0) {
      const blocks = this.blocks(
        left.map((index) => stocks[index]!),
        value,
        waste,
      );
      if (!blocks) break;
      let used = 0;
      left = left.filter((index, at) => {
        const block = blocks[at]!;
        if (block < 0) return true;
        patterns[index] = this.pattern(block, this.job.stocks[stocks[index]!]!);
        used |= this.set[block]!;
        return false;
      });
      this.parts = this.parts.filter((_, bit) => (used & (1 << bit)) === 0);
    }
    return patterns.some((pattern) => pattern) ? patterns : undefined;
  }

  /** A block for each stock, or for one of them and -1 for the others; the last one may try with all the waste. */
  private blocks(stocks: readonly number[], value: Float64Array, waste: number): number[] | undefined {
    const sizes = stocks.map((stock) => this.job.stocks[stock]!);
    const { lies } = this.job.papers[sizes[0]!.paper]!;
    this.widest = Math.max(...sizes.map((size) => size.width));
    this.highest = Math.max(...sizes.map((size) => size.height));
    this.step = Math.ceil((Math.max(this.widest, this.highest) + 1) / BUCKETS);
    this.narrowest = Math.min(
      ...this.parts.map((part) => Math.min(this.job.width[part]!, this.job.height[part]!)),
    );
    for (const share of SHARES) {
      const complete = this.merge(lies, value, waste * share);
      const blocks = this.choose(stocks);
      if (blocks && (stocks.length > 1 || !complete || share === 1)) return blocks;
      if (!complete) return blocks;
    }
    return undefined;
  }

  /** Makes all blocks that waste little enough, small ones first; false where they became too many. */
  private merge(lies: Uint8Array, value: Float64Array, waste: number): boolean {
    this.waste = waste;
    this.count = this.pairs = 0;
    this.atHeight.fill(-1);
    this.atWidth.fill(-1);
    this.ofSet.fill(-1);
    this.parts.forEach((part, bit) => {
      const [wide, high] = [this.job.width[part]!, this.job.height[part]!];
      const [set, area] = [1 << bit, this.job.area[part]!];
      this.add(wide, high, set, area, value[part]!, AS_IS, part, 0);
      if (lies[part] === 2) this.add(high, wide, set, area, value[part]!, TURNED, part, 0);
    });
    for (let block = 0; block < this.count; block += 1) {
      if (this.pairs > MOST_PAIRS || this.count >= MOST_BLOCKS) break;
      this.joinAlong(block, false);
      this.joinAlong(block, true);
      this.enlist(block);
    }
    this.effort += this.pairs + 10 * this.count + BUCKETS;
    return this.pairs <= MOST_PAIRS && this.count < MOST_BLOCKS;
  }

  private enlist(block: number): void {
    const height = Math.floor(this.high[block]! / this.step);
    const width = Math.floor(this.wide[block]! / this.step);
    this.sameHeight[block] = this.atHeight[height]!;
    this.atHeight[height] = block;
    this.sameWidth[block] = this.atWidth[width]!;
    this.atWidth[width] = block;
  }

  /** With all blocks before it that stand beside it, or above it (`upwards`), without too much waste. */
  private joinAlong(one: number, upwards: boolean): void {
    const { area, set } = this;
    const [long, deep] = upwards ? [this.high, this.wide] : [this.wide, this.high];
    const [longest, deepest] = upwards ? [this.highest, this.widest] : [this.widest, this.highest];
    const [lists, before] = upwards ? [this.atWidth, this.sameWidth] : [this.atHeight, this.sameHeight];
    const [oneLong, oneDeep, oneSet] = [long[one]!, deep[one]!, set[one]!];
    const spare = this.waste + area[one]! - oneLong * oneDeep;
    const first = Math.max(0, Math.floor((oneDeep - spare / this.narrowest) / this.step));
    const last = Math.min(BUCKETS - 1, Math.floor(Math.min(deepest, oneDeep + spare / oneLong) / this.step));
    for (let bucket = first; bucket <= last; bucket += 1) {
      for (let other = lists[bucket]!; other >= 0; other = before[other]!) {
        this.pairs += 1;
        if ((set[other]! & oneSet) !== 0) continue;
        const both = oneLong + long[other]!;
        const most = Math.max(oneDeep, deep[other]!);
        if (both > longest || both * most - area[one]! - area[other]! > this.waste) continue;
        if (upwards) this.addPair(most, both, CUT_Y, one, other);
        else this.addPair(both, most, CUT_X, one, other);
      }
    }
  }

  private addPair(wide: number, high: number, how: number, one: number, other: number): void {
    const area = this.area[one]! + this.area[other]!;
    const value = this.values[one]! + this.values[other]!;
    this.add(wide, high, this.set[one]! | this.set[other]!, area, value, how, one, other);
  }

  /** Adds a block unless one of the same parts is as small. */
  private add(
    wide: number,
    high: number,
    set: number,
    area: number,
    value: number,
    how: number,
    left: number,
    right: number,
  ): void {
    if (wide > this.widest || high > this.highest || this.count >= MOST_BLOCKS) return;
    const hash = (Math.imul(set, 0x9e3779b1) >>> 18) & (HASHES - 1);
    for (let at = this.ofSet[hash]!; at >= 0; at = this.sameHash[at]!) {
      if (this.set[at] === set && this.wide[at]! <= wide && this.high[at]! <= high) return;
    }
    const block = this.count++;
    this.wide[block] = wide;
    this.high[block] = high;
    this.set[block] = set;
    this.area[block] = area;
    this.values[block] = value;
    this.how[block] = how;
    this.left[block] = left;
    this.right[block] = right;
    this.sameHash[block] = this.ofSet[hash]!;
    this.ofSet[hash] = block;
  }

  /** Disjoint blocks, one for each stock, of most value together; or the most valuable block for one, -1 for the rest. */
  private choose(stocks: readonly number[]): number[] | undefined {
    const lists: number[][] = [];
    stocks.forEach((stock, index) => {
      const alike = index > 0 && stocks[index - 1] === stock;
      lists.push(alike ? lists[index - 1]! : this.blocksFor(this.job.stocks[stock]!));
    });
    const some = lists.findIndex((list) => list.length > 0);
    if (some < 0) return undefined;
    const hopes = lists.map((list) => (list.length > 0 ? this.values[list[0]!]! : -Infinity));
    for (let index = hopes.length - 2; index >= 0; index -= 1) hopes[index]! += hopes[index + 1]!;
    const choice: Choice = {
      stocks,
      lists,
      hopes: [...hopes, 0],
      chosen: [],
      best: undefined,
      most: 0,
      visits: 0,
    };
    if (hopes[0]! > 0) this.extend(choice, 0, 0, 0, 0);
    this.effort += choice.visits;
    return choice.best ?? lists.map((list, index) => (index === some ? list[0]! : -1));
  }

  private extend(choice: Choice, index: number, from: number, used: number, sum: number): void {
    const list = choice.lists[index];
    if (!list) {
      choice.most = sum;
      choice.best = [...choice.chosen];
      return;
    }
    const alike = choice.stocks[index] === choice.stocks[index + 1];
    for (let at = from; at < list.length; at += 1) {
      const block = list[at]!;
      const hope = sum + this.values[block]! + choice.hopes[index + 1]!;
      if (hope <= choice.most || choice.visits++ > MOST_VISITS) return;
      if ((this.set[block]! & used) !== 0) continue;
      choice.chosen[index] = block;
      this.extend(choice, index + 1, alike ? at + 1 : 0, used | this.set[block]!, sum + this.values[block]!);
    }
  }

  /** The blocks that fill a stock with little enough waste, most valuable first. */
  private blocksFor({ width, height, area }: Stock): number[] {
    const blocks: number[] = [];
    for (let at = 0; at < this.count; at += 1) {
      if (this.area[at]! >= area - this.waste && this.wide[at]! <= width && this.high[at]! <= height)
        blocks.push(at);
    }
    return blocks.sort((one, other) => this.values[other]! - this.values[one]!);
  }

  private pattern(block: number, stock: Stock): Pattern {
    const lays: Lay[] = [];
    return patternOf(this.job, stock, this.assembly(block, lays), lays);
  }

  private assembly(block: number, lays: Lay[]): Assembly {
    const [how, left, right] = [this.how[block]!, this.left[block]!, this.right[block]!];
    if (how === CUT_X || how === CUT_Y)
      return join(how === CUT_X ? 'x' : 'y', this.assembly(left, lays), this.assembly(right, lays));
    const [width, height] = [this.wide[block]!, this.high[block]!];
    lays.push({ part: left, turned: how === TURNED, width, height, value: this.values[block]! });
    return { width, height, lay: lays.length - 1 };
  }
}

interface Choice {
  readonly stocks: readonly number[];
  readonly lists: readonly number[][];
  /** The most value that the stocks from here on could hold. */
  readonly hopes: readonly number[];
  readonly chosen: number[];
  best: number[] | undefined;
  most: number;
  visits: number;
}
