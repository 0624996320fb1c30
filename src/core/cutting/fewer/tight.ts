/**
 * Fills pieces that may hardly lose anything: most of them without waste, so chosen that what is left is easy to place,
 * and the others from what is left. Knows the board and learns which parts are hard to place; keeps no plan.
 */
import type { Board } from '../search/board.ts';
import { isFree } from '../search/job.ts';
import { type Merger, MOST_PARTS, merger } from '../search/merge.ts';
import type { Chance } from '../search/random.ts';
import { type PerfectFill, perfectFills } from './perfect.ts';

// Made for orders that need nearly all of their sheets; no sweep is on record, taken as reasonable.
/** How much may be left over of all pieces together, as a share of one, if this is to be worth trying. */
const MOST_WASTE = 0.25;
/** With more parts to a piece than this, moving them about does better than whole patterns, tight or decided on. */
export const MOST_EACH = 14;
const LARGE_FIRST = 1.5;
const HARDER = 1.3;
const SHAKE = 0.5;
const REST_SHAKE = 0.3;

/**
 * Fills the stocks on the board with all parts, as far as they go, in another way each time it is called. Undefined, and
 * the board as it was, where the pieces are of several papers or not for all parts, are roomy, or always leave waste.
 */
export function tightFiller(
  board: Board,
  random: Chance,
  shouldStop: () => boolean,
): (() => void) | undefined {
  const { job } = board;
  const stocks = board.bins.map((bin) => bin.stock);
  const [paper, ...others] = new Set(stocks.map((stock) => job.stocks[stock]!.paper));
  const plain = paper !== undefined && job.papers[paper]!.lies.every(isFree);
  const waste = wasteOf(board, stocks);
  const packer = merger(job);
  if (!packer || !plain || others.length > 0 || job.matchings.length > 0) return undefined;
  if (waste < 0 || waste * stocks.length > MOST_WASTE * areaOf(board, stocks)) return undefined;
  const parts = job.copies.reduce((sum, copies) => sum + copies, 0);
  if (parts > MOST_EACH * stocks.length) return undefined;
  const fills = perfectFills(job, [...new Set(stocks)], { available: job.copies, random, shouldStop });
  if (fills.length === 0) return undefined;
  const hard = Float64Array.from(job.area, (area) => area ** LARGE_FIRST);
  const filling: Tight = { board, random, stocks, fills, packer, waste, hard };
  return () => attempt(filling);
}

interface Tight {
  readonly board: Board;
  readonly random: Chance;
  readonly stocks: readonly number[];
  readonly fills: readonly PerfectFill[];
  readonly packer: Merger;
  readonly waste: number;
  /** By part, how much it is worth to have placed it early. */
  readonly hard: Float64Array;
}

const areaOf = ({ job }: Board, stocks: readonly number[]): number =>
  stocks.reduce((sum, stock) => sum + job.stocks[stock]!.area, 0);

const wasteOf = (board: Board, stocks: readonly number[]): number =>
  board.job.copies.reduce(
    (left, copies, part) => left - copies * board.job.area[part]!,
    areaOf(board, stocks),
  );

function attempt(tight: Tight): void {
  const { board, hard } = tight;
  board.reset([]);
  fillRest(tight, fillPerfectly(tight));
  board.pool.forEach((copies, part) => {
    if (copies > 0) hard[part]! *= HARDER;
  });
}

/** Puts fills without waste on the board, for all stocks but one or two; answers with the stocks left. */
function fillPerfectly(tight: Tight): number[] {
  const { board, random, fills } = tight;
  const left = [...tight.stocks];
  const few = 1 + random.below(2);
  for (const index of ranked(tight)) {
    if (left.length <= few) break;
    const { stock, parts, pattern } = fills[index]!;
    const at = left.indexOf(stock);
    if (at < 0 || !board.holds(parts, board.job.stocks[stock]!.paper)) continue;
    left.splice(at, 1);
    put(board, stock, pattern());
  }
  return left.sort((one, other) => one - other);
}

function ranked({ fills, hard, random }: Tight): number[] {
  const shake = SHAKE * random.next();
  const scores = fills.map(
    ({ parts }) => parts.reduce((sum, part) => sum + hard[part]!, 0) * (1 + shake * random.next()),
  );
  return [...fills.keys()].sort((one, other) => scores[other]! - scores[one]!);
}

/** Merges what is left into the stocks left, and fills with strips those for which that cannot be done. */
function fillRest({ board, packer, waste, hard }: Tight, left: readonly number[]): void {
  const parts: number[] = [];
  board.pool.forEach((copies, part) => {
    for (let copy = 0; copy < copies; copy += 1) parts.push(part);
  });
  const few = left.length > 0 && parts.length <= MOST_PARTS;
  const patterns = few ? packer.pack(left, parts, hard, waste) : undefined;
  left.forEach((stock, index) => {
    const pattern = patterns?.[index];
    if (pattern) put(board, stock, pattern);
  });
  left.forEach((stock, index) => {
    const bin = patterns?.[index] ? undefined : board.fill(stock, hard, REST_SHAKE);
    if (bin) board.put(bin);
  });
}

const put = (board: Board, stock: number, pattern: ReturnType<PerfectFill['pattern']>): void =>
  board.put({ stock, pattern, lost: board.lossOf(stock, pattern) });
