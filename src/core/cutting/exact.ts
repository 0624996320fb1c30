/**
 * Packs a handful of parts into a few pieces exactly: every set of them that can be cut from a piece, by the smallest
 * rectangles that it can be cut from, and the best choice of disjoint sets. Knows at most `MOST_PARTS` parts at once.
 */
import type { Job } from './job.ts';
import { AS_IS, CUT_X, CUT_Y, type Pattern, REST, TURNED } from './nodes.ts';
import { worth } from './worth.ts';

export const MOST_PARTS = 16;
const MOST_SHAPES = 1 << 17;
const MOST_VISITS = 100_000;

export interface ExactPacker {
  /**
   * The most value of `parts` (one entry for each copy) from the stocks, which are of one paper, with at most `waste`
   * in all: a pattern for each. Undefined where there is none or there are too many ways to count.
   */
  pack(
    stocks: readonly number[],
    parts: readonly number[],
    value: Float64Array,
    waste: number,
  ): Pattern[] | undefined;
  /** Grows with the work done. */
  readonly effort: () => number;
}

/** Trimmers that cannot make every cut are beyond it: then there is none. */
export function exactPacker(job: Job): ExactPacker | undefined {
  const long = Math.max(0, ...job.stocks.flatMap((stock) => [stock.width, stock.height]));
  if (long > job.longestCut) return undefined;
  const work = new Subsets(job);
  return {
    pack: (stocks, parts, value, waste) => work.pack(stocks, parts, value, waste),
    effort: () => work.effort,
  };
}

class Subsets {
  private readonly job: Job;
  private parts: readonly number[] = [];
  private readonly first = new Int32Array((1 << MOST_PARTS) + 1);
  private readonly last = new Int32Array(1 << MOST_PARTS);
  private readonly area = new Float64Array(1 << MOST_PARTS);
  private readonly worthOf = new Float64Array(1 << MOST_PARTS);
  private readonly wide = new Int32Array(MOST_SHAPES);
  private readonly high = new Int32Array(MOST_SHAPES);
  /** Where a shape comes from: two shapes side by side (`CUT_X`) or one above the other, or one part. */
  private readonly how = new Int8Array(MOST_SHAPES);
  private readonly left = new Int32Array(MOST_SHAPES);
  private readonly right = new Int32Array(MOST_SHAPES);
  private shapes = 0;
  private waste = 0;
  effort = 0;
  private widest = 0;
  private highest = 0;

  constructor(job: Job) {
    this.job = job;
  }

  pack(
    stocks: readonly number[],
    parts: readonly number[],
    value: Float64Array,
    waste: number,
  ): Pattern[] | undefined {
    const sizes = stocks.map((stock) => this.job.stocks[stock]!);
    this.parts = parts;
    this.waste = waste;
    this.widest = Math.max(...sizes.map((size) => size.width));
    this.highest = Math.max(...sizes.map((size) => size.height));
    if (!this.gather(this.job.papers[sizes[0]!.paper]!.lies, value)) return undefined;
    return this.choose(stocks)?.map((set, index) => this.pattern(set, stocks[index]!));
  }

  /** The smallest rectangles of every set, smaller sets first. */
  private gather(lies: Uint8Array, value: Float64Array): boolean {
    const all = 1 << this.parts.length;
    this.shapes = 0;
    this.effort += all / 4;
    for (let set = 1; set < all; set += 1) {
      const low = set & -set;
      const part = this.parts[31 - Math.clz32(low)]!;
      this.area[set] = set === low ? this.job.area[part]! : this.area[set ^ low]! + this.area[low]!;
      this.worthOf[set] = set === low ? value[part]! : this.worthOf[set ^ low]! + this.worthOf[low]!;
      this.first[set] = this.last[set] = this.shapes;
      if (set === low) this.addSingle(part, lies[part]!);
      else if (this.area[set]! <= this.widest * this.highest && this.wholeParts(set))
        this.addSplits(set, low);
      this.last[set] = this.shapes;
      if (this.shapes > MOST_SHAPES - 4096) return false;
    }
    return true;
  }

  private wholeParts(set: number): boolean {
    for (let rest = set; rest > 0; rest &= rest - 1) {
      const without = set ^ (rest & -rest);
      if (this.first[without] === this.last[without]) return false;
    }
    return true;
  }

  private addSingle(part: number, lie: number): void {
    const [wide, high] = [this.job.width[part]!, this.job.height[part]!];
    const start = this.shapes;
    this.add(start, wide, high, AS_IS, part, 0);
    if (lie === 2) this.add(start, high, wide, TURNED, part, 0);
  }

  private addSplits(set: number, low: number): void {
    const start = this.shapes;
    const rest = set ^ low;
    for (let some = (rest - 1) & rest; ; some = (some - 1) & rest) {
      this.join(start, low | some, rest ^ some);
      if (some === 0) break;
    }
  }

  private join(start: number, one: number, other: number): void {
    const { wide, high, widest, highest } = this;
    const fromA = this.first[one]!;
    const toA = this.last[one]!;
    const fromB = this.first[other]!;
    const toB = this.last[other]!;
    if (fromA === toA || fromB === toB) return;
    const most = this.area[one]! + this.area[other]! + this.waste;
    this.effort += 1 + (toA - fromA) * (toB - fromB);
    for (let a = fromA; a < toA; a += 1) {
      for (let b = fromB; b < toB; b += 1) {
        const wideBoth = wide[a]! + wide[b]!;
        const highBoth = high[a]! + high[b]!;
        const wider = wide[a]! > wide[b]! ? wide[a]! : wide[b]!;
        const higher = high[a]! > high[b]! ? high[a]! : high[b]!;
        if (wideBoth <= widest && wideBoth * higher <= most) this.add(start, wideBoth, higher, CUT_X, a, b);
        if (highBoth <= highest && wider * highBoth <= most) this.add(start, wider, highBoth, CUT_Y, a, b);
      }
    }
  }

  /** Adds a shape to those from `start` on, unless one of them is as small; drops those that it betters. */
  private add(start: number, wide: number, high: number, how: number, left: number, right: number): void {
    if (wide > this.widest || high > this.highest || this.shapes >= MOST_SHAPES - 1) return;
    for (let at = start; at < this.shapes; at += 1) {
      if (this.wide[at]! <= wide && this.high[at]! <= high) return;
    }
    let to = start;
    for (let at = start; at < this.shapes; at += 1) {
      if (wide <= this.wide[at]! && high <= this.high[at]!) continue;
      if (to !== at) this.move(at, to);
      to += 1;
    }
    this.wide[to] = wide;
    this.high[to] = high;
    this.how[to] = how;
    this.left[to] = left;
    this.right[to] = right;
    this.shapes = to + 1;
  }

  private move(from: number, to: number): void {
    this.wide[to] = this.wide[from]!;
    this.high[to] = this.high[from]!;
    this.how[to] = this.how[from]!;
    this.left[to] = this.left[from]!;
    this.right[to] = this.right[from]!;
  }

  /** Disjoint sets, one for each stock, of most value together; stocks alike take theirs in order of value. */
  private choose(stocks: readonly number[]): number[] | undefined {
    const lists: number[][] = [];
    stocks.forEach((stock, index) => {
      const alike = index > 0 && stocks[index - 1] === stock;
      lists.push(alike ? lists[index - 1]! : this.setsOf(stock));
    });
    if (lists.some((list) => list.length === 0)) return undefined;
    const hopes = lists.map((list) => this.worthOf[list[0]!]!);
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
    this.extend(choice, 0, 0, 0, 0);
    this.effort += choice.visits / 8;
    return choice.best;
  }

  private extend(choice: Choice, index: number, from: number, used: number, sum: number): void {
    const list = choice.lists[index];
    if (!list) {
      if (sum > choice.most) [choice.most, choice.best] = [sum, [...choice.chosen]];
      return;
    }
    const alike = choice.stocks[index] === choice.stocks[index + 1];
    for (let at = from; at < list.length; at += 1) {
      const set = list[at]!;
      if (sum + this.worthOf[set]! + choice.hopes[index + 1]! <= choice.most || choice.visits++ > MOST_VISITS)
        return;
      if ((set & used) !== 0) continue;
      choice.chosen[index] = set;
      this.extend(choice, index + 1, alike ? at + 1 : 0, used | set, sum + this.worthOf[set]!);
    }
  }

  /** The sets that a stock can give with little enough waste, most valuable first. */
  private setsOf(stock: number): number[] {
    const { width, height, area } = this.job.stocks[stock]!;
    const sets: number[] = [];
    for (let set = 1; set < 1 << this.parts.length; set += 1) {
      if (this.area[set]! < area - this.waste) continue;
      for (let at = this.first[set]!; at < this.last[set]!; at += 1) {
        if (this.wide[at]! > width || this.high[at]! > height) continue;
        sets.push(set);
        break;
      }
    }
    return sets.sort((one, other) => this.worthOf[other]! - this.worthOf[one]!);
  }

  private pattern(set: number, index: number): Pattern {
    const stock = this.job.stocks[index]!;
    const writing: Writing = { nodes: [], parts: [], left: 0 };
    let best = -1;
    let bestLeft = -1;
    for (let at = this.first[set]!; at < this.last[set]!; at += 1) {
      const [wide, high] = [this.wide[at]!, this.high[at]!];
      if (wide > stock.width || high > stock.height) continue;
      const left = this.trimmed(wide, high, stock.width, stock.height).most;
      if (left > bestLeft) [best, bestLeft] = [at, left];
    }
    this.write(best, stock.width, stock.height, writing);
    return {
      nodes: Int32Array.from(writing.nodes),
      parts: Int32Array.from(writing.parts),
      area: this.area[set]!,
      left: writing.left,
    };
  }

  /** What trimming a block down to a shape leaves, cutting down its side first or across its end first. */
  private trimmed(
    wide: number,
    high: number,
    width: number,
    height: number,
  ): { most: number; sideFirst: boolean } {
    const keep = this.job.keepAtLeast;
    const value = (w: number, h: number): number => worth({ width: w, height: h }, keep);
    const side = value(width - wide, height) + value(wide, height - high);
    const end = value(width, height - high) + value(width - wide, high);
    return { most: Math.max(side, end), sideFirst: side >= end };
  }

  private write(shape: number, width: number, height: number, writing: Writing): void {
    const [wide, high, how] = [this.wide[shape]!, this.high[shape]!, this.how[shape]!];
    if (wide < width || high < height) {
      const sideFirst =
        high === height || (wide < width && this.trimmed(wide, high, width, height).sideFirst);
      const [kind, at] = sideFirst ? [CUT_X, wide] : [CUT_Y, high];
      const rest = sideFirst ? { width: width - wide, height } : { width, height: height - high };
      writing.nodes.push(kind, at);
      this.write(shape, sideFirst ? wide : width, sideFirst ? height : high, writing);
      writing.nodes.push(REST, 0);
      writing.left += worth(rest, this.job.keepAtLeast);
      return;
    }
    const [left, right] = [this.left[shape]!, this.right[shape]!];
    if (how === AS_IS || how === TURNED) {
      writing.nodes.push(how, left);
      writing.parts.push(left);
      return;
    }
    const at = how === CUT_X ? this.wide[left]! : this.high[left]!;
    writing.nodes.push(how, at);
    this.write(left, how === CUT_X ? at : wide, how === CUT_X ? high : at, writing);
    this.write(right, how === CUT_X ? wide - at : wide, how === CUT_X ? high : high - at, writing);
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

interface Writing {
  readonly nodes: number[];
  readonly parts: number[];
  left: number;
}
