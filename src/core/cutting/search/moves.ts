/**
 * The ways in which a search changes a plan: empty a few pieces and fill them again, or with patterns known from before,
 * empty a few blocks within pieces, or repack a few pieces almost without waste. Each can be undone; none knows whether
 * it helped.
 */

import { repeatOne } from '../trimmer/fewer.ts';
import type { Bin, Board } from './board.ts';
import { pickSpot } from './graft.ts';
import { isFree } from './job.ts';
import { type Merger, MOST_PARTS, merger } from './merge.ts';
import type { Chance } from './random.ts';
import { Recall } from './recall.ts';

/** What a round of moves has to keep to. */
export interface Rules {
  /** Most area of sheets on the board. */
  readonly sheets: number;
  /** Whether offcuts have to be spared: in the first two goals they cost nothing. */
  readonly sparing: boolean;
  /** Whether copies count before their area: in the first goal, where not all can be placed. */
  readonly counting?: boolean;
  /** Whether pieces are to be cut alike: in the last two goals. */
  readonly repeating?: boolean;
}

export type Undo = () => void;

// No sweep of these is on record; taken as reasonable.
const SHAKE = 0.3;
/** Share of the repackings that may open other sheets than those emptied, in the second goal. */
const EXCHANGING = 0.25;
/** Share of the moves that look for patterns known from before, while sheets count, and most pieces emptied for it. */
const RECALLING = 0.5;
const MOST_RECALLED = 9;
/** Share of the moves that repeat a pattern, where pieces are to be cut alike. */
const REPEATING = 0.7;
/** Share of the other moves that try to merge, and what effort each move earns for it: more while merging succeeds. */
const MERGING = 0.1;
const LEAST_EARNED = 800;
const MOST_EARNED = 60_000;

export class Moves {
  readonly value: Float64Array;
  private readonly board: Board;
  private readonly random: Chance;
  private readonly merger: Merger | undefined;
  private readonly recall: Recall;
  /** Stocks that are opened, not offcuts. */
  private readonly sheets: readonly number[];
  private credit = 0;
  private earned = 8000;
  private merged = false;
  private counting = false;

  constructor(board: Board, random: Chance) {
    this.board = board;
    this.random = random;
    this.value = new Float64Array(board.job.copies.length);
    this.sheets = board.job.stocks.flatMap(({ sheet }, stock) => (sheet ? [stock] : []));
    this.merger = merger(board.job);
    this.recall = new Recall(board.job, random);
  }

  /** Values of the parts by area, shaken by up to `shake`; where copies count, half the time between area and one each. */
  values(shake: number): Float64Array {
    const power = shake > 0 ? this.power() : 1;
    const { area } = this.board.job;
    for (let part = 0; part < area.length; part += 1) {
      this.value[part] = area[part]! ** power * (1 + shake * this.random.next());
    }
    return this.value;
  }

  private power(): number {
    if (this.counting && this.random.next() < 0.5) return this.random.next() ** 2;
    return 1 + 0.25 * this.random.next();
  }

  make(rules: Rules): Undo {
    this.counting = rules.counting ?? false;
    this.credit += this.earned;
    this.merged = false;
    if (rules.repeating && this.board.bins.length > 1 && this.random.next() < REPEATING)
      return repeatOne(this.board, this.random, (shake) => this.values(shake));
    if (!rules.sparing && this.random.next() < RECALLING) {
      const undo = this.recombine();
      if (undo) return undo;
    }
    const dice = this.random.next();
    if (dice < MERGING && this.credit > 0) {
      const undo = this.merge();
      this.merged = undo !== undefined;
      if (undo) return undo;
    }
    return dice < 0.5 ? this.repack(rules) : this.regraft();
  }

  /** Hears whether the last move made the plan better, so that merging goes on where it pays. */
  learn(better: boolean): void {
    if (!this.merged) return;
    this.earned = better
      ? Math.min(MOST_EARNED, this.earned * 2)
      : Math.max(LEAST_EARNED, this.earned * 0.97);
  }

  /** Empties one to four pieces and fills them, and perhaps others, anew. */
  private repack(rules: Rules): Undo {
    const { board, random } = this;
    const old = this.takeOff(1 + random.below(rules.sparing ? 7 : 4));
    const kept = board.bins.length;
    this.values(SHAKE);
    for (const stock of this.candidates(old, rules)) {
      if (board.unplaced === 0) break;
      const { sheet, area } = board.job.stocks[stock]!;
      if (board.shelf[stock] === 0 || (sheet && board.sheetArea + area > rules.sheets)) continue;
      const bin = board.fill(stock, this.value, SHAKE);
      if (bin) this.put(bin);
    }
    return () => this.putBack(old, kept);
  }

  private put(bin: Bin): void {
    this.board.put(bin);
    this.recall.remember(bin);
  }

  /** Bins at random that fit those taken before, in so many tries. */
  private takeOff(
    many: number,
    tries = many,
    fits: (bin: Bin, before: readonly Bin[]) => boolean = () => true,
  ): Bin[] {
    const { board, random } = this;
    const old: Bin[] = [];
    for (let left = tries; left > 0 && old.length < many && board.bins.length > 0; left -= 1) {
      const index = random.below(board.bins.length);
      if (fits(board.bins[index]!, old)) old.push(board.remove(index));
    }
    return old;
  }

  private putBack(old: readonly Bin[], kept: number): void {
    while (this.board.bins.length > kept) this.board.remove(this.board.bins.length - 1);
    for (const bin of old) this.board.put(bin);
  }

  /** The stocks taken off, perhaps without one, and a few others from the shelf; in the third goal in any order. */
  private candidates(old: readonly Bin[], { sparing, counting }: Rules): number[] {
    const { random } = this;
    const stocks = old.map((bin) => bin.stock);
    if (!sparing && !counting && this.sheets.length > 1 && random.next() < EXCHANGING)
      return this.exchanged(stocks);
    if (sparing && random.next() < 0.5) stocks.splice(random.below(stocks.length), 1);
    for (let more = random.below(sparing || counting ? 4 : 2); more > 0; more -= 1) {
      const stock = this.fromShelf();
      if (stock !== undefined) stocks.splice(random.below(stocks.length + 1), 0, stock);
    }
    return stocks;
  }

  /** About as many stocks, with any sheets in the place of sheets: two small ones may do for a large one. */
  private exchanged(old: readonly number[]): number[] {
    const { random, sheets } = this;
    return Array.from({ length: old.length + random.below(3) }, (_, at) => {
      const stock = old[at];
      return stock === undefined || sheets.includes(stock) ? sheets[random.below(sheets.length)]! : stock;
    });
  }

  private fromShelf(): number | undefined {
    const { shelf } = this.board;
    for (let tries = 0; tries < 4; tries += 1) {
      const stock = this.random.below(shelf.length);
      if (shelf[stock]! > 0) return stock;
    }
    return undefined;
  }

  /** Empties one block in each of one to three pieces and fills these blocks anew; none where a border is closed. */
  private regraft(): Undo {
    const { board, random } = this;
    const old = this.takeOff(1 + random.below(3));
    const kept = board.bins.length;
    const hollows = old.flatMap((bin) => {
      const stock = board.job.stocks[bin.stock]!;
      const spot = stock.border > 0 ? undefined : pickSpot(bin.pattern, stock, random);
      const hollow = spot && board.hollow(bin, spot);
      board.put(hollow?.bin ?? bin);
      return hollow ? [hollow] : [];
    });
    this.values(SHAKE);
    for (const { bin, spot } of hollows) {
      const full = board.refill(bin, spot, this.value, SHAKE);
      board.remove(board.bins.indexOf(bin, kept));
      if (full.pattern.parts.length > 0) this.put(full);
    }
    return () => this.putBack(old, kept);
  }

  /** Fills pieces that are alike with known patterns, and the last one anew; undefined where too few are known. */
  private recombine(): Undo | undefined {
    const { board, random } = this;
    const many = 2 + random.below(MOST_RECALLED - 1);
    const old = this.takeOff(many, 2 * many, ({ stock }, [first]) => !first || first.stock === stock);
    const kept = board.bins.length;
    const stock = old[0]?.stock;
    const patterns =
      stock === undefined || old.length < 2
        ? undefined
        : this.recall.pick(stock, old.length - 1, board.allowed(board.job.stocks[stock]!.paper));
    if (stock === undefined || !patterns) {
      this.putBack(old, kept);
      return undefined;
    }
    for (const pattern of patterns) this.put({ stock, pattern, lost: board.lossOf(stock, pattern) });
    const bin = board.fill(stock, this.values(SHAKE), SHAKE);
    if (bin) this.put(bin);
    return () => this.putBack(old, kept);
  }

  /** Repacks a few pieces with what is unplaced almost without waste; undefined where that cannot be done. */
  private merge(): Undo | undefined {
    const { board, merger: packer } = this;
    if (!packer || board.unplaced > MOST_PARTS) return undefined;
    const before = packer.effort;
    const old = this.takeFew(this.howMany());
    const kept = board.bins.length;
    const stocks = old.map((bin) => bin.stock);
    const waste = old.reduce((sum, bin) => sum + board.job.stocks[bin.stock]!.area - bin.pattern.area, 0);
    const patterns =
      old.length === 0 ? undefined : packer.pack(stocks, this.pooled(stocks[0]!), this.values(0.05), waste);
    this.credit -= packer.effort - before;
    if (!patterns) {
      this.putBack(old, kept);
      return undefined;
    }
    patterns.forEach((pattern, index) => {
      const stock = stocks[index]!;
      if (pattern) this.put({ stock, pattern, lost: board.lossOf(stock, pattern) });
    });
    this.values(SHAKE);
    patterns.forEach((pattern, index) => {
      const bin = pattern ? undefined : board.fill(stocks[index]!, this.value, SHAKE);
      if (bin) this.put(bin);
    });
    return () => this.putBack(old, kept);
  }

  private howMany(): number {
    const dice = this.random.next();
    return dice < 0.6 ? 2 : dice < 0.85 ? 3 : 4;
  }

  /** Bins of one paper, alike ones together, with few enough parts to be merged with those unplaced. */
  private takeFew(many: number): Bin[] {
    const { stocks } = this.board.job;
    let room = MOST_PARTS - this.board.unplaced;
    const fits = ({ pattern, stock }: Bin, [first]: readonly Bin[]): boolean => {
      const { border, paper } = stocks[stock]!;
      if (pattern.parts.length > room || border > 0) return false;
      if (first && stocks[first.stock]!.paper !== paper) return false;
      room -= pattern.parts.length;
      return true;
    };
    return this.takeOff(many, 3 * many, fits).sort((one, other) => one.stock - other.stock);
  }

  private pooled(stock: number): number[] {
    const { paper } = this.board.job.stocks[stock]!;
    const { lies } = this.board.job.papers[paper]!;
    const parts: number[] = [];
    this.board.allowed(paper).forEach((copies, part) => {
      if (!isFree(lies[part]!)) return;
      for (let copy = 0; copy < copies; copy += 1) parts.push(part);
    });
    return parts;
  }
}
