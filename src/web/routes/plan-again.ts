/** A batch asked again for the shelf as it is now, perhaps with something kept, from another design or for longer. */
import { type Batch, partsLeft } from '#core/batch/batch.ts';
import type { Plan } from '#core/batch/planned.ts';
import type { Database } from '#stores/database.ts';
import { latestPlan } from '#stores/plans.ts';
import { beginPlan } from '../gather/begin-plan.ts';
import { showPlan } from '../gather/show-plan.ts';
import type { Request } from '../http/env.ts';
import type { Typed } from '../http/form.ts';
import { type Bench, cuttingFor, lacking, readBench } from './batches.ts';

interface Otherwise {
  readonly keep?: string | undefined;
  readonly design?: number | undefined;
  readonly timeMs: number;
}

/** A fresh plan in place of this one, once for each sending; where it has no hope this one is shown with the reason. */
export async function planAgain(
  c: Request,
  typed: Typed,
  plan: Plan,
  otherwise: Otherwise,
): Promise<Response> {
  const bench = (await readBench(c, plan.project))!;
  const batch = batchAgain(await stillAsked(c.get('db'), plan), bench, otherwise);
  const { cutting, problems } = cuttingFor(c, bench, batch);
  if (problems.length > 0) return showPlan(c, plan, { entry: { typed: {}, problems } });
  const asked = { project: plan.project, batch, ...cutting, insteadOf: plan.id };
  return beginPlan(c, typed, asked, otherwise.timeMs);
}

/** Without what the trial cut of it. */
async function stillAsked(db: Database, plan: Plan): Promise<Batch> {
  const last = await latestPlan(db, plan.project);
  if (!last?.trial || !last.cut || last.insteadOf !== plan.id) return plan.batch;
  return { ...plan.batch, parts: partsLeft(plan.batch, last) };
}

/** As it was asked, less the blanks that came from elsewhere meanwhile. */
function batchAgain(batch: Batch, { full, others }: Bench, { keep, design }: Otherwise): Batch {
  const blanks = batch.blanks.flatMap((one) => {
    const known = [full, ...others].find(({ project }) => project.id === one.project);
    if (!known && one.project !== full.project.id) return [];
    const missing = known ? lacking(known) : 0;
    return [{ ...one, missing, copies: Math.max(0, one.copies - Math.max(0, one.missing - missing)) }];
  });
  return {
    ...batch,
    blanks,
    keep: keep === undefined ? batch.keep : [...new Set([...batch.keep, keep])],
    ...(design !== undefined && fromDesign(batch, design)),
  };
}

const fromDesign = ({ parts }: Batch, design: number) => ({
  paper: { of: 'design' as const, design },
  parts: parts.map((part) => (part.match ? { ...part, paper: { of: 'design' as const, design } } : part)),
});
