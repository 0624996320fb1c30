/**
 * The cut planner's front door: an order and pieces in, a plan with its bounds out. Knows how search, bounds and the
 * finished plan fit together; the goals themselves are pursued in search.ts.
 */

import { type Bound, bound } from './bound.ts';
import type { CutPlan } from './cuts.ts';
import { type Job, prepare } from './job.ts';
import type { Order, Piece, PlanOptions } from './order.ts';
import { chance } from './random.ts';
import { type Budget, type Found, search } from './search.ts';
import { unfold } from './unfold.ts';

/**
 * The best plan found within the time and work allowed. Goals in this order: most copies placed, then most of their area;
 * least area of new sheets; least worth lost to the shelf; fewest trimmer settings among plans within 1 % of that.
 * Lengths are whole numbers in one unit. `proved` speaks of the copies placed and the area of new sheets.
 */
export function planCuts(order: Order, pieces: readonly Piece[], options: PlanOptions = {}): CutPlan {
  const started = options.now?.() ?? 0;
  const job = prepare({ ...order, ...limitsOf(order, options) }, pieces);
  const target = bound(job);
  const found = search(
    job,
    target,
    options.spare ?? 'worth',
    chance(options.seed ?? 1),
    budget(options, started),
    () => {},
  );
  return finish(job, found, target, order, pieces, options, started);
}

const limitsOf = (order: Order, options: PlanOptions) => {
  const longestCut = options.longestCut ?? order.longestCut;
  const keepAtLeast = options.keepAtLeast ?? order.keepAtLeast;
  return {
    ...(longestCut !== undefined && { longestCut }),
    ...(keepAtLeast !== undefined && { keepAtLeast }),
  };
};

function budget(options: PlanOptions, started: number): Budget {
  const { now, shouldStop, timeMs = 1000, work = Number.MAX_SAFE_INTEGER } = options;
  let done = 0;
  return {
    work: () => {
      done += 1;
    },
    spent: () => {
      if (shouldStop?.()) return 1;
      return Math.max(done / work, now ? (now() - started) / timeMs : 0);
    },
  };
}

function finish(
  job: Job,
  found: Found,
  target: Bound,
  order: Order,
  pieces: readonly Piece[],
  options: PlanOptions,
  started: number,
): CutPlan {
  const used = unfold(job, found.bins);
  const byId = new Map(pieces.map((piece) => [piece.id, piece]));
  const cut = used.map((one) => byId.get(one.piece)!);
  const areaOf = (kind: string): number =>
    cut.reduce((sum, piece) => sum + (piece.kind === kind ? piece.width * piece.height : 0), 0);
  const bounds = {
    unplaced: target.unplaced,
    newSheetArea: target.sheetArea(found.unplaced) * job.grid ** 2,
  };
  return {
    placed: used.reduce((sum, one) => sum + one.rectangles.length, 0),
    unplaced: order.parts.flatMap((part, index) =>
      found.pool[index]! > 0 ? [{ part: part.id, copies: found.pool[index]!, remedies: [] }] : [],
    ),
    newSheets: cut.filter((piece) => piece.kind === 'sheet').length,
    newSheetArea: areaOf('sheet'),
    offcutAreaUsed: areaOf('offcut'),
    worthLost: found.lost * job.grid ** 3,
    settings: 0,
    bounds,
    proved: bounds.unplaced === found.unplaced && bounds.newSheetArea === areaOf('sheet'),
    timeMs: options.now ? options.now() - started : 0,
    limits: limitsOf(order, options),
    used,
  };
}
