/**
 * The state of a search: which pieces are cut and how, what is still to be placed, what is still on the shelf, and the
 * sums that the goals are made of. Knows the rules of matching; decides nothing.
 */

import { worth } from '../worth.ts';
import { graft, type Spot } from './graft.ts';
import type { Job, Matching, Stock } from './job.ts';
import { type Pattern, readPattern } from './nodes.ts';
import { frame } from './pins.ts';
import type { Chance } from './random.ts';
import { StripFiller } from './strips.ts';

export interface Bin {
  readonly stock: number;
  readonly pattern: Pattern;
  /** What this bin adds to the third goal. */
  readonly lost: number;
}

export type Spare = 'worth' | 'offcutArea';

/** Breaks ties between plans that use up the same area of offcuts. */
const TIE = 1e-7;

/** What it is worth less its border, which comes off in one length: what is lost of it must show. */
function worthAbove({ width, height, below }: Stock, keepAtLeast: number): number {
  const whole = worth({ width, height: height + below }, keepAtLeast);
  return whole - worth({ width, height: below }, keepAtLeast);
}

export class Board {
  readonly job: Job;
  readonly bins: Bin[] = [];
  /** Copies of each part not placed. */
  readonly pool: Int32Array;
  /** Copies of each stock not used. */
  readonly shelf: Int32Array;
  unplaced: number;
  sheetArea = 0;
  lost = 0;
  private readonly filler: StripFiller;
  private readonly random: Chance;
  private readonly spare: Spare;
  private readonly value: readonly number[];
  /** Placed copies by design and part; kept only where parts have to match. */
  private readonly placed: Int32Array[];
  private readonly allowance: Int32Array;
  private readonly design: readonly number[];

  constructor(job: Job, random: Chance, spare: Spare) {
    this.job = job;
    this.filler = new StripFiller(job, random);
    this.random = random;
    this.spare = spare;
    this.pool = Int32Array.from(job.copies);
    this.shelf = Int32Array.from(job.stocks, (stock) => stock.copies);
    this.unplaced = job.copies.reduce((sum, one) => sum + one, 0);
    this.value = job.stocks.map((stock) => worthAbove(stock, job.keepAtLeast));
    const designs = [...new Set(job.papers.map((paper) => paper.design))];
    this.design = job.papers.map((paper) => designs.indexOf(paper.design));
    this.placed = job.matchings.length > 0 ? designs.map(() => new Int32Array(job.copies.length)) : [];
    this.allowance = new Int32Array(job.copies.length);
  }

  /** Fills a stock from the pool without putting it on the board, so that the pool would do for it so many `times`. */
  fill(stock: number, value: Float64Array, noise: number, times = 1): Bin | undefined {
    const piece = this.job.stocks[stock]!;
    const free = this.allowed(piece.paper);
    const allowed = times === 1 ? free : free.map((copies) => Math.floor(copies / times));
    if (this.placed.length > 0 && this.random.next() < noise) this.holdBack();
    const { pinned } = this.job.papers[piece.paper]!;
    const pinning = { available: allowed, random: this.random, lively: noise > 0 };
    const pins = pinned ? frame(this.job, piece, pinning) : undefined;
    const pattern = this.filler.fill(piece, { available: allowed, value, noise, frame: pins });
    return pattern && { stock, pattern, lost: this.lossOf(stock, pattern) };
  }

  /** The bin with one of its blocks emptied, and where that block is now. */
  hollow(bin: Bin, spot: Spot): { bin: Bin; spot: Spot } {
    return { bin: this.grafted(bin, spot, undefined), spot: { ...spot, to: spot.from + 2 } };
  }

  /** The bin, which is on the board, with its empty block filled from the pool. */
  refill(bin: Bin, spot: Spot, value: Float64Array, noise: number): Bin {
    const { paper } = this.job.stocks[bin.stock]!;
    const block = { width: spot.width, height: spot.height, paper };
    const filling = this.filler.fill(block, { available: this.allowed(paper), value, noise });
    return filling ? this.grafted(bin, spot, filling) : bin;
  }

  private grafted(bin: Bin, spot: Spot, filling: Pattern | undefined): Bin {
    const nodes = graft(bin.pattern, spot, filling);
    const pattern = readPattern(this.job, this.job.stocks[bin.stock]!, nodes);
    return { stock: bin.stock, pattern, lost: this.lossOf(bin.stock, pattern) };
  }

  put(bin: Bin): void {
    this.bins.push(bin);
    this.count(bin, 1);
  }

  /** Takes the bin at `index` off the board; the last bin moves into its place. */
  remove(index: number): Bin {
    const bin = this.bins[index]!;
    const last = this.bins.pop()!;
    if (index < this.bins.length) this.bins[index] = last;
    this.count(bin, -1);
    return bin;
  }

  /** Replaces everything on the board. */
  reset(bins: readonly Bin[]): void {
    while (this.bins.length > 0) this.remove(this.bins.length - 1);
    for (const bin of bins) this.put(bin);
  }

  /** Whether the pool holds all parts of the bin's pattern, and the shelf its stock. */
  possible({ stock, pattern }: Bin): boolean {
    return this.shelf[stock]! > 0 && this.holds(pattern.parts, this.job.stocks[stock]!.paper);
  }

  /** Whether these parts, one entry for each copy, may still be placed on this paper. */
  holds(parts: Int32Array, paper: number): boolean {
    const left = this.allowed(paper);
    let enough = true;
    for (const part of parts) if (--left[part]! < 0) enough = false;
    for (const part of parts) left[part]! += 1;
    return enough;
  }

  lossOf(stock: number, pattern: Pattern): number {
    const { sheet, area } = this.job.stocks[stock]!;
    const lost = this.value[stock]! - pattern.left;
    return this.spare === 'worth' ? lost : (sheet ? 0 : area) + lost * TIE;
  }

  /** Allows a few sets only, so that parts that fill a piece by themselves leave room for those that match them. */
  private holdBack(): void {
    for (const { parts } of this.job.matchings) {
      const sets = 1 + this.random.below(this.job.copies[parts.at(-1)!]!);
      for (const part of parts) this.allowance[part] = Math.min(this.allowance[part]!, sets);
    }
  }

  private count(bin: Bin, sign: 1 | -1): void {
    const { sheet, area, paper } = this.job.stocks[bin.stock]!;
    const placed = this.placed[this.design[paper]!];
    for (const part of bin.pattern.parts) {
      this.pool[part]! -= sign;
      if (placed) placed[part]! += sign;
    }
    this.shelf[bin.stock]! -= sign;
    this.unplaced -= sign * bin.pattern.parts.length;
    if (sheet) this.sheetArea += sign * area;
    this.lost += sign * bin.lost;
  }

  /** What may be taken from the pool on this paper, given which designs the copies placed so far come from. */
  allowed(paper: number): Int32Array {
    if (this.placed.length === 0) return this.pool;
    this.allowance.set(this.pool);
    for (const matching of this.job.matchings) this.limit(matching, this.design[paper]!);
    return this.allowance;
  }

  /**
   * With the parts of a label in order of rising copies c, design d takes max n(i, d), i ≤ j, of the first c(j) sets;
   * a part may therefore have on this paper what the other designs leave of every c(j) from its own on.
   */
  private limit({ parts, oneDesign }: Matching, design: number): void {
    const room = parts.map((part) => this.job.copies[part]!);
    this.placed.forEach((placed, other) => {
      if (other === design) return;
      let needed = 0;
      parts.forEach((part, order) => {
        needed = Math.max(needed, placed[part]!);
        room[order]! -= needed;
      });
      if (oneDesign && needed > 0) room.fill(0);
    });
    let least = Number.MAX_SAFE_INTEGER;
    for (let order = parts.length - 1; order >= 0; order -= 1) {
      const part = parts[order]!;
      least = Math.min(least, room[order]!);
      const more = Math.max(0, least - this.placed[design]![part]!);
      this.allowance[part] = Math.min(this.allowance[part]!, more);
    }
  }
}
