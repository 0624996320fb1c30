/** The plans' invariants: each still passes the judge on the order it was made for, and its cut took what it says. */

import type { Cutting } from '#core/batch/to-order.ts';
import { checkPlan } from '#core/cutting/check.ts';
import type { CutPlan } from '#core/cutting/cuts.ts';
import type { Database } from './database.ts';

export async function checkPlans(db: Database): Promise<string[]> {
  const rows = await db
    .selectFrom('plans')
    .leftJoin('cuts', 'cuts.id', 'plans.cut_id')
    .select(['plans.id', 'cutting', 'plan', 'plans.project_id', 'cuts.project_id as cut_for', 'cuts.pieces'])
    .execute();
  return rows.flatMap(({ id, cutting, plan, project_id, cut_for, pieces }) => {
    if (plan === null) return [];
    const { order, pieces: offered }: Cutting = JSON.parse(cutting);
    const found: CutPlan = JSON.parse(plan);
    const cut: unknown[] = pieces === null ? found.used : JSON.parse(pieces);
    return [
      ...checkPlan(order, offered, found).map(({ field, message }) => `plan ${id}: ${field}: ${message}`),
      ...(cut_for !== null && cut_for !== project_id ? [`plan ${id} is cut for another project`] : []),
      ...(cut.length === found.used.length
        ? []
        : [`plan ${id} uses ${found.used.length} pieces and its cut ${cut.length}`]),
    ];
  });
}
