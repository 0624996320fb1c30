/** Plans: looked for, looked at, asked again otherwise; the cut sheet with its ticks; cut, tried first, part spoiled. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import { checkPlan } from '#core/cutting/check.ts';
import { type Batch, partNames, partsLeft } from '#core/project/batch.ts';
import { firstPiece } from '#core/project/first-piece.ts';
import { isFound, leastSheets, type Plan } from '#core/project/planned.ts';
import { againForm, cutPlanForm, spoiledPartForm, tickForm } from '#shared/schemas/plan.ts';
import type { Database } from '#stores/database.ts';
import {
  addPlan,
  cutPlan,
  finishPlan,
  latestPlan,
  type PlanCut,
  readPlan,
  spoilPart,
  tickStep,
  untickStep,
} from '#stores/plans.ts';
import { readProject } from '#stores/projects.ts';
import { listPlaces } from '#stores/shelf.ts';
import { BLANK_ENTRY, type Entry } from '#views/parts/field.tsx';
import { PlanPage } from '#views/plans/page.tsx';
import { SheetPage } from '#views/plans/sheet.tsx';
import { StepRow, settingsIn } from '#views/plans/steps.tsx';
import { Faulty, Looking, NotBegun } from '#views/plans/waiting.tsx';
import { rowId } from './address.ts';
import { type Bench, cuttingFor, lacking, readBench } from './batches.ts';
import type { Env, Request } from './env.ts';
import { check, entryOf, readForm, type Typed } from './form.ts';
import { notFound } from './not-found.ts';
import { once } from './once.ts';
import { readPlanView } from './plan-view.ts';
import { LONG_MS, lookFor, USUAL_MS } from './plannings.ts';
import { goTo, reply, wantsFragment } from './reply.ts';

export const plans = new Hono<Env>();

plans.get('/:id', async (c) => {
  const plan = await planIn(c);
  return plan ? show(c, plan) : notFound(c);
});

plans.get('/:id/sheet', async (c) => {
  const plan = await planIn(c);
  if (!plan) return notFound(c);
  const view = await readPlanView(c, plan);
  if (!view || view.changes.length > 0) return goTo(c, `/plans/${plan.id}`);
  const body = jsx(SheetPage, { ...view, places: await listPlaces(c.get('db')) });
  return reply(c, { title: `Cut sheet · ${view.project.title}`, section: 'journal', body });
});

/** Looks again for what is still not found. */
plans.post('/:id/planning', async (c) => {
  const plan = await planIn(c);
  if (!plan) return notFound(c);
  const begun = isFound(plan) || plan.fault ? 'begun' : await lookFor(c, plan.id, plan);
  return begun === 'busy' ? show(c, plan, { busy: true }) : goTo(c, `/plans/${plan.id}`);
});

/** The best so far is the plan. */
plans.delete('/:id/planning', async (c) => {
  const plan = await planIn(c);
  if (!plan) return notFound(c);
  const planning = c.get('plannings').get(plan.id);
  planning?.stop();
  await planning?.plan.catch(() => {});
  return goTo(c, `/plans/${plan.id}`);
});

/** The same batch for the shelf as it is now, perhaps with something kept or from another design. */
plans.post('/:id/again', async (c) => {
  const plan = await planIn(c);
  const typed = await readForm(c);
  const asked = check(againForm, typed);
  if (!plan || !asked.ok) return notFound(c);
  const { keep, design, longer } = asked.value;
  return planAgain(c, plan, { keep, design, timeMs: longer ? LONG_MS : USUAL_MS });
});

plans.post('/:id/trials', async (c) => {
  const plan = await planIn(c);
  const trial = plan && isFound(plan) ? firstPiece(plan.order, plan.pieces, plan.plan) : undefined;
  if (!plan || !trial) return notFound(c);
  const problems = checkPlan(trial.order, plan.pieces, trial.plan);
  if (problems.length > 0) throw new Error(`invalid trial of plan ${plan.id}: ${problems[0]!.message}`);
  const { project, batch, pieces, id } = plan;
  const asked = { project, batch, pieces, order: trial.order, trial: true, insteadOf: id };
  const added = await addPlan(c.get('db'), asked, now(c));
  await finishPlan(c.get('db'), added, trial.plan);
  return goTo(c, `/plans/${added}`);
});

plans.post('/:id/ticks', (c) => tick(c, tickStep));
plans.delete('/:id/ticks', (c) => tick(c, untickStep));

plans.post('/:id/cuts', async (c) => {
  const plan = await planIn(c);
  const typed = await readForm(c);
  const asked = check(cutPlanForm, typed);
  if (!plan || !isFound(plan)) return notFound(c);
  if (!asked.ok) return showSheetAgain(c, plan, entryOf(typed, asked.problems));
  return once<{ refused: Extract<PlanCut, { refused: string }> }>(
    c,
    typed,
    async (db) => {
      const cut = (await cutPlan(db, plan.id, { place: asked.value.place, at: now(c) }))!;
      return 'refused' in cut && cut.refused === 'changed'
        ? { refused: cut }
        : { location: `/plans/${plan.id}` };
    },
    () => planAgain(c, plan, { timeMs: USUAL_MS }),
  );
});

plans.post('/:id/spoiled', async (c) => {
  const plan = await planIn(c);
  if (!plan || !isFound(plan) || !plan.cut) return notFound(c);
  const typed = await readForm(c);
  const asked = check(spoiledPartForm, typed);
  if (!asked.ok) return show(c, plan, { entry: entryOf(typed, asked.problems) });
  if (!partNames(plan.batch.parts).includes(asked.value.part)) return notFound(c);
  return once(c, typed, async (db) => {
    await spoilPart(db, plan.id, asked.value, now(c));
    return { location: `/plans/${plan.id}` };
  });
});

const now = (c: Request): string => c.get('services').now().toISOString();

async function planIn(c: Request): Promise<Plan | undefined> {
  const id = rowId(c);
  return id === undefined ? undefined : readPlan(c.get('db'), id);
}

async function show(
  c: Request,
  plan: Plan,
  { busy = false, entry = BLANK_ENTRY }: { busy?: boolean; entry?: Entry } = {},
): Promise<Response> {
  const view = await readPlanView(c, plan, entry);
  if (!view) return showUnfound(c, plan, busy);
  const status = entry.problems.length > 0 ? 422 : 200;
  return reply(c, {
    title: `Plan · ${view.project.title}`,
    section: 'journal',
    status,
    body: jsx(PlanPage, view),
  });
}

async function showUnfound(c: Request, plan: Plan, busy: boolean): Promise<Response> {
  const project = (await readProject(c.get('db'), plan.project))!;
  const planning = c.get('plannings').get(plan.id);
  const known = { id: plan.id, project };
  if (planning) {
    c.header('Refresh', '1');
    const progress = planning.progress();
    const least = progress ? leastSheets(plan.pieces, progress.bounds.newSheetArea) : 0;
    const body = jsx(Looking, { ...known, progress, leastSheets: least });
    return reply(c, { title: 'Looking for a plan', section: 'journal', body });
  }
  const body = plan.fault ? jsx(Faulty, known) : jsx(NotBegun, { ...known, busy });
  const status = plan.fault ? 500 : busy ? 503 : 200;
  return reply(c, { title: 'No plan yet', section: 'journal', status, body });
}

async function showSheetAgain(c: Request, plan: Plan, entry: Entry): Promise<Response> {
  const view = (await readPlanView(c, plan, entry))!;
  const body = jsx(SheetPage, { ...view, places: await listPlaces(c.get('db')) });
  return reply(c, { title: `Cut sheet · ${view.project.title}`, section: 'journal', status: 422, body });
}

/** One line of the sheet for scripts, the sheet for everybody else. */
async function tick(c: Request, mark: (db: Database, plan: number, step: number) => Promise<void>) {
  const plan = await planIn(c);
  const asked = check(tickForm, await readForm(c));
  const groups = plan && isFound(plan) ? settingsIn({ plan }).flatMap((setting) => setting.groups) : [];
  const group = asked.ok ? groups.find(({ number }) => number === asked.value.step) : undefined;
  if (!plan || !group) return notFound(c);
  await mark(c.get('db'), plan.id, group.number);
  if (!wantsFragment(c)) return goTo(c, `/plans/${plan.id}/sheet#step-${group.number}`);
  const view = (await readPlanView(c, (await readPlan(c.get('db'), plan.id))!))!;
  return c.html(`${jsx(StepRow, { ...view, group })}`);
}

interface Otherwise {
  readonly keep?: string | undefined;
  readonly design?: number | undefined;
  readonly timeMs: number;
}

/** A fresh plan in place of this one; where it has no hope this one is shown with the reason. */
async function planAgain(c: Request, plan: Plan, otherwise: Otherwise): Promise<Response> {
  const bench = (await readBench(c, plan.project))!;
  const batch = batchAgain(await stillAsked(c.get('db'), plan), bench, otherwise);
  const { cutting, problems } = cuttingFor(c, bench, batch);
  if (problems.length > 0) return show(c, plan, { entry: { typed: {} as Typed, problems } });
  const asked = { project: plan.project, batch, ...cutting, insteadOf: plan.id };
  const id = await addPlan(c.get('db'), asked, now(c));
  const begun = await lookFor(c, id, cutting, otherwise.timeMs);
  if (begun === 'busy') return show(c, (await readPlan(c.get('db'), id))!, { busy: true });
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
