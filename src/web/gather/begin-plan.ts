/** A plan that a form asks for: written down once however often the form is sent, and looked for. */
import type { NewPlan } from '#core/batch/planned.ts';
import { addPlan } from '#stores/plans.ts';
import { nowIn } from '../http/clock.ts';
import type { Request } from '../http/env.ts';
import type { Typed } from '../http/form.ts';
import { once } from '../http/once.ts';
import { goTo } from '../http/reply.ts';
import { lookFor, USUAL_MS } from './plannings.ts';

/** Sends the reader to the plan, which says so where too many are waiting. */
export async function beginPlan(
  c: Request,
  typed: Typed,
  asked: NewPlan,
  timeMs = USUAL_MS,
): Promise<Response> {
  let begun: number | undefined;
  const answer = await once(c, typed, async (db) => {
    begun = await addPlan(db, asked, nowIn(c));
    return { location: `/plans/${begun}` };
  });
  if (begun === undefined) return answer;
  const looking = await lookFor(c, begun, asked, timeMs);
  return looking === 'busy' ? goTo(c, `/plans/${begun}?busy=yes`) : answer;
}
