/**
 * Prices for the copies of a group of parts such that no layout of a piece is worth more than the piece can hold: products
 * of two dual feasible functions. Knows parts and pieces of one group; what the prices prove is for bound.ts to say.
 */

import type { Job, Stock } from '../search/job.ts';
import { dualFunctions, type Lengths } from './dual.ts';
import { priceTable } from './table.ts';

/** Parts, by their index, and the pieces that they may come from. */
export interface Group {
  readonly parts: readonly number[];
  readonly stocks: readonly Stock[];
}

/** Prices of a group's parts, and what each of its stocks can hold of them. */
export interface Pricing {
  readonly prices: Float64Array;
  readonly holds: Float64Array;
}

const SLACK = 1e-7;

/**
 * Sizes of sheet whose functions are tried, steps from which these are made at most, pairs kept of all, lengths at which
 * a long side is priced, and whether a table says what each piece holds.
 */
export interface Effort {
  readonly sizes: number;
  readonly steps: number;
  readonly kept: number;
  readonly rooms: number;
  readonly tables: boolean;
}

const FULL: Effort = { sizes: 6, steps: 150, kept: 8, rooms: 1024, tables: true };

// MOST_LOAD and HUGE keep thousands of parts and pieces to the time; no sweep is on record, taken as reasonable.
/** Fewer steps where every size of piece has to be priced. */
const FEWER_STEPS = 48;
/** Lengths times parts and pieces: where there are more, functions are fewer, and beyond that areas have to do. */
const MOST_LOAD = 1e7;
const HUGE = 2e5;

/** How many copies at least go beyond what all the stocks hold. */
export function leastUnplaced(
  { prices, holds }: Pricing,
  copies: readonly number[],
  stocks: readonly Stock[],
): number {
  let over = -SLACK;
  for (let at = 0; at < copies.length; at += 1) over += prices[at]! * copies[at]!;
  for (let at = 0; at < stocks.length; at += 1) over -= holds[at]! * stocks[at]!.copies;
  return copiesWorth(over, prices, copies);
}

/** How many of the dearest copies make up for `over`. */
function copiesWorth(over: number, prices: Float64Array, copies: readonly number[]): number {
  if (over <= 0) return 0;
  let count = 0;
  let rest = over;
  for (const at of dearestFirst(prices)) {
    const many = Math.min(copies[at]!, Math.ceil(rest / prices[at]! - SLACK));
    count += many;
    rest -= many * prices[at]!;
    if (rest <= 0) break;
  }
  return count;
}

/** The least area of sheets, once the offcuts hold what they can and `left` copies are left out. */
export function leastSheets(
  pricing: Pricing,
  copies: readonly number[],
  stocks: readonly Stock[],
  left: number,
): number {
  const { prices, holds } = pricing;
  let needed = -SLACK;
  for (let at = 0; at < copies.length; at += 1) needed += prices[at]! * copies[at]!;
  if (left > 0) needed -= dearest(prices, copies, left);
  const sheets: Sheet[] = [];
  stocks.forEach((stock, at) => {
    if (stock.sheet) sheets.push({ holds: holds[at]!, area: stock.area, copies: stock.copies });
    else needed -= holds[at]! * stock.copies;
  });
  return needed > 0 ? cover(needed, sheets) : 0;
}

function dearest(prices: Float64Array, copies: readonly number[], many: number): number {
  let [sum, left] = [0, many];
  for (const at of dearestFirst(prices)) {
    const count = Math.min(left, copies[at]!);
    sum += count * prices[at]!;
    left -= count;
  }
  return sum;
}

const dearestFirst = (prices: Float64Array): number[] =>
  [...prices.keys()].sort((one, other) => prices[other]! - prices[one]!);

interface Sheet {
  readonly holds: number;
  readonly area: number;
  readonly copies: number;
}

/** Least area of sheets that hold `needed` together; with many sizes of sheet, a lower limit of it. */
function cover(needed: number, sheets: readonly Sheet[]): number {
  const useful = sheets.filter((sheet) => sheet.holds > 0);
  useful.sort((one, other) => one.area / one.holds - other.area / other.holds);
  let least = Infinity;
  let visits = 0;
  const visit = (at: number, rest: number, area: number): void => {
    visits += 1;
    if (rest <= 0) least = Math.min(least, area);
    const sheet = useful[at];
    if (rest <= 0 || !sheet || visits > 2000) return;
    if (area + (rest / sheet.holds) * sheet.area >= least) return;
    const most = Math.min(sheet.copies, Math.ceil(rest / sheet.holds));
    for (let count = most; count >= 0; count -= 1) {
      visit(at + 1, rest - count * sheet.holds, area + count * sheet.area);
    }
  };
  visit(0, needed, 0);
  if (visits <= 2000 && least < Infinity) return least;
  return relaxedCover(needed, useful);
}

function relaxedCover(needed: number, cheapestFirst: readonly Sheet[]): number {
  let [rest, area] = [needed, 0];
  for (const sheet of cheapestFirst) {
    const count = Math.min(sheet.copies, rest / sheet.holds);
    area += count * sheet.area;
    rest -= count * sheet.holds;
    if (rest <= 0) break;
  }
  return area;
}

/** The pairs of functions that promise most, for each size of sheet, or of offcut where there are no sheets. */
export function bestPricings(job: Job, group: Group, late: () => boolean, effort = FULL): Pricing[] {
  const { stocks } = group;
  const pairs = new PairsOfDuals(job, group, late, effort);
  const sheets = stocks.filter((stock) => stock.sheet);
  const sizes = new Map(
    (sheets.length > 0 ? sheets : stocks).map((one) => [`${one.width}x${one.height}`, one]),
  );
  for (const { width, height } of [...sizes.values()].slice(0, effort.sizes)) pairs.tryAll(width, height);
  return pairs.best();
}

/** One function: its price of each part's width and height, and the most that each stock's sides hold at these. */
interface Dual {
  readonly wide: Float64Array;
  readonly high: Float64Array;
  readonly acrossStock: Float64Array;
  readonly downStock: Float64Array;
}

interface Ranked {
  readonly score: number;
  readonly f: Dual;
  readonly g: Dual;
  readonly mean: boolean;
}

/** The lengths and sides that occur in a group, and the best pairs of functions met so far. */
class PairsOfDuals {
  private readonly late: () => boolean;
  private readonly job: Job;
  /** All stocks are of one size, at most filled by what is worth 1. */
  private readonly uniform: boolean;
  private readonly parts: readonly number[];
  private readonly stocks: readonly Stock[];
  private readonly copies: Float64Array;
  /** Indices into `lengths` and `sides`. */
  private readonly wide: Int32Array;
  private readonly high: Int32Array;
  private readonly stockWide: Int32Array;
  private readonly stockHigh: Int32Array;
  /** Per part: 1 only as it is, 2 only turned, 3 both. */
  private readonly ways: Uint8Array;
  private readonly lengths: Lengths;
  private readonly sides: Int32Array;
  private readonly turning: boolean;
  private readonly effort: Effort;
  private ranked: Ranked[] = [];

  constructor(job: Job, { parts, stocks }: Group, late: () => boolean, effort: Effort) {
    this.late = late;
    this.effort = effort;
    this.job = job;
    this.parts = parts;
    this.stocks = stocks;
    this.uniform = stocks.every(
      ({ width, height }) => width === stocks[0]!.width && height === stocks[0]!.height,
    );
    this.copies = Float64Array.from(parts, (part) => job.copies[part]!);
    this.ways = Uint8Array.from(parts, (part) => waysMask(job, part, stocks));
    this.turning = this.ways.some((ways) => ways > 1);
    const lengths = distinct(parts.flatMap((part) => [job.width[part]!, job.height[part]!]));
    this.sides = distinct(stocks.flatMap((stock) => [stock.width, stock.height]));
    this.wide = Int32Array.from(parts, (part) => lengths.indexOf(job.width[part]!));
    this.high = Int32Array.from(parts, (part) => lengths.indexOf(job.height[part]!));
    this.stockWide = Int32Array.from(stocks, (stock) => this.sides.indexOf(stock.width));
    this.stockHigh = Int32Array.from(stocks, (stock) => this.sides.indexOf(stock.height));
    const copies = new Int32Array(lengths.length);
    this.parts.forEach((part, at) => {
      copies[this.wide[at]!]! += job.copies[part]!;
      copies[this.high[at]!]! += job.copies[part]!;
    });
    this.lengths = { length: lengths, copies };
  }

  tryAll(width: number, height: number): void {
    const across = this.duals(width);
    const down = width === height ? across : this.duals(height);
    for (const f of across) {
      if (this.ranked.length > 0 && this.late()) return;
      for (const g of down) {
        this.rank(f, g, false);
        if (this.turning) this.rank(f, g, true);
      }
    }
  }

  best(): Pricing[] {
    return this.ranked.map(({ f, g, mean }) => {
      const prices = Float64Array.from(this.parts, (_, at) => this.price(f, g, at, mean));
      const plain = !this.effort.tables || this.uniform || this.load > HUGE || this.late();
      const table = plain ? undefined : this.table(prices);
      const holds = Float64Array.from(this.stocks, ({ width, height }, at) =>
        Math.min(this.holds(f, g, at, mean), table ? table(width, height) : Number.MAX_VALUE),
      );
      return { prices, holds };
    });
  }

  private table(prices: Float64Array): ((width: number, height: number) => number) | undefined {
    const ways = this.parts.flatMap((part, at) => {
      const [width, height, price] = [this.job.width[part]!, this.job.height[part]!, prices[at]!];
      const asIs = this.ways[at]! & 1 ? [{ width, height, price }] : [];
      return this.ways[at]! & 2 ? [...asIs, { width: height, height: width, price }] : asIs;
    });
    const widest = Math.max(...this.stocks.map((stock) => stock.width));
    const highest = Math.max(...this.stocks.map((stock) => stock.height));
    return priceTable(ways, widest, highest);
  }

  /** Keeps the pairs that leave most to be cut from sheets, measured in what the roomiest sheet holds for its area. */
  private rank(f: Dual, g: Dual, mean: boolean): void {
    const { copies, stocks } = this;
    let needed = 0;
    for (let at = 0; at < copies.length; at += 1) needed += this.price(f, g, at, mean) * copies[at]!;
    let rate = 0;
    let offcuts = 0;
    for (let at = 0; at < stocks.length; at += 1) {
      const { sheet, area, copies: many } = stocks[at]!;
      const holds = this.holds(f, g, at, mean);
      if (!sheet) offcuts += holds * many;
      else if (holds > rate * area) rate = holds / area;
    }
    const score = rate > 0 ? (needed - offcuts) / rate : needed - offcuts;
    const last = this.ranked[this.effort.kept - 1];
    if (last && score <= last.score) return;
    const place = this.ranked.findIndex((one) => one.score < score);
    this.ranked.splice(place < 0 ? this.ranked.length : place, 0, { score, f, g, mean });
    this.ranked.length = Math.min(this.ranked.length, this.effort.kept);
  }

  private price(f: Dual, g: Dual, at: number, mean: boolean): number {
    const ways = this.ways[at]!;
    const asIs = f.wide[at]! * g.high[at]!;
    if (ways === 1 && !mean) return asIs;
    const turned = f.high[at]! * g.wide[at]!;
    if (mean) return (asIs + turned) / 2;
    return ways === 2 || turned < asIs ? turned : asIs;
  }

  private holds(f: Dual, g: Dual, at: number, mean: boolean): number {
    const asIs = f.acrossStock[at]! * g.downStock[at]!;
    return mean ? (asIs + g.acrossStock[at]! * f.downStock[at]!) / 2 : asIs;
  }

  /** The functions of a capacity, without those that another one betters everywhere. */
  private duals(capacity: number): Dual[] {
    if (this.load > HUGE || this.late()) return [this.plainArea(capacity)];
    const all = dualFunctions(capacity, this.lengths, this.steps()).map((price) => ({
      price,
      cap: this.caps(price, capacity),
    }));
    const useful = all.filter(
      (one, index) => !all.some((other, at) => at !== index && betters(other, one, at < index)),
    );
    return useful.map((one) => this.dual(one));
  }

  /** The one function that needs no table: a length's share of the capacity. */
  private plainArea(capacity: number): Dual {
    const shares = (lengths: Int32Array) => Float64Array.from(lengths, (length) => length / capacity);
    return this.dual({ price: shares(this.lengths.length), cap: shares(this.sides) });
  }

  private dual({ price, cap }: Priced): Dual {
    return {
      wide: Float64Array.from(this.wide, (at) => price[at]!),
      high: Float64Array.from(this.high, (at) => price[at]!),
      acrossStock: Float64Array.from(this.stockWide, (at) => cap[at]!),
      downStock: Float64Array.from(this.stockHigh, (at) => cap[at]!),
    };
  }

  private get load(): number {
    return this.lengths.length.length * (this.parts.length + this.stocks.length);
  }

  /** Fewer where there is much to price, so that the time stays bounded. */
  private steps(): number {
    return Math.max(
      4,
      Math.min(
        this.effort.steps,
        this.uniform ? FULL.steps : FEWER_STEPS,
        Math.floor(Math.sqrt(MOST_LOAD / this.load)),
      ),
    );
  }

  /** The most that fits into each side: at most 1 up to the capacity, and never more than an unlimited knapsack holds. */
  private caps(price: Float64Array, capacity: number): Float64Array {
    const { length } = this.lengths;
    const only = this.sides.every((side) => side === capacity);
    const table = only ? undefined : knapsack(length, price, this.sides.at(-1)!, this.effort.rooms);
    return Float64Array.from(this.sides, (side) => {
      const most = table ? table(side) : 1;
      return side <= capacity ? Math.min(1, most) : most;
    });
  }
}

interface Priced {
  readonly price: Float64Array;
  readonly cap: Float64Array;
}

/** Whether `one` prices nothing lower and holds nothing more than `other`; of two alike, the `first` betters. */
function betters(one: Priced, other: Priced, first: boolean): boolean {
  let alike = true;
  for (let at = 0; at < one.price.length; at += 1) {
    if (one.price[at]! < other.price[at]! - 1e-12) return false;
    if (one.price[at]! > other.price[at]! + 1e-12) alike = false;
  }
  for (let at = 0; at < one.cap.length; at += 1) {
    if (one.cap[at]! > other.cap[at]! + 1e-12) return false;
    if (one.cap[at]! < other.cap[at]! - 1e-12) alike = false;
  }
  return !alike || first;
}

function waysMask(job: Job, part: number, stocks: readonly Stock[]): number {
  const [wide, high] = [job.width[part]!, job.height[part]!];
  const asIs = stocks.some(
    (stock) => job.papers[stock.paper]!.lies[part]! > 0 && wide <= stock.width && high <= stock.height,
  );
  const turned = stocks.some(
    (stock) => job.papers[stock.paper]!.lies[part] === 2 && high <= stock.width && wide <= stock.height,
  );
  return (asIs ? 1 : 0) + (turned ? 2 : 0);
}

const distinct = (numbers: number[]): Int32Array => Int32Array.from(new Set(numbers)).sort();

/** The most that lengths, each any number of times, are worth within a room; for long rooms, an upper limit of it. */
function knapsack(
  length: Int32Array,
  price: Float64Array,
  longest: number,
  rooms: number,
): (room: number) => number {
  const steps = Math.min(longest, rooms);
  const step = longest / steps;
  const table = new Float64Array(steps + 1);
  for (let to = 1; to <= steps; to += 1) {
    let most = table[to - 1]!;
    for (let at = 0; at < length.length; at += 1) {
      const from = to - Math.floor(length[at]! / step);
      if (from >= 0 && from < to) most = Math.max(most, table[from]! + price[at]!);
    }
    table[to] = most;
  }
  const tiny = length.some((one, at) => one < step && price[at]! > 0);
  return (room) => (tiny ? Number.MAX_SAFE_INTEGER : table[Math.floor(room / step)]!);
}
