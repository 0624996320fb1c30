/** Plans that are being looked for: started, kept by their number until found, judged and written down. */
import { checkPlan } from '#core/cutting/check.ts';
import type { CutPlan } from '#core/cutting/cuts.ts';
import type { Cutting } from '#core/project/order.ts';
import type { Database } from '#stores/database.ts';
import { failPlan, finishPlan } from '#stores/plans.ts';
import type { Request } from './env.ts';

/** How long is looked for a plan at first, and when the reader asks for longer. */
export const USUAL_MS = 1000;
export const LONG_MS = 15_000;

/** A reader who waits longer than this is shown how far it has come. */
const MOMENT_MS = 1500;

/** Waits for a moment; the plan is written down whenever it comes. `busy` when too many are waiting. */
export async function lookFor(
  c: Request,
  id: number,
  { order, pieces }: Cutting,
  timeMs = USUAL_MS,
): Promise<'busy' | 'begun'> {
  const plannings = c.get('plannings');
  if (plannings.has(id)) return 'begun';
  const planning = c.get('services').planner.start({ order, pieces, options: { timeMs } });
  if (planning === 'busy') return 'busy';
  plannings.set(id, planning);
  const kept = planning.plan
    .then((plan) => keep(c.get('db'), id, { order, pieces }, plan))
    .catch((problem) => giveUp(c.get('db'), id, problem))
    .finally(() => plannings.delete(id));
  await Promise.race([kept, aMoment()]);
  return 'begun';
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

const aMoment = (): Promise<void> => new Promise((resolve) => void setTimeout(resolve, MOMENT_MS).unref());
