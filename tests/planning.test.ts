/** The pool of planners keeps the main thread free, queues, stops and refuses. */
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { checkPlan } from '#core/cutting/check.ts';
import { checkFill } from '#core/cutting/one-piece/check-fill.ts';
import type { FillRequest, PlanRequest } from '#core/cutting/planner.ts';
import { type PlanningPool, planningPool } from '#src/planning.ts';

const request = (timeMs: number): PlanRequest => ({
  order: {
    parts: Array.from({ length: 24 }, (_, part) => ({
      id: `${part}`,
      width: 37 + part,
      height: 71 - part,
      copies: 3,
    })),
  },
  pieces: [{ id: 'pad', width: 192, height: 192, kind: 'sheet', copies: 40 }],
  options: { timeMs },
});

/** With so many odd sizes that no table settles it in time. */
const odd: FillRequest = {
  piece: { id: 'offcut', width: 9973, height: 9871, kind: 'offcut' },
  parts: Array.from({ length: 40 }, (_, part) => ({
    ...{ id: `${part}`, width: 1013 + 37 * part, height: 2029 - 23 * part, copies: 2 },
    value: 1 + part,
  })),
  options: { goal: 'wish', timeMs: 60_000 },
};

describe('the planning pool', () => {
  let pool: PlanningPool;
  beforeAll(() => {
    pool = planningPool(1, 2);
  });
  afterAll(() => pool.close());

  const start = (timeMs: number) => {
    const planning = pool.start(request(timeMs));
    if (planning === 'busy') throw new Error('invalid answer: busy');
    return planning;
  };

  it('returns a plan that passes the judge, while timers go on', async () => {
    let ticks = 0;
    const timer = setInterval(() => (ticks += 1), 5);
    const plan = await start(1500).plan;
    clearInterval(timer);
    expect(checkPlan(request(0).order, request(0).pieces, plan)).toEqual([]);
    expect(plan.placed).toBe(72);
    expect(ticks).toBeGreaterThan(5);
  });

  it('stops a plan early with what it has, and reports the best so far', async () => {
    const planning = start(60_000);
    while (!planning.progress()) await new Promise((resolve) => setTimeout(resolve, 10));
    expect(planning.progress()!.bounds.newSheetArea).toBeGreaterThan(0);
    planning.stop();
    const plan = await planning.plan;
    expect(plan.placed).toBe(72);
    expect(plan.timeMs).toBeLessThan(20_000);
  });

  it('fills a piece beside plans, and stops with what it has', async () => {
    const filling = pool.fill(odd);
    if (filling === 'busy') throw new Error('invalid answer: busy');
    setTimeout(filling.stop, 150);
    const fill = await filling.fill;
    expect(checkFill(odd.piece, odd.parts, fill, { goal: 'wish' })).toEqual([]);
    expect(fill.value).toBeGreaterThan(0);
    expect(fill.timeMs).toBeLessThan(20_000);
  });

  it('refuses what its queue cannot hold', async () => {
    const running = [start(60_000), start(60_000), start(60_000)];
    expect(pool.start(request(10))).toBe('busy');
    expect(pool.fill(odd)).toBe('busy');
    for (const planning of running) planning.stop();
    const plans = await Promise.all(running.map((planning) => planning.plan));
    expect(plans.map((plan) => plan.placed)).toEqual([72, 72, 72]);
  });

  it('hands back the failure of a broken order or piece', async () => {
    const planning = pool.start({ order: { parts: undefined as never }, pieces: [] });
    await expect(planning === 'busy' ? undefined : planning.plan).rejects.toThrow();
    const filling = pool.fill({ piece: { ...odd.piece, width: Number.NaN }, parts: odd.parts });
    await expect(filling === 'busy' ? undefined : filling.fill).rejects.toThrow('invalid length');
  });
});

describe('a pool whose workers are lost', () => {
  const folder = mkdtempSync(join(tmpdir(), 'creasebook-pool-'));
  afterAll(() => rmSync(folder, { recursive: true }));

  it.each([
    ['before they were loaded', `throw new Error('cannot load');`, 'cannot load'],
    [
      'without a word',
      `import { parentPort } from 'node:worker_threads';
       parentPort.on('message', () => process.exit(3));
       parentPort.postMessage({ kind: 'ready' });`,
      'ended with 3',
    ],
  ])('%s fails what it is asked instead of letting it wait', async (name, worker, message) => {
    const place = join(folder, name.replaceAll(' ', '-'));
    mkdirSync(place);
    writeFileSync(join(place, 'worker.mjs'), worker);
    copyFileSync('src/planning.ts', join(place, 'planning.ts'));
    const lost: typeof import('#src/planning.ts') = await import(join(place, 'planning.ts'));
    const pool = lost.planningPool(2);
    for (let turn = 0; turn < 3; turn += 1) {
      const planning = pool.start(request(10));
      if (planning === 'busy') throw new Error('invalid answer: busy');
      await expect(planning.plan).rejects.toThrow(message);
    }
    await pool.close();
  });
});
