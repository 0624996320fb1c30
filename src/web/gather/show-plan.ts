/** The page of one plan: found, still looked for, or neither and why. Decides which; changes nothing. */
import { jsx } from 'hono/jsx';
import { leastSheets, type Plan } from '#core/batch/planned.ts';
import { readProject } from '#stores/projects.ts';
import { BLANK_ENTRY, type Entry } from '#views/common/field.tsx';
import { PlanPage } from '#views/plans/page.tsx';
import { Faulty, Looking, NotBegun } from '#views/plans/waiting.tsx';
import type { Request } from '../http/env.ts';
import { statusOf } from '../http/form.ts';
import { newToken } from '../http/once.ts';
import { reply } from '../http/reply.ts';
import { readPlanView } from './plan-view.ts';

export async function showPlan(
  c: Request,
  plan: Plan,
  { busy = false, entry = BLANK_ENTRY }: { busy?: boolean; entry?: Entry } = {},
): Promise<Response> {
  const view = await readPlanView(c, plan, entry);
  if (!view) return showUnfound(c, plan, busy);
  return reply(c, {
    title: `Plan · ${view.project.title}`,
    section: 'journal',
    status: statusOf(entry),
    body: jsx(PlanPage, view),
  });
}

async function showUnfound(c: Request, plan: Plan, busy: boolean): Promise<Response> {
  const project = (await readProject(c.get('db'), plan.project))!;
  const planning = c.get('plannings').get(plan.id);
  const known = { id: plan.id, project };
  if (planning) {
    c.header('Refresh', '1');
    const progress = planning.progress();
    const least = progress ? leastSheets(plan.pieces, progress.bounds.newSheetArea) : 0;
    const body = jsx(Looking, { ...known, progress, leastSheets: least });
    return reply(c, { title: 'Looking for a plan', section: 'journal', body });
  }
  const body = plan.fault ? jsx(Faulty, { ...known, token: newToken(c) }) : jsx(NotBegun, { ...known, busy });
  const status = plan.fault ? 500 : busy ? 503 : 200;
  return reply(c, { title: 'No plan yet', section: 'journal', status, body });
}
