/**
 * Bench section: whole orders, planned in a worker thread under a time limit, against known optima and the orders they
 * were cut from. `benchCutting()` answers with markdown tables; every plan has passed the judge in its worker.
 */
import type { CutPlan } from '#core/cutting/cuts.ts';
import type { PlanOptions, PlanSoFar } from '#core/cutting/order.ts';
import { settingsOfSteps } from '#core/cutting/steps.ts';
import { type PlanningPool, planningPool } from '#src/planning.ts';
import {
  backwardsOrders,
  type Case,
  craftOrders,
  crowdedShelves,
  identicalSheets,
  mixedUnits,
} from './orders.ts';

const LIMIT = 1000;

export async function benchCutting(): Promise<string> {
  const pool = planningPool(1);
  try {
    await planOne(pool, mixedUnits().plain, 300);
    const tables = [
      await identicalTable(pool),
      await craftTable(pool),
      await backwardsTable(pool),
      await crowdTable(pool),
      await mixedTable(pool),
    ];
    return tables.join('\n\n');
  } finally {
    await pool.close();
  }
}

interface Planned {
  readonly one: Case;
  readonly plan: CutPlan;
  /** Until the worker told of its first plan; undefined where it had nothing to tell before the end. */
  readonly firstMs: number | undefined;
}

async function planOne(
  pool: PlanningPool,
  one: Case,
  timeMs = LIMIT,
  options: PlanOptions = {},
  stopWhenProved = false,
): Promise<Planned> {
  const started = performance.now();
  const planning = pool.start({
    order: one.order,
    pieces: one.pieces,
    options: { ...options, timeMs, seed: 1 },
  });
  if (planning === 'busy') throw new Error('invalid answer: busy');
  let firstMs: number | undefined;
  const watch = setInterval(() => {
    const progress = planning.progress();
    if (progress) firstMs ??= performance.now() - started;
    if (progress && stopWhenProved && isProved(progress)) planning.stop();
  }, 1);
  const plan = await planning.plan;
  clearInterval(watch);
  return { one, plan, firstMs };
}

const isProved = ({ unplaced, newSheetArea, bounds }: PlanSoFar): boolean =>
  unplaced <= bounds.unplaced && newSheetArea <= bounds.newSheetArea;

/** Plans one after the other; where only copies and sheets count, each ends as soon as these are proved. */
async function planAll(pool: PlanningPool, cases: readonly Case[], sheetsOnly = false): Promise<Planned[]> {
  const planned: Planned[] = [];
  for (const one of cases) planned.push(await planOne(pool, one, LIMIT, {}, sheetsOnly));
  return planned;
}

async function identicalTable(pool: PlanningPool): Promise<string> {
  const rows: string[] = [];
  for (const turns of [false, true]) {
    const planned = await planAll(pool, identicalSheets(turns), true);
    const over = planned.filter(({ one, plan }) => plan.newSheets > one.sheets);
    const most = Math.max(0, ...over.map(({ one, plan }) => plan.newSheets - one.sheets));
    const times = planned.map(({ plan }) => plan.timeMs);
    rows.push(
      line(
        `identical sheets, ${turns ? 'with turns' : 'no turns'}`,
        planned.length,
        planned.length - over.length,
        planned.filter(({ plan }) => plan.proved).length,
        most,
        `${ms(median(times))}`,
        names(over),
      ),
    );
  }
  return [
    '| orders, 1 s each | number | optimal | proved | worst: sheets over | median | not optimal |',
    '| --- | ---: | ---: | ---: | ---: | ---: | --- |',
    ...rows,
  ].join('\n');
}

async function craftTable(pool: PlanningPool): Promise<string> {
  const rows: string[] = [];
  for (const one of craftOrders()) {
    const area = (await planOne(pool, one, LIMIT, { spare: 'offcutArea' })).plan;
    const worth = (await planOne(pool, one)).plan;
    rows.push(
      line(
        one.name,
        `${area.placed} of ${area.placed + count(area)}`,
        area.newSheets,
        area.offcutAreaUsed,
        area.proved ? 'yes' : 'no',
        worth.newSheets,
        worth.offcutAreaUsed,
        percent(worth.worthLost / (worth.worthLost + kept(worth))),
        settingsOfSteps(worth.steps).length,
      ),
    );
  }
  return [
    '| craft order, 1 s each | placed | sheets | offcut area, sparing it | copies and sheets proved | sheets, sparing worth | offcut area | worth lost of the pieces used | settings |',
    '| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |',
    ...rows,
  ].join('\n');
}

const count = (plan: CutPlan): number => plan.unplaced.reduce((sum, one) => sum + one.copies, 0);

const kept = (plan: CutPlan): number =>
  plan.used
    .flatMap((used) => used.leftovers)
    .reduce((sum, { width, height }) => sum + width * height * Math.min(width, height), 0);

async function backwardsTable(pool: PlanningPool): Promise<string> {
  const rows: string[] = [];
  for (const [grid, words] of [
    [4, '¼ in'],
    [2, '⅛ in'],
    [1, '1/16 in'],
  ] as const) {
    for (const free of [0.02, 0.01, 0.005]) {
      const planned = await planAll(pool, backwardsOrders(30, free, grid), true);
      const reached = planned.filter(({ one, plan }) => plan.newSheets <= one.sheets);
      rows.push(
        line(
          `cut in multiples of ${words}, ${percent(free)} free`,
          planned.length,
          reached.length,
          ms(median(planned.map(({ plan }) => plan.timeMs))),
        ),
      );
    }
  }
  return [
    '| orders cut backwards from whole sheets, 1 s each | number | reach the same sheets | median |',
    '| --- | ---: | ---: | ---: |',
    ...rows,
  ].join('\n');
}

async function crowdTable(pool: PlanningPool): Promise<string> {
  const planned = await planAll(pool, crowdedShelves(10));
  const firsts = planned.map(({ firstMs, plan }) => firstMs ?? plan.timeMs);
  const row = line(
    '60 parts of 12 sizes, 300 pieces of 40 sizes',
    planned.length,
    ms(median(firsts)),
    ms(Math.max(...firsts)),
    ms(Math.max(...planned.map(({ plan }) => plan.timeMs))),
    planned.filter(({ plan }) => plan.proved).length,
    `${Math.round(process.memoryUsage().rss / 1e6)} MB`,
  );
  return [
    '| crowded shelves | number | first plan, median | first plan, latest | final plan, latest | proved | memory of the process |',
    '| --- | ---: | ---: | ---: | ---: | ---: | ---: |',
    row,
  ].join('\n');
}

async function mixedTable(pool: PlanningPool): Promise<string> {
  const { plain, mixed } = mixedUnits();
  const rows: string[] = [];
  for (const one of [plain, mixed]) {
    const started = performance.now();
    const { plan } = await planOne(pool, one, 60_000, { work: 3000 });
    rows.push(line(one.name, plan.placed, plan.newSheets, ms(performance.now() - started)));
  }
  return [
    '| units, 3000 repackings | placed | sheets | time |',
    '| --- | ---: | ---: | ---: |',
    ...rows,
  ].join('\n');
}

const line = (...cells: (string | number)[]): string => `| ${cells.join(' | ')} |`;

const names = (planned: readonly Planned[]): string =>
  planned.map(({ one }) => one.name.replace('Class_', '')).join(', ') || 'none';

const median = (numbers: readonly number[]): number =>
  numbers.toSorted((one, other) => one - other)[Math.floor(numbers.length / 2)] ?? 0;

const ms = (time: number): string => `${Math.round(time)} ms`;

const percent = (share: number): string => `${Number((share * 100).toFixed(1))} %`;
