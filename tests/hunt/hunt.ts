/**
 * `npm run hunt` looks for failures of the planner without end: orders and single pieces at random, planned or filled, and
 * judged. Prints the seed and what was asked for each failure and goes on; `npm run hunt -- 1234` starts at that seed,
 * `-- 1234 1` stops after one.
 */
import { checkPlan } from '#core/cutting/check.ts';
import type { CutPlan } from '#core/cutting/cuts.ts';
import type { Order, Piece } from '#core/cutting/order.ts';
import { planCuts } from '#core/cutting/plan.ts';
import { bruteForce } from '#tests/support/brute.ts';
import { fillFaults, randomFill } from './fills.ts';
import { randomOrder } from './random-order.ts';

/** Beyond the time limit, a single fill may still be under way. */
const GRACE_MS = 400;

const first = Number(process.argv[2] ?? Date.now() % 1_000_000_000);
const most = Number(process.argv[3] ?? Number.POSITIVE_INFINITY);
let failures = 0;
for (let seed = first; seed < first + most; seed += 1) {
  const { order, pieces, timeMs, tiny } = randomOrder(seed);
  const asked = { pieces, parts: order.parts, options: { ...order, parts: undefined, timeMs, seed } };
  tell(seed, faultsOf(order, pieces, timeMs, seed, tiny), asked);
  const fill = randomFill(seed);
  tell(seed, fillFaults(fill), fill);
  if ((seed - first) % 500 === 499)
    process.stdout.write(`${seed - first + 1} orders and fills up to seed ${seed}, ${failures} failures\n`);
}
process.exitCode = failures > 0 ? 1 : 0;

function tell(seed: number, faults: readonly string[], asked: unknown): void {
  failures += faults.length;
  for (const fault of faults) process.stdout.write(`seed ${seed}: ${fault}\n${JSON.stringify(asked)}\n`);
}

function faultsOf(
  order: Order,
  pieces: readonly Piece[],
  timeMs: number,
  seed: number,
  tiny: boolean,
): string[] {
  const started = processorTime();
  let plan: CutPlan;
  try {
    plan = planCuts(order, pieces, { timeMs, seed, now: processorTime });
  } catch (problem) {
    return [`threw ${(problem as Error).stack}`];
  }
  const took = processorTime() - started;
  return [
    ...checkPlan(order, pieces, plan).map(({ field, message }) => `${field}: ${message}`),
    ...(took > timeMs + GRACE_MS ? [`took ${Math.round(took)} ms of ${timeMs}`] : []),
    ...(tiny ? shortOf(order, pieces, plan) : []),
  ];
}

/** Milliseconds of this process, so that other work on the machine is not mistaken for a missed time limit. */
function processorTime(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** What trying everything finds and the planner misses, or thinks impossible. */
function shortOf(order: Order, pieces: readonly Piece[], plan: CutPlan): string[] {
  const best = bruteForce(order.parts, pieces);
  const unplaced = order.parts.reduce((sum, part) => sum + part.copies, 0) - best.placed;
  if (plan.bounds.unplaced > unplaced)
    return [`the bound says ${plan.bounds.unplaced} unplaced, trying everything ${unplaced}`];
  if (plan.placed < best.placed) return [`placed ${plan.placed} of ${best.placed} possible`];
  if (plan.newSheetArea > best.newSheetArea)
    return [`opened ${plan.newSheetArea}, ${best.newSheetArea} is possible`];
  return [];
}
