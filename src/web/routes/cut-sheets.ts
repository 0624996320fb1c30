/** The cut sheet of a plan: steps ticked, the cut written down, a trial piece first, a part spoiled. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import { firstPiece } from '#core/batch/first-piece.ts';
import { isTyped } from '#core/batch/identity.ts';
import { type FoundPlan, isFound, type Plan } from '#core/batch/planned.ts';
import { checkPlan } from '#core/cutting/check.ts';
import { cutPlanForm, spoiledPartForm, tickForm, unspoiledPartForm } from '#shared/schemas/plan.ts';
import type { Database } from '#stores/database.ts';
import { likelyPlaces } from '#stores/likely.ts';
import {
  addPlan,
  cutPlan,
  finishPlan,
  type PlanCut,
  readPlan,
  spoilPart,
  tickStep,
  unspoilPart,
  untickStep,
} from '#stores/plans.ts';
import type { Entry } from '#views/common/field.tsx';
import { sayWhere } from '#views/plans/now.tsx';
import { SheetPage, SheetUnderWay } from '#views/plans/sheet.tsx';
import type { PlanView } from '#views/plans/view.ts';
import { planAgain } from '../gather/plan-again.ts';
import { planIn, readPlanView } from '../gather/plan-view.ts';
import { USUAL_MS } from '../gather/plannings.ts';
import { showPlan } from '../gather/show-plan.ts';
import { nowIn } from '../http/clock.ts';
import type { Env, Request } from '../http/env.ts';
import { check, entryOf, readForm, statusOf } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { once } from '../http/once.ts';
import { goTo, reply } from '../http/reply.ts';

export const cutSheets = new Hono<Env>();

cutSheets.get('/:id/sheet', async (c) => {
  const plan = await planIn(c);
  if (!plan) return notFound(c);
  const view = await readPlanView(c, plan);
  if (!view || view.changes.length > 0) return goTo(c, `/plans/${plan.id}`);
  return showSheet(c, view, stepIn(view.plan, c.req.query('step')));
});

cutSheets.post('/:id/trials', async (c) => {
  const plan = await planIn(c);
  const typed = await readForm(c);
  const trial = plan && isFound(plan) ? firstPiece(plan) : undefined;
  if (!plan || !trial) return notFound(c);
  const problems = checkPlan(trial.order, plan.pieces, trial.plan);
  if (problems.length > 0) throw new Error(`invalid trial of plan ${plan.id}: ${problems[0]!.message}`);
  const { project, batch, pieces, suitable, leftOut, id } = plan;
  const asked = {
    ...{ project, batch, pieces, suitable, leftOut },
    order: trial.order,
    trial: true,
    insteadOf: id,
  };
  return once(c, typed, async (db) => {
    const added = await addPlan(db, asked, nowIn(c));
    await finishPlan(db, added, trial.plan);
    return { location: `/plans/${added}` };
  });
});

cutSheets.post('/:id/ticks', (c) => tick(c, tickStep));
cutSheets.delete('/:id/ticks', (c) => tick(c, untickStep));

cutSheets.post('/:id/cuts', async (c) => {
  const plan = await planIn(c);
  const typed = await readForm(c);
  const asked = check(cutPlanForm, typed);
  if (!plan || !isFound(plan)) return notFound(c);
  if (!asked.ok) return showSheetAgain(c, plan, entryOf(typed, asked.problems));
  return once<{ refused: Extract<PlanCut, { refused: string }> }>(
    c,
    typed,
    async (db) => {
      const cut = (await cutPlan(db, plan.id, { place: asked.value.place, at: nowIn(c) }))!;
      return 'refused' in cut && cut.refused === 'changed'
        ? { refused: cut }
        : { location: `/plans/${plan.id}` };
    },
    () => planAgain(c, typed, plan, { timeMs: USUAL_MS }),
  );
});

cutSheets.post('/:id/spoiled', async (c) => {
  const plan = await planIn(c);
  if (!plan || !isFound(plan) || !plan.cut) return notFound(c);
  const typed = await readForm(c);
  const asked = check(spoiledPartForm, typed);
  if (!asked.ok) return showPlan(c, plan, { entry: entryOf(typed, asked.problems) });
  if (!plan.order.parts.some((part) => isTyped(part) && part.id === asked.value.part)) return notFound(c);
  return once<{ refused: number }>(
    c,
    typed,
    async (db) => {
      const spoiled = await spoilPart(db, plan.id, asked.value, nowIn(c));
      return spoiled === 'spoiled' ? { location: `/plans/${plan.id}` } : spoiled;
    },
    ({ refused }) => {
      const { part } = asked.value;
      const message =
        refused === 0
          ? `None of “${part}” was cut.`
          : `All ${refused} of “${part}” that were cut are spoiled already.`;
      return showPlan(c, plan, { entry: entryOf(typed, [{ field: 'wrong', message }]) });
    },
  );
});

cutSheets.delete('/:id/spoiled', async (c) => {
  const plan = await planIn(c);
  const asked = check(unspoiledPartForm, await readForm(c));
  if (!plan || !asked.ok || !(await unspoilPart(c.get('db'), plan.id, asked.value))) return notFound(c);
  return goTo(c, `/plans/${plan.id}`);
});

async function showSheetAgain(c: Request, plan: Plan, entry: Entry): Promise<Response> {
  const view = (await readPlanView(c, plan, entry))!;
  return showSheet(c, view, view.plan.plan.steps.length);
}

/** The step under way for scripts, the whole sheet for everybody else. */
async function showSheet(c: Request, view: PlanView, at: number): Promise<Response> {
  const shown = { ...view, at, places: await likelyPlaces(c.get('db'), '', { limit: 40 }) };
  return reply(c, {
    title: `${sayWhere(shown)} · Cut sheet · ${view.project.title}`,
    section: 'journal',
    status: statusOf(view.entry),
    body: jsx(SheetPage, shown),
    fragment: jsx(SheetUnderWay, shown),
    titled: true,
  });
}

/** Steps count from one in addresses, the one after the last is the end; without one, the first that is not cut. */
function stepIn({ plan, ticks, cut }: FoundPlan, asked = ''): number {
  const { steps } = plan;
  if (/^\d{1,4}$/.test(asked)) return Math.min(Math.max(Number(asked) - 1, 0), steps.length);
  const next = cut ? 0 : steps.findIndex(({ number }) => !ticks.includes(number));
  return next < 0 ? steps.length : next;
}

/** On to the next that is not cut, be it an earlier one; a tick taken back stays where it was. */
async function tick(c: Request, mark: (db: Database, plan: number, step: number) => Promise<void>) {
  const plan = await planIn(c);
  const asked = check(tickForm, await readForm(c));
  const steps = plan?.plan?.steps ?? [];
  const at = asked.ok ? steps.findIndex(({ number }) => number === asked.value.step) : -1;
  if (!plan || at < 0) return notFound(c);
  await mark(c.get('db'), plan.id, steps[at]!.number);
  const { ticks } = (await readPlan(c.get('db'), plan.id))!;
  const isOpen = (one: number): boolean => !ticks.includes(steps[one]!.number);
  const onwards = steps.map((_, index) => (at + index) % steps.length).find(isOpen) ?? steps.length;
  return goTo(c, `/plans/${plan.id}/sheet?step=${onwards + 1}`);
}
