/**
 * A growing set of patterns for one stock, found by prices of the parts: one that is worth more than a sheet makes the
 * cover that gave the prices cheaper. Knows how to find such patterns; decides on none.
 */

import { fillsAbove } from '../one-piece/limited.ts';
import { axisOf } from '../one-piece/normal-patterns.ts';
import { surroundOf } from '../one-piece/surround.ts';
import { copiesIn, densestOf, fillTable, type Lay, mostOf } from '../one-piece/unlimited.ts';
import { patternOf } from '../search/assembled.ts';
import { codesFor, sumOfCodes } from '../search/codes.ts';
import { isFree, type Job, type Stock } from '../search/job.ts';
import type { Pattern } from '../search/nodes.ts';
import type { Chance } from '../search/random.ts';
import { StripFiller } from '../search/strips.ts';
import { Cover } from './cover.ts';

/** Until when patterns may be sought, and who hears how much was done, in repackings. */
export interface ColumnBudget {
  readonly work: (times: number) => void;
  readonly shouldStop: () => boolean;
}

// Untuned, taken as reasonable.
/** What a pattern has to be worth to be new, by strips and by joining. */
const STRIP_BAR = 1 + 1e-6;
const JOIN_BAR = 1 + 1e-4;
const WHIM = 0.1;
/** Prices of parts that cost nothing, so that they are still laid where there is room. */
const LEAST = 1e-6;
const MOST_MARKS = 200;
const MOST_BLOCKS = 200_000;
/** What joining counts as. */
const JOIN_WORK = 30;

interface Column {
  readonly parts: Int32Array;
  readonly pattern: () => Pattern;
}

export class Columns {
  private readonly job: Job;
  private readonly stock: Stock;
  private readonly random: Chance;
  private readonly budget: ColumnBudget;
  private readonly filler: StripFiller;
  private readonly columns: Column[];
  private readonly codes: Float64Array;
  private readonly seen = new Set<number>();
  /** By part, a little more than 1, so that the cheapest cover is never in doubt. */
  private readonly whims: Float64Array;
  private readonly value: Float64Array;
  /** By part, how it lies alone; undefined where it does not fit. */
  private readonly lonely: readonly (Lay | undefined)[];
  private seed = 1;

  /** Begins with each part alone on a sheet. */
  constructor(job: Job, stock: number, random: Chance, budget: ColumnBudget) {
    this.job = job;
    this.stock = job.stocks[stock]!;
    this.random = random;
    this.budget = budget;
    this.filler = new StripFiller(job, random);
    this.codes = codesFor(job.copies.length, random);
    this.whims = Float64Array.from(job.copies, () => 1 + 1e-5 * random.next());
    this.value = new Float64Array(job.copies.length);
    const lays = this.lays(job.copies, job.area);
    this.lonely = Array.from(job.copies, (_, part) => lays.find((lay) => lay.part === part));
    this.columns = Array.from(job.copies, (_, part) => this.alone(part));
  }

  /** Whether the part may come from this stock and fits it. */
  canHold(part: number): boolean {
    return this.lonely[part] !== undefined;
  }

  get count(): number {
    return this.columns.length;
  }

  pattern(column: number): Pattern {
    return this.columns[column]!.pattern();
  }

  /** The cheapest cover of these copies by the patterns so far; its rows are parts, its labels columns. */
  coverFor(copies: Int32Array): Cover {
    const cover = new Cover(this.demandFor(copies), this.codes, this.budget.shouldStop);
    this.update(cover);
    return cover;
  }

  /** Offers a cover the patterns that are new to it. */
  update(cover: Cover): void {
    for (let column = cover.next; column < this.columns.length; column += 1)
      cover.add(this.columns[column]!.parts, column);
    cover.solve();
  }

  /** What the cover has to hold so that these copies are placed. */
  demandFor(copies: Int32Array): Float64Array {
    return this.whims.map((whim, part) => whim * copies[part]!);
  }

  /** Prices shaken a little, for a filling of what the cover does not decide. */
  values(price: Float64Array, whim: number): Float64Array {
    for (let part = 0; part < price.length; part += 1)
      this.value[part] = Math.max(LEAST, price[part]!) * (1 + whim * this.random.next());
    return this.value;
  }

  /** Adds a whole plan by areas. */
  addPlan(copies: Int32Array, noise: number): void {
    const left = copies.slice();
    const value = this.job.area.map((area) => area * (1 + noise * this.random.next()));
    for (;;) {
      const pattern = this.filler.fill(this.stock, { available: left, value, noise });
      this.budget.work(1);
      if (!pattern) return;
      for (const part of pattern.parts) left[part]! -= 1;
      this.add(pattern.parts, () => pattern);
    }
  }

  /** Adds what a few fills by strips find; how many are new. */
  addStrips(copies: Int32Array, price: Float64Array, tries: number): number {
    let fresh = 0;
    for (let turn = 0; turn < tries; turn += 1) {
      const whim = turn === 0 ? 0 : WHIM;
      const value = this.values(price, whim);
      const pattern = this.filler.fill(this.stock, { available: copies, value, noise: whim });
      if (!pattern || priceOf(pattern.parts, price) <= STRIP_BAR) continue;
      if (this.add(pattern.parts, () => pattern)) fresh += 1;
    }
    this.budget.work(tries);
    return fresh;
  }

  /** Adds what joining blocks finds at these prices, with a beam so wide; how many are new. */
  addJoined(copies: Int32Array, price: Float64Array, beam: number, bar = JOIN_BAR): number {
    const { stock, job, budget } = this;
    const { width, height } = stock;
    const lays = this.lays(copies, price);
    const [x, y] = [this.axis(lays, 'width'), this.axis(lays, 'height')];
    const table = x && y && fillTable(x, y, lays, budget.shouldStop);
    if (!table || mostOf(table) <= bar) return 0;
    const surround = surroundOf(table, width, height, budget.shouldStop);
    if (!surround) return 0;
    const problem = {
      ...{ width, height, lays, surround, longestCut: job.longestCut },
      ...{ copies: [...copies], prices: Array.from(copies, () => 0), whole: false },
      ...{ bound: mostOf(table), density: densestOf(lays) },
    };
    const search = { seed: this.seed++, work: MOST_BLOCKS, runs: 1, shouldStop: budget.shouldStop };
    budget.work(JOIN_WORK);
    let fresh = 0;
    for (const assembly of fillsAbove(problem, search, bar, beam)) {
      const parts = Int32Array.from(copiesIn(assembly, lays));
      if (this.add(parts, () => patternOf(job, stock, assembly, lays))) fresh += 1;
    }
    return fresh;
  }

  private alone(part: number): Column {
    const pattern = (): Pattern => {
      const lay = this.lonely[part];
      if (!lay) throw new Error(`invalid part: ${part} does not fit`);
      return patternOf(this.job, this.stock, { width: lay.width, height: lay.height, lay: 0 }, [lay]);
    };
    return { parts: Int32Array.of(part), pattern };
  }

  private add(parts: Int32Array, pattern: () => Pattern): boolean {
    const key = parts.length + sumOfCodes(this.codes, parts);
    if (this.seen.has(key)) return false;
    this.seen.add(key);
    this.columns.push({ parts, pattern });
    return true;
  }

  private lays(copies: Int32Array, price: Float64Array): Lay[] {
    const { job, stock } = this;
    const { lies } = job.papers[stock.paper]!;
    const lays: Lay[] = [];
    for (let part = 0; part < copies.length; part += 1) {
      const value = price[part]!;
      if (copies[part] === 0 || value <= 0 || !isFree(lies[part]!)) continue;
      const [width, height] = [job.width[part]!, job.height[part]!];
      if (width <= stock.width && height <= stock.height)
        lays.push({ part, turned: false, width, height, value });
      if (lies[part] === 2 && height <= stock.width && width <= stock.height)
        lays.push({ part, turned: true, width: height, height: width, value });
    }
    return lays;
  }

  private axis(lays: readonly Lay[], side: 'width' | 'height') {
    return axisOf(
      lays.map((lay) => lay[side]),
      this.stock[side],
      MOST_MARKS,
    );
  }
}

const priceOf = (parts: Int32Array, price: Float64Array): number =>
  parts.reduce((sum, part) => sum + price[part]!, 0);
