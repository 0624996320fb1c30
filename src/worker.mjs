/** One warm planner: loads TypeScript once, then plans one order at a time as told by planning.ts. Opens no database. */
import { parentPort } from 'node:worker_threads';
import { register } from 'tsx/esm/api';

register();
const { planCuts } = await import('#core/cutting/plan.ts');
const { checkPlan } = await import('#core/cutting/check.ts');

const PROGRESS_EVERY_MS = 100;

parentPort.on('message', ({ order, pieces, options, stop }) => {
  try {
    parentPort.postMessage({ kind: 'done', plan: planned(order, pieces, options, new Int32Array(stop)) });
  } catch (problem) {
    parentPort.postMessage({ kind: 'failed', message: String(problem?.message ?? problem) });
  }
});
parentPort.postMessage({ kind: 'ready' });

function planned(order, pieces, options, stop) {
  let told = 0;
  const onProgress = (progress) => {
    if (performance.now() - told < PROGRESS_EVERY_MS) return;
    told = performance.now();
    parentPort.postMessage({ kind: 'progress', progress });
  };
  const shouldStop = () => Atomics.load(stop, 0) === 1;
  const plan = planCuts(order, pieces, { ...options, now: () => performance.now(), shouldStop, onProgress });
  const problems = checkPlan(order, pieces, plan);
  if (problems.length > 0) throw new Error(`invalid plan: ${problems[0].field}: ${problems[0].message}`);
  return plan;
}
