/** A batch asked again for the shelf as it is now, perhaps with something kept, from another design or for longer. */
import { batchAgain, type Otherwise, stillAsked } from '#core/batch/again.ts';
import type { Plan } from '#core/batch/planned.ts';
import type { Request } from '../http/env.ts';
import type { Typed } from '../http/form.ts';
import { beginPlan } from './begin-plan.ts';
import { cuttingFor, readBench, readWholeShelf } from './bench.ts';
import { showPlan } from './show-plan.ts';

/** A fresh plan in place of this one, once for each sending; where it has no hope this one is shown with the reason. */
export async function planAgain(
  c: Request,
  typed: Typed,
  plan: Plan,
  { timeMs, ...otherwise }: Otherwise & { readonly timeMs: number },
): Promise<Response> {
  const bench = (await readBench(c, plan.project))!;
  const { own, others, last } = bench;
  const batch = batchAgain(stillAsked(plan, last), own, { others, ...otherwise });
  const { cutting, problems } = cuttingFor(c, bench, await readWholeShelf(c), batch);
  if (problems.length > 0) return showPlan(c, plan, { entry: { typed: {}, problems } });
  const asked = { project: plan.project, batch, ...cutting, insteadOf: plan.id };
  return beginPlan(c, typed, asked, timeMs);
}
