/** A batch asked again for the shelf as it is now, perhaps with something kept, from another design or for longer. */
import { type Batch, partsLeft } from '#core/project/batch.ts';
import type { Plan } from '#core/project/planned.ts';
import type { Database } from '#stores/database.ts';
import { addPlan, latestPlan, readPlan } from '#stores/plans.ts';
import { type Bench, cuttingFor, lacking, readBench } from './batches.ts';
import { nowIn } from './clock.ts';
import type { Request } from './env.ts';
import { lookFor } from './plannings.ts';
import { goTo } from './reply.ts';
import { showPlan } from './show-plan.ts';

interface Otherwise {
  readonly keep?: string | undefined;
  readonly design?: number | undefined;
  readonly timeMs: number;
}

/** A fresh plan in place of this one; where it has no hope this one is shown with the reason. */
export async function planAgain(c: Request, plan: Plan, otherwise: Otherwise): Promise<Response> {
  const bench = (await readBench(c, plan.project))!;
  const batch = batchAgain(await stillAsked(c.get('db'), plan), bench, otherwise);
  const { cutting, problems } = cuttingFor(c, bench, batch);
  if (problems.length > 0) return showPlan(c, plan, { entry: { typed: {}, problems } });
  const asked = { project: plan.project, batch, ...cutting, insteadOf: plan.id };
  const id = await addPlan(c.get('db'), asked, nowIn(c));
  const begun = await lookFor(c, id, cutting, otherwise.timeMs);
  if (begun === 'busy') return showPlan(c, (await readPlan(c.get('db'), id))!, { busy: true });
  return goTo(c, `/plans/${id}`);
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
