/**
 * One warm planner: loads TypeScript once, then plans one order or fills one piece at a time as told by planning.ts.
 * Opens no database.
 */
import { parentPort } from 'node:worker_threads';
import { register } from 'tsx/esm/api';

register();
const { fillPiece, planCuts } = await import('#core/cutting/plan.ts');
const { checkPlan } = await import('#core/cutting/check.ts');
const { checkFill } = await import('#core/cutting/one-piece/check-fill.ts');

const PROGRESS_EVERY_MS = 100;

parentPort.on('message', ({ kind, stop, ...asked }) => {
  try {
    const flag = new Int32Array(stop);
    const shouldStop = () => Atomics.load(flag, 0) === 1;
    const answer = kind === 'fill' ? filled(asked, shouldStop) : planned(asked, shouldStop);
    parentPort.postMessage({ kind: 'done', answer });
  } catch (problem) {
    parentPort.postMessage({ kind: 'failed', message: String(problem?.message ?? problem) });
  }
});
parentPort.postMessage({ kind: 'ready' });

function planned({ order, pieces, options }, shouldStop) {
  let told = 0;
  let proved = false;
  const onProgress = (progress) => {
    const news = !proved && isProved(progress);
    if (!news && performance.now() - told < PROGRESS_EVERY_MS) return;
    told = performance.now();
    proved = isProved(progress);
    parentPort.postMessage({ kind: 'progress', progress });
  };
  const plan = planCuts(order, pieces, { ...options, now: () => performance.now(), shouldStop, onProgress });
  insist(checkPlan(order, pieces, plan), 'plan');
  return plan;
}

function isProved({ unplaced, newSheetArea, bounds }) {
  return unplaced <= bounds.unplaced && newSheetArea <= bounds.newSheetArea;
}

function filled({ piece, parts, options }, shouldStop) {
  const fill = fillPiece(piece, parts, { ...options, now: () => performance.now(), shouldStop });
  insist(checkFill(piece, parts, fill, options), 'fill');
  return fill;
}

function insist(problems, what) {
  if (problems.length > 0) throw new Error(`invalid ${what}: ${problems[0].field}: ${problems[0].message}`);
}
