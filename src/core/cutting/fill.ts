/**
 * "What can I get out of this one?": the most of some parts, by area, by count or by wish, from one sheet or offcut.
 * Knows the order in which table and search are tried; pinned and matching parts belong to planCuts.
 */
import type { UsedPiece } from './cuts.ts';
import { type FillProblem, fillLimited, type LimitedFill, NO_FILL } from './limited.ts';
import { type Limits, mayTurn, type Part, type Piece, suits } from './order.ts';
import { type Axis, axisOf } from './patterns.ts';
import { placeAssembly } from './place.ts';
import { openSurround, surroundOf } from './surround.ts';
import {
  type Assembly,
  densestOf,
  type FillTable,
  fillTable,
  type Lay,
  mostOf,
  tableCost,
  traceBest,
} from './unlimited.ts';

/** A part as in an order, but without `copies` as many as fit. */
export interface FillPart extends Omit<Part, 'copies'> {
  readonly copies?: number;
  /** What a copy is worth when filling by wish; 0 when absent. */
  readonly value?: number;
}

export interface FillOptions extends Limits {
  /** What there is to be most of: area (the default), number of copies, or the parts' values. */
  readonly goal?: 'area' | 'count' | 'wish';
  /** Time limit, read from `now`; 1000 when absent. It also decides how large a table is worth its while. */
  readonly timeMs?: number;
  readonly seed?: number;
  /** At most this many blocks are tried; with it and without `now`, the same input gives the same fill. */
  readonly work?: number;
  /** The clock, in milliseconds; without it `timeMs` is not kept and `work` is limited. */
  readonly now?: () => number;
  readonly shouldStop?: () => boolean;
}

/** Areas in square units of the caller's; `value` is met or beaten by no other fill when it equals `bound`. */
export interface Fill extends UsedPiece {
  readonly value: number;
  readonly bound: number;
  readonly proved: boolean;
  readonly timeMs: number;
  readonly limits: Limits;
}

const MOST_MARKS = 4000;
const COARSE_MARKS = 300;
const MOST_CELLS = 9_000_000;
const QUICK_RUNS = 3;
const WORK_WITHOUT_CLOCK = 100_000;
/** A table may take all the time if it settles the matter, and else about two thirds; milliseconds per addition. */
const TABLE_PACE = 1e-6;
const BOUND_PACE = 6e-6;
const BOUND_SHARE = 0.75;

/**
 * The best fill found, by edge-to-edge cuts of any number of stages. Lengths are whole numbers in one unit; parts that
 * may not come from the piece, do not fit it, or are worth nothing stay out. Where copies do not run short it is exact
 * whenever the table fits the time; else a search, proved when `proved`. Throws on lengths, copies or values that are
 * no numbers.
 */
export function fillPiece(piece: Piece, parts: readonly FillPart[], options: FillOptions = {}): Fill {
  const started = options.now?.() ?? 0;
  const job = prepare(piece, parts, options);
  const found = job.lays.length > 0 ? fill(job, budgetOf(options, started)) : NO_FILL;
  const { goal = 'area', longestCut, keepAtLeast } = options;
  const scale = goal === 'area' ? job.grid ** 2 : 1;
  return {
    ...placeAssembly(found.assembly, piece, {
      lays: job.lays.map(({ part, turned }) => ({ id: job.parts[part]!.id, turned })),
      grid: job.grid,
      longestCut: longestCut ?? Infinity,
      keepAtLeast: keepAtLeast ?? 0,
    }),
    value: found.value * scale,
    bound: (job.lays.length > 0 ? found.bound : 0) * scale,
    proved: found.value >= found.bound || job.lays.length === 0,
    timeMs: options.now ? options.now() - started : 0,
    limits: {
      ...(longestCut !== undefined && { longestCut }),
      ...(keepAtLeast !== undefined && { keepAtLeast }),
    },
  };
}

/** Lengths on the parts' own grid. */
interface FillJob extends Omit<FillProblem, 'surround'> {
  readonly grid: number;
  readonly parts: readonly FillPart[];
  /** Some part has fewer copies than could fit. */
  readonly runsShort: boolean;
}

interface FillBudget {
  readonly timeMs: number;
  readonly seed: number;
  readonly work: number;
  /** Whether this share of the time is over, or the search is to stop. */
  readonly over: (share: number) => boolean;
}

function prepare(piece: Piece, given: readonly FillPart[], options: FillOptions): FillJob {
  checkNumbers(piece, given);
  const { goal = 'area', longestCut = Infinity } = options;
  const parts = given.filter(
    (part) =>
      !part.pin &&
      suits({ ...part, copies: 1 }, piece) &&
      worthOf(part, goal) > 0 &&
      mostCopies(part, piece) > 0,
  );
  const grid = parts.reduce((common, part) => divisor(divisor(common, part.width), part.height), 0) || 1;
  const scale = goal === 'area' ? grid ** 2 : 1;
  const lays = parts.flatMap((part, index) =>
    waysOf(part, piece).map((way) => ({
      part: index,
      turned: way.turned,
      width: way.width / grid,
      height: way.height / grid,
      value: worthOf(part, goal) / scale,
    })),
  );
  const copies = parts.map((part) => mostCopies(part, piece));
  const [width, height] = [piece.width / grid, piece.height / grid];
  return {
    ...{ grid, parts, lays, copies, width, height },
    runsShort: parts.some((part) => (part.copies ?? Infinity) < roomFor(part, piece)),
    longestCut: longestCut / grid,
    density: densestOf(lays),
    bound: plainBound(lays, copies, width * height),
  };
}

function checkNumbers(piece: Piece, parts: readonly FillPart[]): void {
  for (const { width, height } of [piece, ...parts]) {
    for (const side of [width, height]) {
      if (!Number.isSafeInteger(side) || side <= 0) throw new Error(`invalid length: ${side}`);
    }
  }
  for (const { copies = 0, value = 0 } of parts) {
    if (!Number.isSafeInteger(copies) || copies < 0) throw new Error(`invalid copies: ${copies}`);
    if (!Number.isFinite(value)) throw new Error(`invalid value: ${value}`);
  }
}

const worthOf = (part: FillPart, goal: 'area' | 'count' | 'wish'): number =>
  goal === 'area' ? part.width * part.height : goal === 'count' ? 1 : (part.value ?? 0);

/** How many copies have room as far as area goes; 0 if not even one fits. */
const roomFor = (part: FillPart, piece: Piece): number =>
  waysOf(part, piece).length > 0 ? Math.floor((piece.width * piece.height) / (part.width * part.height)) : 0;

const mostCopies = (part: FillPart, piece: Piece): number =>
  Math.min(part.copies ?? Infinity, roomFor(part, piece), 2 ** 24);

function waysOf(part: FillPart, piece: Piece) {
  const { width, height } = part;
  const ways = [{ turned: false, width, height }];
  if (width !== height && mayTurn({ ...part, copies: 1 }, piece)) {
    ways.push({ turned: true, width: height, height: width });
  }
  return ways.filter((way) => way.width <= piece.width && way.height <= piece.height);
}

const divisor = (one: number, other: number): number => (other === 0 ? one : divisor(other, one % other));

/** No more than all copies together, nor than the area filled with the densest part. */
function plainBound(lays: readonly Lay[], copies: readonly number[], area: number): number {
  const values = new Map(lays.map(({ part, value }) => [part, value]));
  const all = copies.reduce((sum, count, part) => sum + count * values.get(part)!, 0);
  const dense = densestOf(lays) * area;
  return Math.min(all, lays.every(({ value }) => Number.isInteger(value)) ? Math.floor(dense) : dense);
}

function budgetOf(options: FillOptions, started: number): FillBudget {
  const { timeMs = 1000, seed = 1, now, shouldStop } = options;
  return {
    timeMs,
    seed,
    work: options.work ?? (now ? Infinity : WORK_WITHOUT_CLOCK),
    over: (share) => (shouldStop?.() ?? false) || (now !== undefined && now() - started >= timeMs * share),
  };
}

/** A quick search for something to show, then the table, then the search with the table's bounds. */
function fill(job: FillJob, budget: FillBudget): LimitedFill {
  const quick = searchWith(job, budget, openSurround, NO_FILL, QUICK_RUNS);
  if (quick.value >= quick.bound || budget.over(1)) return quick;
  const table = tableFor(job, budget);
  if (!table) return searchWith(job, budget, openSurround, quick, Infinity);
  const bounded = { ...quick, bound: Math.min(quick.bound, mostOf(table)) };
  const traced = isExact(table) ? traceBest(table, job.lays) : undefined;
  if (traced && canCut(job, traced)) return { ...bounded, assembly: traced, value: mostOf(table) };
  const over = () => budget.over(BOUND_SHARE);
  const surround = surroundOf(table, job.width, job.height, over) ?? openSurround;
  return searchWith(job, budget, surround, bounded, Infinity);
}

const searchWith = (
  job: FillJob,
  { seed, work, over }: FillBudget,
  surround: FillProblem['surround'],
  known: LimitedFill,
  runs: number,
): LimitedFill => fillLimited({ ...job, surround }, { seed, work, runs, shouldStop: () => over(1) }, known);

/** The exact table if it can be had in the time, else a coarse one. */
function tableFor(job: FillJob, budget: FillBudget): FillTable | undefined {
  const exact = axesOf(job, MOST_MARKS);
  const [pace, share] = job.runsShort ? [BOUND_PACE, BOUND_SHARE] : [TABLE_PACE, 1];
  const affordable =
    exact?.every(({ unit }) => unit === 1) &&
    exact[0].marks.length * exact[1].marks.length <= MOST_CELLS &&
    tableCost(...exact) * pace <= budget.timeMs * share;
  const axes = affordable ? exact : axesOf(job, COARSE_MARKS);
  return axes && fillTable(...axes, job.lays, () => budget.over(share));
}

function axesOf(job: FillJob, most: number): [Axis, Axis] | undefined {
  const x = axisOf(
    job.lays.map(({ width }) => width),
    Math.floor(job.width),
    most,
  );
  const y = axisOf(
    job.lays.map(({ height }) => height),
    Math.floor(job.height),
    most,
  );
  return x && y && [x, y];
}

const isExact = ({ x, y }: FillTable): boolean => x.unit === 1 && y.unit === 1;

/** Whether an assembly keeps to the copies, on a trimmer as long as the piece. */
function canCut(job: FillJob, assembly: Assembly): boolean {
  const used = new Map<number, number>();
  countParts(job, assembly, used);
  const enough = [...used].every(([part, count]) => count <= job.copies[part]!);
  return enough && job.longestCut >= Math.max(job.width, job.height);
}

function countParts(job: FillJob, assembly: Assembly, used: Map<number, number>): void {
  if ('lay' in assembly) {
    const { part } = job.lays[assembly.lay]!;
    used.set(part, (used.get(part) ?? 0) + 1);
    return;
  }
  countParts(job, assembly.first, used);
  countParts(job, assembly.second, used);
}
