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

export interface Search {
  readonly best: () => Found;
  readonly run: () => void;
}

export function search(
  job: Job,
  target: Target,
  spare: Spare,
  random: Chance,
  budget: Budget,
  found: (best: Found) => void,
): Found {
  const board = new Board(job, stripFiller(job, random), spare);
  const hunt = new Hunt(board, random, budget);
  greedy(board, hunt.values(0));
  let best = snapshot(board);
  found(best);
  best = hunt.placeMore(best, target.unplaced, found);
  best = hunt.openLess(best, target.sheetArea(best.unplaced), found);
  return hunt.loseLess(best, found);
}

function snapshot(board: Board): Found {
  const { unplaced, sheetArea, lost } = board;
  return { bins: [...board.bins], pool: board.pool.slice(), unplaced, sheetArea, lost };
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

class Hunt {
  private readonly board: Board;
  private readonly random: Chance;
  private readonly budget: Budget;
  private readonly value: Float64Array;

  constructor(board: Board, random: Chance, budget: Budget) {
    this.board = board;
    this.random = random;
    this.budget = budget;
    this.value = new Float64Array(board.job.copies.length);
  }

  /** Values of the parts by area, shaken by up to `shake`. */
  values(shake: number): Float64Array {
    const power = shake > 0 ? 1 + 0.25 * this.random.next() : 1;
    this.board.job.area.forEach((area, part) => {
      this.value[part] = area ** power * (1 + shake * this.random.next());
    });
    return this.value;
  }

  placeMore(best: Found, _target: number, _found: (best: Found) => void): Found {
    return best;
  }

  openLess(best: Found, _target: number, _found: (best: Found) => void): Found {
    return best;
  }

  loseLess(best: Found, _found: (best: Found) => void): Found {
    return best;
  }
}
