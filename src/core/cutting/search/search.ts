/**
 * Looks for the best plan of a prepared order: a greedy start, then large-neighbourhood search towards one goal after
 * another. Knows the goals and the budget; leaves the changes to moves.ts and proof to the bounds.
 */

import type { Bound } from '../bound/bound.ts';
import type { ColumnBudget } from '../fewer/columns.ts';
import { type Diver, diver } from '../fewer/dive.ts';
import { tightFiller } from '../fewer/tight.ts';
import { exchangeAlike, Likeness } from '../trimmer/fewer.ts';
import { type Bin, Board, type Spare } from './board.ts';
import type { Job } from './job.ts';
import { Moves, type Rules } from './moves.ts';
import { placeQuickly } from './quick.ts';
import type { Chance } from './random.ts';

export interface Budget {
  /** How much of the time and work is used up: 1 and more means stop. */
  readonly spent: () => number;
  /** The same, deaf to being told to stop: there is always a first plan. */
  readonly elapsed: () => number;
  /** Counts repackings, one unless said. */
  readonly work: (times?: number) => void;
}

export interface Found {
  readonly bins: readonly Bin[];
  readonly pool: Int32Array;
  readonly unplaced: number;
  readonly sheetArea: number;
  readonly lost: number;
}

// UNTIL.diving was raised for identical sheets, and FOR_LOSING leaves two fifths for cutting alike; no sweep is on record for
// these, and the others are untuned, taken as reasonable.
/** Shares of the budget after which a goal is left as it is, whether or not its bound is met. */
const UNTIL = { placing: 0.5, opening: 0.85, diving: 0.95, losing: 0.97, cuttingAlike: 1 };
/** Moves remembered by late acceptance. */
const MEMORY = 60;
/** Plans that lose up to this much more are as good where more is cut alike. */
export const NEARLY = 1.01;
/** Settings that one pattern outweighs. */
const PATTERN = 1000;
/** Share of what is left of the budget after the second goal that may go into the third. */
const FOR_LOSING = 0.6;
const SLACK = 1e-9;
/** Shares of the budget after which the ways to seek one sheet fewer take turns: tight fillings, diving, moves between. */
const TURN = 0.12;
const DIVING = 0.7;
const SHORT_TURN = 0.01;
const SPARE_STARTS = 6;
const FRESH_STARTS = 4;
const MOST_TRIED = 12;
/** Stocks compared at once for the first plan, and the share of the budget after which they no longer are. */
const WINDOW = 40;
const HURRY = 0.3;
/** Share of the budget after which the rest of the first plan is placed in next to no time. */
const QUICKLY = 0.45;
/** Filling a piece with so many ways to lie counts as a repacking. */
const WAYS = 1000;

/**
 * The best found within the budget, by the goals in order; `found` hears of each better one. The bound is asked for once
 * there is a first plan. Deterministic for the same chance and work.
 */
export function search(
  job: Job,
  bounded: () => Bound,
  spare: Spare,
  random: Chance,
  budget: Budget,
  found: (best: Found) => void,
): Found {
  const board = new Board(job, random, spare);
  const hunt = new Hunt(board, random, budget, found);
  hunt.start();
  const bound = bounded();
  hunt.placeMore(bound);
  hunt.openLess(bound.sheetArea(hunt.best.unplaced));
  hunt.loseLess();
  hunt.cutAlike();
  return hunt.best;
}

/** What a round of moves seeks: a lower cost than at its start, until it is as low as `enough` or time is up. */
interface Round extends Rules {
  readonly cost: () => number;
  readonly enough: number;
  readonly until: number;
  /** Share of the budget after which a round without success gives up. */
  readonly patience: number;
  readonly better: () => void;
}

class Hunt {
  best!: Found;
  private readonly board: Board;
  private readonly moves: Moves;
  private readonly random: Chance;
  private readonly budget: Budget;
  private readonly found: (best: Found) => void;
  private diving: { readonly diver: Diver | undefined } | undefined;
  private readonly untilDived: ColumnBudget;
  private untilLost = UNTIL.losing;
  /** What a missing copy of each part counts: copies first, then their area. */
  private readonly weight: Float64Array;

  constructor(board: Board, random: Chance, budget: Budget, found: (best: Found) => void) {
    this.board = board;
    this.random = random;
    this.budget = budget;
    this.found = found;
    this.moves = new Moves(board, random);
    this.untilDived = {
      work: (times) => budget.work(times),
      shouldStop: () => budget.spent() >= UNTIL.diving,
    };
    const { area, copies } = board.job;
    const whole = area.reduce((sum, one, part) => sum + one * copies[part]!, 1);
    this.weight = area.map((one) => 1 + one / whole);
  }

  start(): void {
    greedy(this.board, this.moves.values(0), this.budget);
    this.keep();
  }

  /** First goal: most copies placed, then most of their area. */
  placeMore(bound: Bound): void {
    const enough = this.leastMissing(bound);
    if (this.missing() <= enough) return;
    this.round({
      cost: () => this.missing(),
      enough,
      until: UNTIL.placing,
      patience: 1,
      sheets: Number.MAX_SAFE_INTEGER,
      sparing: false,
      counting: true,
      better: () => this.keep(),
    });
  }

  /** Second goal: as much placed from less new sheet area, with one sheet fewer as the aim each time. */
  openLess(bound: number): void {
    const allowed = this.missing(this.best.pool) + SLACK;
    let going = true;
    while (going && this.best.sheetArea > bound && this.budget.spent() < UNTIL.opening) {
      this.board.reset(this.best.bins);
      this.dropSheet();
      const sheets = this.best.sheetArea - 1;
      const fill = tightFiller(this.board, this.random, () => this.budget.spent() >= UNTIL.opening);
      const diving = fill ? undefined : this.diverFor(bound);
      do {
        going =
          (fill && this.tighten(fill, allowed)) ||
          this.fewer(sheets, allowed, fill ? TURN : diving ? SHORT_TURN : 1) ||
          (diving !== undefined && this.dive(diving, allowed));
      } while ((fill || diving) && !going && this.budget.spent() < UNTIL.opening);
    }
  }

  /** Whether all can be placed on so much area of sheets by a search from what is on the board. */
  private fewer(sheets: number, allowed: number, patience: number): boolean {
    return this.round({
      cost: () => (this.missing() <= allowed ? 0 : this.missingArea()),
      enough: 0,
      until: UNTIL.opening,
      patience,
      sheets,
      sparing: false,
      better: () => {
        if (this.missing() <= allowed) this.keep();
      },
    });
  }

  /** Third goal: the same copies and sheets for less worth lost; from the best plan, then from fresh starts. */
  loseLess(): void {
    const allowed = this.missing(this.best.pool) + SLACK;
    const spent = this.budget.spent();
    this.untilLost = Math.min(UNTIL.losing, spent + FOR_LOSING * (1 - spent));
    for (let turn = 0; turn < SPARE_STARTS && this.budget.spent() < this.untilLost; turn += 1) {
      this.startSparing(turn === 0 ? 0 : 0.3);
      if (this.sound(allowed) && this.board.lost < this.best.lost) this.keep();
    }
    this.board.reset(this.best.bins);
    for (let start = 0; start <= FRESH_STARTS && this.budget.spent() < this.untilLost; start += 1) {
      if (start > 0) this.startSparing(0.6);
      if (this.sound(allowed)) this.spare(allowed, start === 0 ? 0.2 : 0.08);
    }
  }

  private spare(allowed: number, patience: number): void {
    this.round({
      cost: () => (this.sound(allowed) ? this.board.lost : Number.MAX_VALUE),
      enough: 0,
      until: this.untilLost,
      patience,
      sheets: this.best.sheetArea,
      sparing: true,
      better: () => {
        if (this.board.lost < this.best.lost) this.keep();
      },
    });
  }

  /** Fourth and fifth goal: fewer patterns, then fewer settings, for next to no more worth. */
  cutAlike(): void {
    const allowed = this.missing(this.best.pool) + SLACK;
    const most = this.best.lost * NEARLY;
    const likeness = new Likeness(this.board.job);
    const cost = (): number => {
      if (!this.sound(allowed) || this.board.lost > most) return Number.MAX_VALUE;
      const { patterns, settings } = likeness.of(this.board.bins);
      return patterns * PATTERN + settings + this.board.lost / (most + 1);
    };
    const exchange = (): void => {
      this.board.reset(this.best.bins);
      exchangeAlike(this.board, cost, this.budget);
      this.keep();
    };
    exchange();
    this.round({
      cost,
      enough: PATTERN + 1,
      until: UNTIL.cuttingAlike,
      patience: 0.25,
      sheets: this.best.sheetArea,
      sparing: true,
      repeating: true,
      better: () => this.keep(),
    });
    exchange();
  }

  private keep(): void {
    const { bins, pool, unplaced, sheetArea, lost } = this.board;
    this.best = { bins: [...bins], pool: pool.slice(), unplaced, sheetArea, lost };
    this.found(this.best);
  }

  private sound(allowed: number): boolean {
    return this.missing() <= allowed && this.board.sheetArea <= this.best.sheetArea;
  }

  private missing(pool = this.board.pool): number {
    let sum = 0;
    for (let part = 0; part < pool.length; part += 1) sum += pool[part]! * this.weight[part]!;
    return sum;
  }

  /** Nothing less can be missing: what fits nowhere, and of the rest the smallest copies. */
  private leastMissing({ unplaced, hopeless }: Bound): number {
    const { copies } = this.board.job;
    const pool = new Int32Array(copies.length);
    let left = unplaced;
    for (const part of hopeless) {
      pool[part] = copies[part]!;
      left -= copies[part]!;
    }
    for (const part of [...copies.keys()].sort((one, other) => this.weight[one]! - this.weight[other]!)) {
      const more = Math.min(left, copies[part]! - pool[part]!);
      pool[part]! += more;
      left -= more;
    }
    return this.missing(pool) + SLACK;
  }

  private missingArea(): number {
    const { pool, job } = this.board;
    let sum = 0;
    for (let part = 0; part < pool.length; part += 1) sum += pool[part]! * job.area[part]!;
    return sum;
  }

  /** Whether pieces like those on the board can be filled with hardly any waste; else they are as before. */
  private tighten(fill: () => void, allowed: number): boolean {
    const { board, budget } = this;
    const bins = [...board.bins];
    const until = Math.min(UNTIL.opening, budget.spent() + TURN);
    while (budget.spent() < until) {
      budget.work();
      fill();
      if (this.missing() > allowed) continue;
      this.keep();
      return true;
    }
    board.reset(bins);
    return false;
  }

  /** Where only one stock of sheets can be opened; where there are others, moves have to choose among them. */
  private diverFor(bound: number): Diver | undefined {
    const { stocks } = this.board.job;
    const stock = stocks.findIndex(({ sheet }) => sheet);
    if (stock !== stocks.findLastIndex(({ sheet }) => sheet)) return undefined;
    const fewest = Math.ceil(bound / stocks[stock]!.area);
    const aim = { stock, fewest, random: this.random, budget: this.untilDived };
    this.diving ??= { diver: diver(this.board, aim) };
    return this.diving.diver;
  }

  /** Dives for a while; if none places enough, the board is as it was. */
  private dive(diving: Diver, allowed: number): boolean {
    const { board, budget, untilDived } = this;
    const bins = [...board.bins];
    const until = budget.spent() + DIVING;
    while (!untilDived.shouldStop() && budget.spent() < until) {
      diving.dive(this.best.pool);
      if (this.missing() <= allowed) {
        this.keep();
        return true;
      }
      board.reset(bins);
    }
    return false;
  }

  private dropSheet(): void {
    const { bins, job } = this.board;
    let emptiest = -1;
    bins.forEach((bin, index) => {
      if (!job.stocks[bin.stock]!.sheet) return;
      if (emptiest < 0 || bin.pattern.area < bins[emptiest]!.pattern.area) emptiest = index;
    });
    if (emptiest >= 0) this.board.remove(emptiest);
  }

  /** As many sheets as the best plan opens are filled first, then the offcuts that lose least for what they give. */
  private startSparing(noise: number): void {
    const { board, moves } = this;
    const sheets = this.best.bins.map((bin) => bin.stock).filter((stock) => board.job.stocks[stock]!.sheet);
    board.reset([]);
    const value = moves.values(noise);
    for (const stock of sheets) {
      if (this.budget.spent() >= this.untilLost) return;
      const bin = board.fill(stock, value, noise);
      if (bin) board.put(bin);
    }
    while (board.unplaced > this.best.unplaced && this.budget.spent() < this.untilLost) {
      const bin = this.cheapest(value, noise);
      if (!bin) return;
      board.put(bin);
    }
  }

  private cheapest(value: Float64Array, noise: number): Bin | undefined {
    const { board, random } = this;
    const offcuts = board.job.stocks.flatMap(({ sheet }, stock) =>
      !sheet && board.shelf[stock]! > 0 ? [stock] : [],
    );
    while (offcuts.length > MOST_TRIED) offcuts.splice(random.below(offcuts.length), 1);
    let best: Bin | undefined;
    for (const stock of offcuts) {
      const bin = board.fill(stock, value, noise);
      if (bin && (!best || bin.lost / bin.pattern.area < best.lost / best.pattern.area)) best = bin;
    }
    return best;
  }

  /** Late-acceptance search (Burke & Bykov 2017); whether it came to as little as was enough. */
  private round(round: Round): boolean {
    const { budget } = this;
    let cost = round.cost();
    let best = cost;
    let patience = budget.spent() + round.patience;
    const memory = new Float64Array(MEMORY).fill(cost);
    for (let turn = 0; best > round.enough; turn = (turn + 1) % MEMORY) {
      const spent = budget.spent();
      if (spent >= round.until || spent >= patience) return false;
      budget.work();
      const undo = this.moves.make(round);
      const now = round.cost();
      this.moves.learn(now < cost);
      if (now > cost && now > memory[turn]!) undo();
      else cost = now;
      memory[turn] = cost;
      if (cost >= best) continue;
      best = cost;
      patience = Math.max(patience, spent + round.patience);
      round.better();
    }
    return true;
  }
}

/**
 * Offcuts first, then sheets, a few large stocks at a time; each time the one that comes out fullest, or, when time is
 * short, the first. Patterns are kept while they stay possible. What time is too short for is placed quickly.
 */
function greedy(board: Board, value: Float64Array, budget: Budget): void {
  const { stocks } = board.job;
  for (const sheet of [false, true]) {
    const largestFirst = [...stocks.keys()].filter((stock) => stocks[stock]!.sheet === sheet);
    largestFirst.sort((one, other) => stocks[other]!.area - stocks[one]!.area);
    for (let from = 0; from < largestFirst.length; from += WINDOW) {
      useUp(board, largestFirst.slice(from, from + WINDOW), value, budget);
    }
  }
  if (board.unplaced > 0 && budget.elapsed() >= QUICKLY) placeQuickly(board);
}

function useUp(board: Board, stocks: readonly number[], value: Float64Array, budget: Budget): void {
  const ready = new Map<number, Bin>();
  while (board.unplaced > 0) {
    let best: Bin | undefined;
    for (const stock of stocks) {
      const elapsed = budget.elapsed();
      if (elapsed >= QUICKLY || (best && elapsed > HURRY)) break;
      const bin = nextBin(board, stock, ready, value);
      budget.work(Math.floor(board.job.papers[board.job.stocks[stock]!.paper]!.across.count / WAYS));
      if (bin && (!best || fullness(board, bin) > fullness(board, best))) best = bin;
    }
    if (!best) return;
    board.put(best);
  }
}

function nextBin(board: Board, stock: number, ready: Map<number, Bin>, value: Float64Array): Bin | undefined {
  if (board.shelf[stock] === 0) return undefined;
  const known = ready.get(stock);
  if (known && board.possible(known)) return known;
  const bin = board.fill(stock, value, 0);
  if (bin) ready.set(stock, bin);
  return bin;
}

const fullness = (board: Board, bin: Bin): number => bin.pattern.area / board.job.stocks[bin.stock]!.area;
