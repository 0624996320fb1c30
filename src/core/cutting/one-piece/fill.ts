/**
 * "What can I get out of this one?": the most of some parts, by area, by count or by wish, from one sheet or offcut.
 * Knows the order in which table and search are tried; pinned and matching parts belong to planCuts.
 */
import { canPart, heightAbove, withBorder } from '../border.ts';
import type { UsedPiece } from '../cuts.ts';
import { type Limits, limitsOf, type Piece } from '../order.ts';
import { type FillSearch, fillLimited, type LimitedFill, NO_FILL } from './limited.ts';
import { type Axis, axisOf } from './normal-patterns.ts';
import { placeAssembly } from './place.ts';
import { openSurround, type Surround, surroundOf } from './surround.ts';
import { copiesLeft, topUp } from './topup.ts';
import { type Assembly, type FillTable, fillTable, mostOf, tableCost, traceBest } from './unlimited.ts';
import { type FillGoal, type FillPart, type Wants, wantsOf } from './wants.ts';

export interface FillOptions extends Limits {
  /** Area when absent. */
  readonly goal?: FillGoal;
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

// Untuned, taken as reasonable.
const MOST_MARKS = 4000;
const COARSE_MARKS = 300;
const MOST_CELLS = 6_000_000;
const QUICK_RUNS = 2;
const WORK_WITHOUT_CLOCK = 100_000;
/** Milliseconds per addition: a table that settles the matter may take all the time, one that only bounds, less. */
const TABLE_PACE = 1e-6;
const BOUND_PACE = 6e-6;
const BOUND_SHARE = 0.75;
const SEARCH_SHARE = 0.97;
/** Prices are sums of fractions; what is worth a whole number may come out this much off. */
const ROUNDING = 1e-6;

/**
 * The best fill found, by edge-to-edge cuts of any number of stages, above the piece's border. Lengths are whole numbers in one unit; parts that
 * may not come from the piece, do not fit it, or are worth nothing stay out. Where copies do not run short it is exact
 * whenever the table fits the time; else a search, proved when `proved`. Throws on lengths, copies or values that are
 * no numbers.
 */
export function fillPiece(piece: Piece, parts: readonly FillPart[], options: FillOptions = {}): Fill {
  const started = options.now?.() ?? 0;
  const { goal = 'area', longestCut = Infinity, keepAtLeast = 0 } = options;
  const above = { ...piece, height: heightAbove(piece) };
  const free = above.height > 0 && canPart(piece, options);
  const wants = free ? wantsOf(above, parts, goal, longestCut) : wantsOf(piece, [], goal, longestCut);
  const found = fill(wants, budgetOf(options, started));
  const scale = goal === 'area' ? wants.grid ** 2 : 1;
  const value = wants.whole ? Math.round(found.value) : found.value;
  const bound = wants.whole ? Math.floor(found.bound + ROUNDING) : found.bound;
  const lays = wants.lays.map(({ part, turned }) => ({ id: wants.parts[part]!.id, turned }));
  const placed = placeAssembly(found.assembly, above, { lays, grid: wants.grid, longestCut, keepAtLeast });
  return {
    ...withBorder(placed, piece, options),
    value: value * scale,
    bound: bound * scale,
    proved: value >= bound,
    timeMs: options.now ? options.now() - started : 0,
    limits: limitsOf(options),
  };
}

interface FillBudget {
  readonly timeMs: number;
  readonly seed: number;
  readonly work: number;
  /** Whether this share of the time is over, or the search is to stop. */
  readonly over: (share: number) => boolean;
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

function fill(wants: Wants, budget: FillBudget): LimitedFill {
  const found = fillKnowing(wants, budget);
  return { ...found, bound: wants.partial ? wants.bound : Math.min(found.bound, wants.bound) };
}

/** A quick search for something to show, then the table, then the search with the table's bounds. */
function fillKnowing(wants: Wants, budget: FillBudget): LimitedFill {
  const quick = searched(wants, budget, openSurround, NO_FILL, QUICK_RUNS);
  if (quick.value >= quick.bound) return quick;
  const table = tableFor(wants, budget);
  if (!table) return searched(wants, budget, openSurround, quick, Infinity);
  const known = knownFrom(wants, table, quick);
  if (known.value >= known.bound) return known;
  const surround = surroundOf(table, wants.width, wants.height, () => budget.over(BOUND_SHARE));
  return searched(wants, budget, surround ?? openSurround, known, Infinity);
}

/** What the table proves and, if it is exact and no part runs short in it, finds. */
function knownFrom(wants: Wants, table: FillTable, quick: LimitedFill): LimitedFill {
  const most = mostOf(table) + sum(wants.prices.map((price, part) => price * wants.copies[part]!));
  const bound = Math.min(quick.bound, wants.whole ? Math.floor(most + ROUNDING) : most);
  const assembly = isExact(table) ? traceBest(table, wants.lays) : undefined;
  if (!assembly || !canCut(wants, assembly)) return { ...quick, bound };
  const left = copiesLeft(wants, assembly);
  const prices = sum(left.map((count, part) => (wants.copies[part]! - count) * wants.prices[part]!));
  const value = mostOf(table) + prices;
  return value > quick.value
    ? { ...quick, assembly, value, bound: Math.max(value, bound) }
    : { ...quick, bound };
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, one) => total + one, 0);

function searched(
  wants: Wants,
  { seed, work, over }: FillBudget,
  surround: Surround,
  known: LimitedFill,
  runs: number,
): LimitedFill {
  const problem = { ...wants, surround };
  const search = (share: number, most: number): FillSearch => ({
    ...{ seed, work, runs: most },
    shouldStop: () => over(share),
  });
  const found = fillLimited(problem, search(SEARCH_SHARE, runs), known);
  return topUp({ ...problem, surround: openSurround }, search(1, QUICK_RUNS), found);
}

/** The exact table if it can be had in the time, else a coarse one. */
function tableFor(wants: Wants, budget: FillBudget): FillTable | undefined {
  const exact = axesOf(wants, MOST_MARKS);
  const [pace, share] = wants.runsShort ? [BOUND_PACE, BOUND_SHARE] : [TABLE_PACE, 1];
  const affordable =
    exact?.every(({ unit }) => unit === 1) &&
    exact[0].marks.length * exact[1].marks.length <= MOST_CELLS &&
    tableCost(...exact) * pace <= budget.timeMs * share;
  const axes = affordable ? exact : axesOf(wants, COARSE_MARKS);
  return axes && fillTable(...axes, wants.lays, () => budget.over(share));
}

function axesOf({ lays, width, height }: Wants, most: number): [Axis, Axis] | undefined {
  const sides = (name: 'width' | 'height'): number[] => lays.map((lay) => lay[name]);
  const x = axisOf(sides('width'), Math.floor(width), most);
  const y = axisOf(sides('height'), Math.floor(height), most);
  return x && y && [x, y];
}

const isExact = ({ x, y }: FillTable): boolean => x.unit === 1 && y.unit === 1;

/** Whether an assembly keeps to the copies, on a trimmer as long as the piece. */
const canCut = (wants: Wants, assembly: Assembly): boolean =>
  copiesLeft(wants, assembly).every((left) => left >= 0) &&
  wants.longestCut >= Math.max(wants.width, wants.height);
