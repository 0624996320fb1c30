/**
 * The cut planner's front door: an order and pieces in, a plan with its bounds out. Knows how search, bounds and the
 * finished plan fit together; the goals themselves are pursued in search.ts.
 */

import { type Bound, bound, tighter } from './bound/bound.ts';
import type { CutPlan, UsedPiece } from './cuts.ts';
import { type Bounds, limitsOf, type Order, type Piece, type PlanOptions, type PlanSoFar } from './order.ts';
import { remediesFor } from './remedies/remedies.ts';
import { type Job, prepare } from './search/job.ts';
import { chance } from './search/random.ts';
import { type Budget, type Found, NEARLY, search } from './search/search.ts';
import { unfold } from './search/unfold.ts';
import { variants } from './search/variants.ts';
import { cutSheet } from './steps.ts';
import { alike } from './trimmer/alike.ts';
import { Likeness } from './trimmer/fewer.ts';
import { worth } from './worth.ts';

/** One piece instead of an order: the most that comes out of it. */
export { fillPiece } from './one-piece/fill.ts';

/**
 * The best plan found within the time and work allowed. Goals in this order: most copies placed, then most of their area;
 * least area of new sheets; least worth lost to the shelf; and among plans that lose at most 1 % more, fewest patterns (pieces cut
 * alike have one), then fewest measures set at the fence.
 * Lengths are whole numbers in one unit. `proved` speaks of the copies placed and the area of new sheets. With `work` and
 * without `now` the same input gives the same plan.
 */
export function planCuts(order: Order, pieces: readonly Piece[], options: PlanOptions = {}): CutPlan {
  const started = options.now?.() ?? 0;
  const searching = { ...options, ...timeToSearch(order, pieces, options) };
  const tries = triesOf(order, pieces, meter(searching, started)(0, 1));
  const best = bestOf(tries, searching, started);
  return finish(
    best,
    tries.map((one) => one.bound),
    { order, pieces, options, started },
  );
}

/** Shares of the budget that may go into bounds, before there is a plan, and in all. */
const FIRST_BOUNDS = 0.05;
const FOR_BOUNDS = 0.25;

interface Try {
  readonly job: Job;
  /** Known better once there is a plan, where it was hurried. */
  bound: Bound;
  readonly hurried: boolean;
}

/** Kinds of part times kinds of piece beyond which bounding alone takes longer than anyone waits. */
const MOST_BOUNDED = 2e7;
/** What holds for every plan. */
const NO_BOUND: Bound = { unplaced: 0, hopeless: [], sheetArea: () => 0 };

/** Where a design has to be decided on, each decision is bounded apart, while time allows, else all together. */
function triesOf(order: Order, pieces: readonly Piece[], budget: Budget): Try[] {
  if (order.parts.length * pieces.length > MOST_BOUNDED)
    return [{ job: prepare(order, pieces), bound: NO_BOUND, hurried: false }];
  const orders = variants(order, pieces);
  const after = (share: number) => (): boolean => budget.spent() > share;
  if (orders.length === 1) {
    const job = prepare(orders[0]!, pieces);
    const late = after(FIRST_BOUNDS);
    return [{ job, bound: bound(job, late), hurried: late() }];
  }
  const late = after(FOR_BOUNDS);
  const whole = bound(prepare(order, pieces), late);
  return orders.map((one) => {
    const job = prepare(one, pieces);
    return { job, bound: late() ? whole : bound(job, late), hurried: false };
  });
}

/** What writing a plan down takes for each kind of part and piece, in milliseconds, and most of the time kept for it. */
const WRITING = 2e-4;
const MOST_WRITING = 0.4;

/** Thousands of kinds take their time once the search is over, which belongs to the limit too. */
function timeToSearch(order: Order, pieces: readonly Piece[], { now, timeMs = 1000 }: PlanOptions) {
  const writing = Math.min(MOST_WRITING * timeMs, WRITING * order.parts.length * pieces.length);
  return now ? { timeMs: timeMs - writing } : {};
}

interface Result extends Try {
  readonly found: Found;
}

/** Tries that get a second chance beside the best. */
const MOST_AGAIN = 3;

/**
 * One try gets the whole budget; of several, each gets a share of the first half, and the best one and some that might
 * still come to more get the rest.
 */
function bestOf(tries: readonly Try[], options: PlanOptions, started: number): Result {
  const budgets = meter(options, started);
  let told: Result | undefined;
  const run = (one: Try, budget: Budget): Result => {
    const report = (found: Found): void => {
      const now = { ...one, found };
      if (told && better(told, now)) return;
      told = now;
      const bounds = tries.map((each) => each.bound);
      options.onProgress?.(progress(one.job, found, bounds));
    };
    const bounded = (): Bound => {
      if (one.hurried)
        one.bound = tighter(
          one.bound,
          bound(one.job, () => budget.spent() > FOR_BOUNDS),
        );
      return one.bound;
    };
    const random = chance(options.seed ?? 1);
    const found = search(one.job, bounded, options.spare ?? 'worth', random, budget, report);
    return { ...one, found };
  };
  if (tries.length === 1) return run(tries[0]!, budgets(0, 1));
  const share = 0.5 / tries.length;
  const first = tries.map((one, index) => run(one, budgets(index * share, (index + 1) * share)));
  const best = first.reduce((one, other) => (preferred(other, one) ? other : one));
  const again = [best, ...first.filter((one) => one !== best && mightBeat(one, best)).slice(0, MOST_AGAIN)];
  return again
    .map((one, index) =>
      run(one, budgets(0.5 + index * (0.5 / again.length), 0.5 + (index + 1) * (0.5 / again.length))),
    )
    .reduce((one, other) => (preferred(other, one) ? other : one), best);
}

/** Whether its bound leaves room for more copies or fewer sheets than the other found. */
function mightBeat({ job, bound }: Result, { job: otherJob, found }: Result): boolean {
  if (bound.unplaced !== found.unplaced) return bound.unplaced < found.unplaced;
  return bound.sheetArea(found.unplaced) * job.grid ** 2 < found.sheetArea * otherJob.grid ** 2;
}

/** As `better`, but that what is next to as good wins where more of it is cut alike. */
function preferred(one: Result, other: Result): boolean {
  const [goals, others] = [goalsOf(one), goalsOf(other)];
  const [lost, otherLost] = [goals.at(-1)!, others.at(-1)!];
  const near = Math.max(lost, otherLost) <= Math.min(lost, otherLost) * NEARLY;
  if (near && goals.slice(0, -1).every((goal, index) => goal === others[index])) {
    const fewer = patternsIn(one) - patternsIn(other);
    if (fewer !== 0) return fewer < 0;
  }
  return better(one, other);
}

const patternsIn = ({ job, found }: Result): number => new Likeness(job).of(found.bins).patterns;

function better(one: Result, other: Result): boolean {
  const [goals, others] = [goalsOf(one), goalsOf(other)];
  const at = goals.findIndex((goal, index) => goal !== others[index]);
  return at >= 0 && goals[at]! < others[at]!;
}

/** Each less is better, the first that differs decides: copies missing, their area, area of new sheets, worth lost. */
function goalsOf({ job, found }: Result): readonly number[] {
  const missing = found.pool.reduce((sum, copies, part) => sum + copies * job.area[part]!, 0);
  const { unplaced, sheetArea, lost } = found;
  return [unplaced, missing * job.grid ** 2, sheetArea * job.grid ** 2, lost * job.grid ** 3];
}

/** About what one core does on a batch of some sixty parts; stands in for the clock where there is none. */
const REPACKINGS_PER_MS = 3;

/** Makes budgets that span a share of the time and work from one fraction to another. */
function meter(options: PlanOptions, started: number): (from: number, to: number) => Budget {
  const { now, shouldStop, timeMs = 1000 } = options;
  const work = options.work ?? (now ? Number.MAX_SAFE_INTEGER : timeMs * REPACKINGS_PER_MS);
  let done = 0;
  const spent = (): number => Math.max(done / work, now ? (now() - started) / timeMs : 0);
  return (from, to) => ({
    work: (times = 1) => {
      done += times;
    },
    elapsed: () => (spent() - from) / (to - from),
    spent: () => (shouldStop?.() ? 1 : (spent() - from) / (to - from)),
  });
}

/** What holds for every plan when a plan for any of the tries may be chosen. */
function boundsOf(bounds: readonly Bound[], unplaced: number, squared: number): Bounds {
  return {
    unplaced: Math.min(...bounds.map((one) => one.unplaced)),
    newSheetArea: Math.min(...bounds.map((one) => one.sheetArea(unplaced))) * squared,
  };
}

function progress(job: Job, found: Found, bounds: readonly Bound[]): PlanSoFar {
  const copies = job.copies.reduce((sum, one) => sum + one, 0);
  const sheets = found.bins.filter((bin) => job.stocks[bin.stock]!.sheet);
  return {
    placed: copies - found.unplaced,
    unplaced: found.unplaced,
    newSheets: sheets.length,
    newSheetArea: found.sheetArea * job.grid ** 2,
    bounds: boundsOf(bounds, found.unplaced, job.grid ** 2),
  };
}

interface Context {
  readonly order: Order;
  readonly pieces: readonly Piece[];
  readonly options: PlanOptions;
  readonly started: number;
}

function finish({ job, found }: Result, all: readonly Bound[], context: Context): CutPlan {
  const { order, pieces, options, started } = context;
  const byId = new Map(pieces.map((piece) => [piece.id, piece]));
  const used = alike(order, pieces, unfold(job, found.bins));
  const cut = used.map((one) => byId.get(one.piece)!);
  const areaOf = (kind: string): number =>
    cut.reduce((sum, piece) => sum + (piece.kind === kind ? piece.width * piece.height : 0), 0);
  const newSheetArea = areaOf('sheet');
  const bounds = boundsOf(all, found.unplaced, job.grid ** 2);
  const advise = remediesFor({ parts: order.parts, pieces, used, longestCut: order.longestCut });
  return {
    placed: used.reduce((sum, one) => sum + one.rectangles.length, 0),
    unplaced: order.parts.flatMap((part, index) => {
      const copies = found.pool[index]!;
      return copies === 0 ? [] : [{ part: part.id, copies, remedies: advise(part, copies) }];
    }),
    newSheets: cut.filter((piece) => piece.kind === 'sheet').length,
    newSheetArea,
    offcutAreaUsed: areaOf('offcut'),
    worthLost: worthLost(cut, used, order.keepAtLeast),
    bounds,
    proved: bounds.unplaced === found.unplaced && bounds.newSheetArea === newSheetArea,
    timeMs: options.now ? options.now() - started : 0,
    limits: limitsOf(order),
    used,
    ...cutSheet(pieces, { used }, order),
  };
}

const worthLost = (cut: readonly Piece[], used: readonly UsedPiece[], keepAtLeast?: number): number =>
  cut.reduce((sum, piece) => sum + worth(piece, keepAtLeast), 0) -
  used.flatMap((one) => one.leftovers).reduce((sum, one) => sum + worth(one, keepAtLeast), 0);
