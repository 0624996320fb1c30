/** Plans: looked for and looked at, stopped, asked again otherwise. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import { isFound } from '#core/batch/planned.ts';
import { againForm } from '#shared/schemas/plan.ts';
import { FarNow } from '#views/plans/waiting.tsx';
import { planAgain } from '../gather/plan-again.ts';
import { planIn } from '../gather/plan-view.ts';
import { aMoment, LONG_MS, lookFor, USUAL_MS } from '../gather/plannings.ts';
import { farIn, showPlan } from '../gather/show-plan.ts';
import type { Env } from '../http/env.ts';
import { check, readForm, type Typed } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { goTo, reply, wantsFragment } from '../http/reply.ts';

export const plans = new Hono<Env>();

plans.get('/:id', async (c) => {
  const plan = await planIn(c);
  return plan ? showPlan(c, plan, { busy: c.req.query('busy') !== undefined }) : notFound(c);
});

/** How far it has come, for a page that waits; once it is found, that page is sent on. */
plans.get('/:id/planning', async (c) => {
  const plan = await planIn(c);
  if (!plan) return notFound(c);
  const planning = c.get('plannings').get(plan.id);
  if (planning && wantsFragment(c))
    return reply(c, {
      title: 'Looking for a plan',
      body: jsx(FarNow, { ...farIn(c, plan, planning), seen: c.req.query('seen') }),
    });
  if (wantsFragment(c)) c.header('HX-Redirect', `/plans/${plan.id}`);
  return wantsFragment(c) ? c.body(null) : goTo(c, `/plans/${plan.id}`);
});

/** Looks again for what is still not found. */
plans.post('/:id/planning', async (c) => {
  const plan = await planIn(c);
  if (!plan) return notFound(c);
  const begun = isFound(plan) || plan.fault ? 'begun' : await lookFor(c, plan.id, plan);
  return begun === 'busy' ? showPlan(c, plan, { busy: true }) : goTo(c, `/plans/${plan.id}`);
});

/** The best so far is the plan. */
plans.delete('/:id/planning', async (c) => {
  const plan = await planIn(c);
  if (!plan) return notFound(c);
  const planning = c.get('plannings').get(plan.id);
  planning?.stop();
  await Promise.race([planning?.plan.catch(() => {}), aMoment()]);
  return goTo(c, `/plans/${plan.id}`);
});

/** The same batch for the shelf as it is now, perhaps with something kept or from another design. */
plans.post('/:id/again', async (c) => {
  const plan = await planIn(c);
  const typed = await readForm(c);
  const asked = check(againForm, typed);
  if (!plan || !asked.ok) return notFound(c);
  const { keep, design, longer } = asked.value;
  return planAgain(c, withTokenFor(typed), plan, { keep, design, timeMs: longer ? LONG_MS : USUAL_MS });
});

/** All the ways to ask again stand on one page with one token: each of them counts apart. */
const withTokenFor = ({ once = '', ...typed }: Typed): Typed => {
  const way = [once, 'again', typed.keep, typed.design, typed.longer].filter(Boolean).join('-');
  return { ...typed, ...(once !== '' && { once: way }) };
};
