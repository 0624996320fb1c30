/** Plans that are being looked for: started, kept by their number until found, judged and written down. */

import { betterOf, mayPlaceMore } from '#core/batch/planned.ts';
import type { Cutting } from '#core/batch/to-order.ts';
import { checkPlan } from '#core/cutting/check.ts';
import type { CutPlan } from '#core/cutting/cuts.ts';
import type { Database } from '#stores/database.ts';
import { failPlan, finishPlan } from '#stores/plans.ts';
import { nowIn } from '../http/clock.ts';
import type { Request, UnderWay } from '../http/env.ts';

/** How long is looked for a plan at first, once more where that one leaves out parts, and when the reader asks. */
export const USUAL_MS = 1000;
const ONCE_MORE_MS = 5000;
export const LONG_MS = 15_000;

/** A reader who waits longer than this is shown how far it has come. */
const MOMENT_MS = 1500;

/** Waits for a moment; the plan is written down whenever it comes. `busy` when too many are waiting. */
export async function lookFor(
  c: Request,
  id: number,
  cutting: Cutting,
  timeMs = USUAL_MS,
): Promise<'busy' | 'begun'> {
  const db = c.get('db');
  const plannings = c.get('plannings');
  if (plannings.has(id)) return 'begun';
  const planning = begin(c, cutting, { timeMs, since: nowIn(c) });
  if (planning === 'busy') return 'busy';
  plannings.set(id, planning);
  const kept = planning.plan
    .then((plan) => onceMore(c, id, cutting, { plan, planning, timeMs }))
    .then((plan) => keep(db, id, cutting, plan))
    .catch((problem) => giveUp(db, id, problem))
    .finally(() => plannings.delete(id));
  await Promise.race([kept, aMoment()]);
  return 'begun';
}

function begin(
  c: Request,
  { order, pieces }: Cutting,
  { timeMs, since }: { readonly timeMs: number; readonly since: string },
): Stoppable | 'busy' {
  const planning = c.get('services').planner.start({ order, pieces, options: { timeMs } });
  if (planning === 'busy') return 'busy';
  const stoppable = { ...planning, since, stopped: false };
  stoppable.stop = () => {
    stoppable.stopped = true;
    planning.stop();
  };
  return stoppable;
}

interface Stoppable extends UnderWay {
  readonly stopped: boolean;
}

/** A first look that leaves out what might fit is followed by a longer one, unless the reader has seen enough. */
async function onceMore(
  c: Request,
  id: number,
  cutting: Cutting,
  first: { readonly plan: CutPlan; readonly planning: Stoppable; readonly timeMs: number },
): Promise<CutPlan> {
  if (first.planning.stopped || first.timeMs > ONCE_MORE_MS || !mayPlaceMore(first.plan)) return first.plan;
  const planning = begin(c, cutting, { timeMs: ONCE_MORE_MS, since: first.planning.since });
  if (planning === 'busy') return first.plan;
  c.get('plannings').set(id, planning);
  const second = await planning.plan.catch((problem) => {
    console.error(problem);
    return first.plan;
  });
  return betterOf(first.plan, second);
}

/** Only what the judge finds sound is kept. */
async function keep(db: Database, id: number, { order, pieces }: Cutting, plan: CutPlan): Promise<void> {
  const problems = checkPlan(order, pieces, plan);
  if (problems.length > 0)
    throw new Error(`invalid plan: ${problems.map((one) => `${one.field}: ${one.message}`).join(' ')}`);
  await finishPlan(db, id, plan);
}

async function giveUp(db: Database, id: number, problem: unknown): Promise<void> {
  console.error(problem);
  await failPlan(db, id, problem instanceof Error ? problem.message : String(problem)).catch(console.error);
}

export const aMoment = (): Promise<void> =>
  new Promise((resolve) => void setTimeout(resolve, MOMENT_MS).unref());
