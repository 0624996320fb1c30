/**
 * Fills sheets that are alike by deciding on one pattern after another of the cheapest cover, with new patterns made on the
 * way, and back again where too many sheets would be needed (column generation and diving, as for cutting stock in Vance
 * 1998). Knows the board; keeps no plan.
 */
import type { Board } from '../search/board.ts';
import type { Job } from '../search/job.ts';
import type { Pattern } from '../search/nodes.ts';
import type { Chance } from '../search/random.ts';
import { thinned } from '../search/thinned.ts';
import { type ColumnBudget, Columns } from './columns.ts';
import type { Cover } from './cover.ts';
import { MOST_EACH } from './tight.ts';

// Tuned on the hardest identical sheets, where beams, whims, dead ends and settling turned out flat within noise and only speed
// helps (28 November 2026); the others are untuned, taken as reasonable.
/** More parts make the cover slow. */
const MOST_PARTS = 250;
const PLANS = 12;
const SHAKE = 0.3;
const WHIM = 0.1;
const TRIES = 10;
const BEAM = 12;
const WIDEST = 32;
/** The first cover is good enough this far below the fewest sheets, or by strips alone. */
const ENOUGH = 0.005;
const ROOMY = 0.3;
/** Where there is less room than this, patterns worth a little less than a sheet are made beforehand too. */
const NARROW = 0.1;
/** How much a round of joining has to save, or the next beam is wider. */
const SLOW = 0.002;
/** How much of the last prices goes into the next, since prices swing. */
const SMOOTH = 0.4;
/** Patterns tried at each step of a dive, dead ends after which it is given up, and ways tried to get a cover cheap enough. */
const CHOICES = 2;
const DEAD_ENDS = 6;
const SETTLING = 16;
const ROUNDING = 1e-3;

export interface Diver {
  /**
   * Fills the sheets of the stock on the board anew, and differently each time, with what the sheets can hold, is not on
   * other pieces and not among `missing`; some of it may stay unplaced.
   */
  dive(missing: Int32Array): void;
}

/** For sheets of one stock, of which no plan needs fewer than `fewest`. */
export interface Aim {
  readonly stock: number;
  readonly fewest: number;
  readonly random: Chance;
  readonly budget: ColumnBudget;
}

/** Undefined where it would not help. */
export function diver(board: Board, aim: Aim): Diver | undefined {
  const { job } = board;
  const { stock, fewest } = aim;
  const { width, height, paper } = job.stocks[stock]!;
  if (job.papers[paper]!.pinned || fewest < 2 || job.copies.length > MOST_PARTS || job.matchings.length > 0)
    return undefined;
  if (Math.max(width, height) > job.longestCut) return undefined;
  if (job.copies.reduce((sum, copies) => sum + copies, 0) > MOST_EACH * fewest) return undefined;
  const diving = new Diving(job, aim);
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
    const bin = board.fill(stock, diving.values(SHAKE), SHAKE);
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
  /** The cover of all that is wanted. */
  private root: Cover | undefined;
  private wanted = new Int32Array(0);
  private dives = 0;
  private sheets = 0;
  /** Copies that no pattern decided on holds. */
  private left = new Int32Array(0);
  private decided: Pattern[] = [];
  private deepest: readonly Pattern[] = [];
  private deadEnds = 0;

  constructor(job: Job, { stock, fewest, random, budget }: Aim) {
    this.job = job;
    this.stock = stock;
    this.fewest = fewest;
    this.random = random;
    this.budget = budget;
    this.columns = new Columns(job, stock, random, budget);
  }

  /** Patterns for at most `most` sheets, aiming at the least first, then at one more each time; they may leave copies over. */
  dive(wanted: Int32Array, most: number): readonly Pattern[] {
    this.left = wanted.slice();
    this.decided = [];
    this.deepest = [];
    this.deadEnds = 0;
    this.budget.work(1);
    const root = this.rootFor(wanted);
    const least = Math.min(most, Math.max(this.fewest, Math.ceil(root.cost - ROUNDING)));
    this.sheets = least + (this.dives % (most - least + 1));
    const room = this.room(root);
    if (room >= 0) this.explore(root.lowered(this.columns.demandFor(wanted), room));
    this.dives += 1;
    return this.deepest;
  }

  /** Prices shaken a little, for a filling of what no pattern decided on holds. */
  values(whim: number): Float64Array {
    return this.columns.values(this.root!.price, whim);
  }

  private rootFor(wanted: Int32Array): Cover {
    const same = this.wanted.length > 0 && wanted.every((copies, part) => copies === this.wanted[part]);
    if (this.root && same) this.columns.update(this.root);
    else this.root = this.root ? this.columns.coverFor(wanted) : this.begin(wanted);
    this.wanted = wanted.slice();
    return this.root;
  }

  /** Patterns by strips, then by joining, until the cover is cheap enough or there are no more. */
  private begin(wanted: Int32Array): Cover {
    const { columns, budget, fewest } = this;
    for (let plan = 0; plan < PLANS && !budget.shouldStop(); plan += 1)
      columns.addPlan(wanted, plan === 0 ? 0 : SHAKE);
    const cover = columns.coverFor(wanted);
    for (let dry = 0; dry < 3 && cover.cost > fewest - ROOMY && !budget.shouldStop(); ) {
      dry = columns.addStrips(wanted, cover.price, TRIES) > 2 ? 0 : dry + 1;
      columns.update(cover);
    }
    this.joinPatterns(cover, wanted);
    const room = fewest - cover.cost;
    if (room > 0 && room < NARROW) {
      columns.addJoined(wanted, cover.price, BEAM, 1 - room);
      columns.update(cover);
    }
    return cover;
  }

  private joinPatterns(cover: Cover, wanted: Int32Array): void {
    const { columns, budget } = this;
    let price = cover.price.slice();
    for (let beam = BEAM; cover.cost > this.fewest - ENOUGH && !budget.shouldStop(); ) {
      const before = cover.cost;
      const fresh = columns.addJoined(wanted, price, beam);
      columns.update(cover);
      columns.addStrips(wanted, cover.price, TRIES);
      columns.update(cover);
      if (cover.cost >= before - SLOW && fresh === 0 && beam === WIDEST) return;
      beam = cover.cost < before - SLOW ? BEAM : Math.min(WIDEST, beam * 2);
      price = cover.price.map((now, part) =>
        beam === BEAM ? SMOOTH * price[part]! + (1 - SMOOTH) * now : now,
      );
    }
  }

  /** How much cheaper than allowed the cover is, with what is decided on. */
  private room(cover: Cover): number {
    return this.sheets - this.decided.length + ROUNDING - cover.cost;
  }

  /** Decides on a pattern and goes on; where that leads nowhere, on another and without the first. True once all is placed. */
  private explore(cover: Cover): boolean {
    const { columns, budget, job } = this;
    if (this.decided.length > this.deepest.length) this.deepest = [...this.decided];
    if (this.left.every((copies) => copies === 0)) return true;
    const left = this.left.slice();
    for (let choice = 0; choice < CHOICES; choice += 1) {
      if (choice > 0 && !this.settle(cover)) break;
      if (this.deadEnds >= DEAD_ENDS || budget.shouldStop()) break;
      const column = this.choose(cover);
      const room = this.room(cover);
      this.decided.push(thinned(job, job.stocks[this.stock]!, columns.pattern(column), this.left));
      const rest = cover.lowered(columns.demandFor(this.left), room);
      if (this.settle(rest) && this.explore(rest)) return true;
      this.deadEnds += 1;
      this.decided.pop();
      this.left.set(left);
      cover.ban(column);
      columns.update(cover);
    }
    return false;
  }

  /** Makes patterns until the cover is cheap enough; false if it does not come to that. */
  private settle(cover: Cover): boolean {
    const { columns, budget, left } = this;
    budget.work(2);
    for (let tries = 0; tries < SETTLING && this.room(cover) < 0 && !budget.shouldStop(); tries += 1) {
      const fresh = columns.addStrips(left, cover.price, TRIES / 2);
      if (fresh === 0 && columns.addJoined(left, cover.price, BEAM) === 0) break;
      columns.update(cover);
    }
    return this.room(cover) >= 0 && !budget.shouldStop();
  }

  /** The pattern of which the cover has most, with a whim. */
  private choose(cover: Cover): number {
    let chosen = 0;
    let most = -1;
    for (const { label, times } of cover.shares()) {
      const score = Math.min(1, times) + WHIM * this.random.next();
      if (score <= most) continue;
      most = score;
      chosen = label;
    }
    return chosen;
  }
}
