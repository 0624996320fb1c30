/** The page of one plan: found, still looked for, or neither and why. Decides which; changes nothing. */
import { jsx } from 'hono/jsx';
import { leastSheets, type Plan } from '#core/batch/planned.ts';
import { readProject } from '#stores/projects.ts';
import { BLANK_ENTRY, type Entry } from '#views/common/field.tsx';
import { PlanPage } from '#views/plans/page.tsx';
import { Faulty, Looking, NotBegun, type SoFar } from '#views/plans/waiting.tsx';
import { nowIn } from '../http/clock.ts';
import type { Request, UnderWay } from '../http/env.ts';
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
    const body = jsx(Looking, { project, ...farIn(c, plan, planning) });
    return reply(c, { title: 'Looking for a plan', section: 'journal', body, refresh: 1 });
  }
  const body = plan.fault ? jsx(Faulty, { ...known, token: newToken(c) }) : jsx(NotBegun, { ...known, busy });
  const status = plan.fault ? 500 : busy ? 503 : 200;
  return reply(c, { title: 'No plan yet', section: 'journal', status, body });
}

/** How far a plan has come that is looked for. */
export function farIn(c: Request, { id, pieces }: Plan, planning: UnderWay): SoFar {
  const progress = planning.progress();
  return {
    id,
    progress,
    leastSheets: progress ? leastSheets(pieces, progress.bounds.newSheetArea) : 0,
    seconds: Math.max(0, Math.floor((Date.parse(nowIn(c)) - Date.parse(planning.since)) / 1000)),
  };
}
