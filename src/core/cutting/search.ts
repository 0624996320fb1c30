/**
 * Looks for the best plan of a prepared order: a greedy start, then large-neighbourhood search towards one goal after
 * another. Knows the goals and the budget; leaves filling a piece to the filler and proof to the bounds.
 */
import { type Bin, Board, type Spare } from './board.ts';
import type { Job } from './job.ts';
import type { Chance } from './random.ts';
import { stripFiller } from './strips.ts';

export interface Target {
  /** No plan leaves fewer copies. */
  readonly unplaced: number;
  /** No plan that leaves so many opens less; in grid units. */
  readonly sheetArea: (unplaced: number) => number;
}

export interface Budget {
  /** How much of the time and work is used up: 1 and more means stop. */
  readonly spent: () => number;
  /** Counts one repacking. */
  readonly work: () => void;
}

export interface Found {
  readonly bins: readonly Bin[];
  readonly pool: Int32Array;
  readonly unplaced: number;
  readonly sheetArea: number;
  readonly lost: number;
}

/** Shares of the budget after which the first and the second goal are left as they are. */
const FIRST_GOAL = 0.5;
const SECOND_GOAL = 0.85;
/** Moves remembered by late acceptance. */
const MEMORY = 60;

/**
 * The best found within the budget, by the goals in order; `found` hears of each better one. Deterministic for the same
 * chance and work.
 */
export function search(
  job: Job,
  target: Target,
  spare: Spare,
  random: Chance,
  budget: Budget,
  found: (best: Found) => void,
): Found {
  const board = new Board(job, stripFiller(job, random), spare);
  const hunt = new Hunt(board, random, budget, found);
  greedy(board, hunt.values(0));
  hunt.keep();
  hunt.placeMore(target.unplaced);
  hunt.openLess(target.sheetArea(hunt.best.unplaced));
  hunt.loseLess();
  return hunt.best;
}

/** Offcuts first, then sheets; each time the one that comes out fullest. Patterns are kept while they stay possible. */
function greedy(board: Board, value: Float64Array): void {
  for (const sheet of [false, true]) {
    const stocks = board.job.stocks.flatMap((stock, index) => (stock.sheet === sheet ? [index] : []));
    const ready = new Map<number, Bin>();
    while (board.unplaced > 0) {
      let best: Bin | undefined;
      for (const stock of stocks) {
        const bin = nextBin(board, stock, ready, value);
        if (bin && (!best || fullness(board, bin) > fullness(board, best))) best = bin;
      }
      if (!best) break;
      board.put(best);
    }
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

/** What a round of moves seeks: a lower cost, by as much as `enough`, until its share of the budget is spent. */
interface Round {
  readonly cost: () => number;
  readonly enough: number;
  readonly until: number;
  /** Most area of sheets on the board. */
  readonly sheets: number;
  /** Offcuts cost nothing in the first two goals, and are spent one by one in the third. */
  readonly sparing: boolean;
  readonly better: () => void;
}

class Hunt {
  best!: Found;
  private readonly board: Board;
  private readonly random: Chance;
  private readonly budget: Budget;
  private readonly found: (best: Found) => void;
  private readonly value: Float64Array;
  private readonly weight: Float64Array;

  constructor(board: Board, random: Chance, budget: Budget, found: (best: Found) => void) {
    this.board = board;
    this.random = random;
    this.budget = budget;
    this.found = found;
    this.value = new Float64Array(board.job.copies.length);
    this.weight = new Float64Array(board.job.copies.length);
  }

  /** Values of the parts by area, shaken by up to `shake`. */
  values(shake: number): Float64Array {
    const power = shake > 0 ? 1 + 0.25 * this.random.next() : 1;
    this.board.job.area.forEach((area, part) => {
      this.value[part] = area ** power * (1 + shake * this.random.next());
    });
    return this.value;
  }

  keep(): void {
    const { bins, pool, unplaced, sheetArea, lost } = this.board;
    this.best = { bins: [...bins], pool: pool.slice(), unplaced, sheetArea, lost };
    this.found(this.best);
  }

  /** First goal: most copies placed, then most of their area. */
  placeMore(bound: number): void {
    const { job } = this.board;
    const whole = job.area.reduce((sum, area, part) => sum + area * job.copies[part]!, 1);
    job.area.forEach((area, part) => {
      this.weight[part] = 1 + area / whole;
    });
    if (this.best.unplaced <= bound) return;
    this.round({
      cost: () => this.missing(),
      enough: bound + (bound > 0 ? 0 : 0.5),
      until: FIRST_GOAL,
      sheets: Number.MAX_SAFE_INTEGER,
      sparing: false,
      better: () => this.keep(),
    });
  }

  /** Second goal: the same copies from less new sheet area; each time one sheet fewer is the aim. */
  openLess(bound: number): void {
    const allowed = this.missing();
    while (this.best.sheetArea > bound && this.budget.spent() < SECOND_GOAL) {
      this.board.reset(this.best.bins);
      this.dropSheet();
      const { sheetArea } = this.best;
      const done = this.round({
        cost: () => Math.max(0, this.missingArea()),
        enough: 0,
        until: SECOND_GOAL,
        sheets: sheetArea - 1,
        sparing: false,
        better: () => {
          if (this.missing() <= allowed + 1e-9) this.keep();
        },
      });
      if (!done) break;
    }
  }

  loseLess(): void {}

  private missing(): number {
    return this.weighted(this.weight);
  }

  private missingArea(): number {
    return this.weighted(this.board.job.area);
  }

  private weighted(weight: Float64Array): number {
    const { pool } = this.board;
    let sum = 0;
    for (let part = 0; part < pool.length; part += 1) sum += pool[part]! * weight[part]!;
    return sum;
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

  /** Late-acceptance search (Burke & Bykov 2017) over moves that empty a few pieces and fill them again. */
  private round(round: Round): boolean {
    let cost = round.cost();
    let best = cost;
    const memory = new Float64Array(MEMORY).fill(cost);
    for (let turn = 0; best > round.enough; turn = (turn + 1) % MEMORY) {
      if (this.budget.spent() >= round.until) return false;
      this.budget.work();
      const undo = this.repack(round);
      const now = round.cost();
      if (now > cost && now > memory[turn]!) undo();
      else cost = now;
      memory[turn] = cost;
      if (cost < best) {
        best = cost;
        round.better();
      }
    }
    return true;
  }

  /** Empties one to four pieces and fills them, and perhaps others, anew; returns how to undo it. */
  private repack(round: Round): () => void {
    const { board, random } = this;
    const many = Math.min(board.bins.length, 1 + random.below(4));
    const old: Bin[] = [];
    while (old.length < many) old.push(board.remove(random.below(board.bins.length)));
    const kept = board.bins.length;
    this.values(0.3);
    for (const stock of this.candidates(old, round)) {
      if (board.unplaced === 0) break;
      const bin = board.fill(stock, this.value, 0.3);
      if (bin) board.put(bin);
    }
    return () => {
      while (board.bins.length > kept) board.remove(board.bins.length - 1);
      for (const bin of old) board.put(bin);
    };
  }

  private candidates(old: readonly Bin[], round: Round): number[] {
    const stocks = old.map((bin) => bin.stock);
    void round;
    return stocks;
  }
}
