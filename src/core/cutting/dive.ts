/**
 * Fills sheets that are alike by deciding on one pattern after another of the cheapest cover, with new patterns made on the
 * way, and back again where too many sheets would be needed (column generation and diving, as for cutting stock in Vance
 * 1998). Knows the board; keeps no plan.
 */
import type { Board } from './board.ts';
import { type ColumnBudget, Columns } from './columns.ts';
import type { Mark } from './cover.ts';
import type { Job } from './job.ts';
import type { Pattern } from './nodes.ts';
import type { Chance } from './random.ts';
import { thinned } from './thinned.ts';

/** More parts make the cover slow; more to a sheet are better moved about than decided on. */
const MOST_PARTS = 250;
const MOST_EACH = 14;
const PLANS = 12;
const SHAKE = 0.3;
const TRIES = 10;
const BEAM = 8;
const WIDEST = 32;
/** The first cover is good enough this far below the fewest sheets, or by strips alone. */
const ENOUGH = 0.04;
const ROOMY = 0.3;
/** How much a round of joining has to save, or the next beam is wider. */
const SLOW = 0.002;
/** How much of the last prices goes into the next, since prices swing. */
const SMOOTH = 0.4;
/** Patterns tried at each step of a dive, steps in a dive, and ways tried to get a cover cheap enough. */
const CHOICES = 2;
const STEPS = 40;
const SETTLING = 16;
const ROUNDING = 1e-3;

export interface Diver {
  /**
   * Fills the sheets of the stock on the board anew, and differently each time, with what the sheets can hold, is not on
   * other pieces and not among `missing`; some of it may stay unplaced.
   */
  dive(missing: Int32Array): void;
}

/** For sheets of one stock, of which no plan needs fewer than `fewest`. Undefined where it would not help. */
export function diver(
  board: Board,
  stock: number,
  fewest: number,
  random: Chance,
  budget: ColumnBudget,
): Diver | undefined {
  const { job } = board;
  const { width, height, paper } = job.stocks[stock]!;
  if (job.papers[paper]!.pinned || fewest < 2 || job.copies.length > MOST_PARTS || job.matchings.length > 0)
    return undefined;
  if (Math.max(width, height) > job.longestCut) return undefined;
  if (job.copies.reduce((sum, copies) => sum + copies, 0) > MOST_EACH * fewest) return undefined;
  const diving = new Diving(job, stock, fewest, random, budget);
  return { dive: (missing) => refill(board, stock, diving, missing) };
}

function refill(board: Board, stock: number, diving: Diving, missing: Int32Array): void {
  const { job, bins } = board;
  const wanted = job.copies.map((copies, part) => copies - missing[part]!);
  let sheets = 0;
  for (const bin of bins) {
    if (bin.stock === stock) sheets += 1;
    else for (const part of bin.pattern.parts) wanted[part]! -= 1;
  }
  for (let part = 0; part < wanted.length; part += 1) if (!diving.columns.canHold(part)) wanted[part] = 0;
  const patterns = diving.dive(wanted, sheets);
  for (let at = bins.length - 1; at >= 0; at -= 1) if (bins[at]!.stock === stock) board.remove(at);
  for (const pattern of patterns) board.put({ stock, pattern, lost: board.lossOf(stock, pattern) });
  for (let more = patterns.length; more < sheets && board.unplaced > 0; more += 1) {
    const bin = board.fill(stock, diving.columns.values(SHAKE), SHAKE);
    if (bin) board.put(bin);
  }
}

class Diving {
  readonly columns: Columns;
  private readonly job: Job;
  private readonly stock: number;
  private readonly fewest: number;
  private readonly random: Chance;
  private readonly budget: ColumnBudget;
  private root: Mark | undefined;
  private dives = 0;
  private sheets = 0;
  /** Copies that no pattern decided on holds. */
  private left = new Int32Array(0);
  private decided: Pattern[] = [];
  private deepest: readonly Pattern[] = [];
  private steps = 0;

  constructor(job: Job, stock: number, fewest: number, random: Chance, budget: ColumnBudget) {
    this.job = job;
    this.stock = stock;
    this.fewest = fewest;
    this.random = random;
    this.budget = budget;
    this.columns = new Columns(job, stock, random, budget);
  }

  /** Patterns for at most `most` sheets, aiming at one fewer each time, down to the least; they may leave copies over. */
  dive(wanted: Int32Array, most: number): readonly Pattern[] {
    const { cover } = this.columns;
    this.left = wanted.slice();
    this.decided = [];
    this.deepest = [];
    this.steps = 0;
    this.budget.work(1);
    this.root ??= this.begin();
    cover.reset(this.root);
    this.coverLeft();
    const least = Math.min(most, Math.max(this.fewest, Math.ceil(cover.cost - ROUNDING)));
    this.sheets = most - (this.dives % (most - least + 1));
    if (this.room() >= 0) this.explore();
    this.dives += 1;
    return this.deepest;
  }

  /** Patterns by strips, then by joining, until the cover is cheap enough or there are no more. */
  private begin(): Mark {
    const { columns, budget, fewest, left } = this;
    const { cover } = columns;
    this.coverLeft();
    for (let plan = 0; plan < PLANS && !budget.shouldStop(); plan += 1)
      columns.addPlan(left, plan === 0 ? 0 : SHAKE);
    cover.solve();
    for (let dry = 0; dry < 3 && cover.cost > fewest - ROOMY && !budget.shouldStop(); ) {
      dry = columns.addStrips(left, TRIES) > 2 ? 0 : dry + 1;
      cover.solve();
    }
    this.joinPatterns();
    return cover.mark();
  }

  private joinPatterns(): void {
    const { columns, budget, left } = this;
    const { cover } = columns;
    let price = cover.price.slice();
    for (let beam = BEAM; cover.cost > this.fewest - ENOUGH && !budget.shouldStop(); ) {
      const before = cover.cost;
      const fresh = columns.addJoined(left, price, beam);
      cover.solve();
      columns.addStrips(left, TRIES);
      cover.solve();
      if (cover.cost >= before - SLOW && fresh === 0 && beam === WIDEST) return;
      beam = cover.cost < before - SLOW ? BEAM : Math.min(WIDEST, beam * 2);
      price = cover.price.map((now, part) =>
        beam === BEAM ? SMOOTH * price[part]! + (1 - SMOOTH) * now : now,
      );
    }
  }

  /** How much cheaper than allowed the cover is, with what is decided on. */
  private room(): number {
    return this.sheets - this.decided.length + ROUNDING - this.columns.cover.cost;
  }

  private coverLeft(): void {
    this.columns.cover.demand(this.columns.demandFor(this.left));
  }

  /** Decides on a pattern and goes on; where that leads nowhere, on another and without the first. True once all is placed. */
  private explore(): boolean {
    const { columns, budget } = this;
    const { cover } = columns;
    if (this.decided.length > this.deepest.length) this.deepest = [...this.decided];
    if (this.left.every((copies) => copies === 0)) return true;
    cover.leaveOut(this.room());
    const mark = cover.mark();
    const left = this.left.slice();
    const banned: number[] = [];
    let done = false;
    for (let choice = 0; choice < CHOICES; choice += 1) {
      if (choice > 0 && !this.comeBack(mark, left)) break;
      if (this.steps++ >= STEPS || budget.shouldStop()) break;
      const column = this.choose();
      const stock = this.job.stocks[this.stock]!;
      this.decided.push(thinned(this.job, stock, columns.pattern(column), this.left));
      this.coverLeft();
      done = this.settle() && this.explore();
      if (done) break;
      this.decided.pop();
      cover.ban(column);
      banned.push(column);
    }
    for (const column of banned) cover.allow(column);
    return done;
  }

  /** Whether the cover is still cheap enough without what was banned since. */
  private comeBack(mark: Mark, left: Int32Array): boolean {
    const { cover } = this.columns;
    cover.reset(mark);
    this.left.set(left);
    if (!this.settle()) return false;
    cover.leaveOut(this.room());
    return true;
  }

  /** Makes patterns until the cover is cheap enough; false if it does not come to that. */
  private settle(): boolean {
    const { columns, budget } = this;
    const { cover } = columns;
    budget.work(2);
    for (let tries = 0; tries < SETTLING && this.room() < 0 && !budget.shouldStop(); tries += 1) {
      const fresh = columns.addStrips(this.left, TRIES / 2);
      if (fresh === 0 && columns.addJoined(this.left, cover.price, BEAM) === 0) break;
      cover.solve();
    }
    return this.room() >= 0 && !budget.shouldStop();
  }

  /** The pattern of which the cover has most, after the first dive with a whim. */
  private choose(): number {
    const whim = this.dives > 0 ? SHAKE : 0;
    let chosen = 0;
    let most = -1;
    for (const { column, times } of this.columns.cover.shares()) {
      const score = Math.min(1, times) + whim * this.random.next();
      if (score <= most) continue;
      most = score;
      chosen = column;
    }
    return chosen;
  }
}
