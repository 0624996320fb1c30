/** One warm planner: plans one order or fills one piece at a time as told by planning.ts. Opens no database. */
import { parentPort } from 'node:worker_threads';
import { checkPlan } from '#core/cutting/check.ts';
import type { CutPlan } from '#core/cutting/cuts.ts';
import { checkFill } from '#core/cutting/one-piece/check-fill.ts';
import type { Fill } from '#core/cutting/one-piece/fill.ts';
import type { PlanSoFar } from '#core/cutting/order.ts';
import { fillPiece, planCuts } from '#core/cutting/plan.ts';
import type { FillRequest, PlanRequest } from '#core/cutting/planner.ts';
import type { Problem } from '#shared/checked.ts';
import type { Question } from './planning.ts';

type Stop = () => boolean;

const tell = (told: unknown): void => parentPort!.postMessage(told);

const PROGRESS_EVERY_MS = 100;

parentPort!.on('message', ({ stop, ...asked }: Question & { readonly stop: SharedArrayBuffer }) => {
  try {
    const flag = new Int32Array(stop);
    const shouldStop = () => Atomics.load(flag, 0) === 1;
    const answer = asked.kind === 'fill' ? filled(asked, shouldStop) : planned(asked, shouldStop);
    tell({ kind: 'done', answer });
  } catch (problem) {
    tell({ kind: 'failed', message: problem instanceof Error ? problem.message : String(problem) });
  }
});
tell({ kind: 'ready' });

function planned({ order, pieces, options }: PlanRequest, shouldStop: Stop): CutPlan {
  let told = 0;
  let proved = false;
  const onProgress = (progress: PlanSoFar): void => {
    const news = !proved && isProved(progress);
    if (!news && performance.now() - told < PROGRESS_EVERY_MS) return;
    told = performance.now();
    proved = isProved(progress);
    tell({ kind: 'progress', progress });
  };
  const plan = planCuts(order, pieces, { ...options, now: () => performance.now(), shouldStop, onProgress });
  insist(checkPlan(order, pieces, plan), 'plan');
  return plan;
}

function isProved({ unplaced, newSheetArea, bounds }: PlanSoFar): boolean {
  return unplaced <= bounds.unplaced && newSheetArea <= bounds.newSheetArea;
}

function filled({ piece, parts, options }: FillRequest, shouldStop: Stop): Fill {
  const fill = fillPiece(piece, parts, { ...options, now: () => performance.now(), shouldStop });
  insist(checkFill(piece, parts, fill, options), 'fill');
  return fill;
}

function insist([problem]: readonly Problem[], what: string): void {
  if (problem) throw new Error(`invalid ${what}: ${problem.field}: ${problem.message}`);
}
