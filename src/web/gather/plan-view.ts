/** Gathers what the pages of one plan show. Writes nothing. */

import { isFound, type Plan } from '#core/batch/planned.ts';
import { readCut } from '#stores/cuts.ts';
import type { Database } from '#stores/database.ts';
import { listDesigns } from '#stores/designs.ts';
import { listOffcuts } from '#stores/offcuts.ts';
import { planChanges, readPlan } from '#stores/plans.ts';
import { readProject } from '#stores/projects.ts';
import { BLANK_ENTRY, type Entry } from '#views/common/field.tsx';
import type { PlanView } from '#views/plans/view.ts';
import type { Request } from '../http/env.ts';
import { newToken } from '../http/once.ts';
import { rowIn } from '../http/url.ts';

/** Undefined where there is no such plan, or none was found yet. */
export async function readPlanView(
  c: Request,
  plan: Plan,
  entry: Entry = BLANK_ENTRY,
): Promise<PlanView | undefined> {
  if (!isFound(plan)) return undefined;
  const db = c.get('db');
  const cut = plan.cut ? await readCut(db, plan.cut.id) : undefined;
  const before = plan.insteadOf === null ? undefined : await readPlan(db, plan.insteadOf);
  const ids = [plan, ...(before && isFound(before) ? [before] : [])].flatMap(({ pieces, leftOut }) => [
    ...pieces.flatMap((piece) => piece.ref.offcut ?? []),
    ...leftOut.flatMap(({ offcuts }) => offcuts),
  ]);
  const left = cut?.pieces.flatMap(({ leftovers }) => leftovers.map(({ offcut }) => offcut)) ?? [];
  const offcuts = await listOffcuts(db, { ids: [...new Set([...ids, ...left])], onShelf: false });
  const designs = await listDesigns(db);
  return {
    plan,
    project: (await readProject(db, plan.project))!,
    titles: await titlesIn(db, plan),
    changes: plan.cut ? [] : await planChanges(db, plan),
    before:
      before && isFound(before)
        ? { plan: before, changes: before.cut ? [] : await planChanges(db, before) }
        : undefined,
    cut,
    designs: new Map(designs.map((one) => [one.id, one])),
    onShelf: await listDesigns(db, { onShelf: true }),
    offcuts: new Map(offcuts.map((one) => [one.id, one])),
    units: c.get('units'),
    entry,
    token: newToken(c),
  };
}

async function titlesIn(db: Database, { batch }: Plan): Promise<Map<number, string>> {
  const titles = new Map<number, string>();
  for (const { project } of batch.blanks) titles.set(project, (await readProject(db, project))?.title ?? '');
  return titles;
}

/** The plan that an address names. */
export const planIn = (c: Request): Promise<Plan | undefined> => rowIn(c, readPlan);
