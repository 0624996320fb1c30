/** Puts the routers together behind the doors of security.ts, and answers what goes wrong. Knows no resource. */

import { Hono } from 'hono';
import { compress } from 'hono/compress';
import { HTTPException } from 'hono/http-exception';
import { jsx } from 'hono/jsx';
import { troubleOf } from '#shared/trouble.ts';
import { readSettings } from '#stores/settings.ts';
import { Oops } from '#views/errors/oops.tsx';
import { assets } from './http/assets.ts';
import type { Env, Request, Services, UnderWay } from './http/env.ts';
import { heldUp } from './http/held-up.ts';
import { notFound } from './http/not-found.ts';
import { reply } from './http/reply.ts';
import { guard } from './http/security.ts';
import { again } from './routes/again.ts';
import { archive } from './routes/archive.ts';
import { backups } from './routes/backups.ts';
import { batches } from './routes/batches.ts';
import { costs } from './routes/costs.ts';
import { cutSheets } from './routes/cut-sheets.ts';
import { cuts } from './routes/cuts.ts';
import { designs } from './routes/designs.ts';
import { envelopes } from './routes/envelopes.ts';
import { filling } from './routes/filling.ts';
import { finding } from './routes/find.ts';
import { holders } from './routes/holders.ts';
import { holding } from './routes/holding.ts';
import { inPlace } from './routes/in-place.ts';
import { kept } from './routes/kept.ts';
import { lessons } from './routes/lessons.ts';
import { likely } from './routes/likely.ts';
import { madeBefore } from './routes/made-before.ts';
import { making } from './routes/making.ts';
import { movements } from './routes/movements.ts';
import { newProjects } from './routes/new-project.ts';
import { offcuts } from './routes/offcuts.ts';
import { outcomes } from './routes/outcomes.ts';
import { pads } from './routes/pads.ts';
import { paper } from './routes/paper.ts';
import { parts } from './routes/parts.ts';
import { plans } from './routes/plans.ts';
import { post } from './routes/post.ts';
import { projects } from './routes/projects.ts';
import { putAways } from './routes/put-away.ts';
import { readyMade } from './routes/ready-made.ts';
import { series } from './routes/series.ts';
import { starts } from './routes/starts.ts';
import { stash } from './routes/stash.ts';
import { style } from './routes/style.ts';
import { table } from './routes/table.ts';
import { tags } from './routes/tags.ts';
import { templates } from './routes/templates.ts';
import { tools } from './routes/tools.ts';
import { waiting } from './routes/waiting.ts';
import { years } from './routes/year.ts';

export function createApp(services: Services): Hono<Env> {
  const app = new Hono<Env>();
  guard(app, services.hosts);
  app.use(compress());
  app.route('/assets', assets);
  const plannings = new Map<number, UnderWay>();
  app.use(async (c, next) => {
    const settings = await readSettings(services.db);
    c.set('services', services);
    c.set('db', services.db);
    c.set('settings', settings);
    c.set('units', settings.units);
    c.set('plannings', plannings);
    await next();
  });
  app.route('/', table);
  app.route('/made-before', madeBefore);
  app.route('/envelopes', envelopes);
  app.route('/envelopes', newProjects);
  app.route('/in-place', inPlace);
  app.route('/kept', kept);
  app.route('/likely', likely);
  app.route('/holding', holding);
  app.route('/holders', holders);
  app.route('/filling', filling);
  app.route('/find', finding);
  app.route('/cuts', cuts);
  for (const one of [stash, waiting]) app.route('/stash', one);
  app.route('/pads', pads);
  app.route('/designs', designs);
  app.route('/offcuts', offcuts);
  app.route('/movements', movements);
  app.route('/ready-made', readyMade);
  for (const one of [projects, again, making, starts, outcomes, batches, costs]) app.route('/projects', one);
  for (const one of [plans, cutSheets]) app.route('/plans', one);
  app.route('/series', series);
  app.route('/lessons', lessons);
  app.route('/tags', tags);
  app.route('/put-away', putAways);
  app.route('/paper', paper);
  app.route('/parts', parts);
  app.route('/post', post);
  app.route('/tools', tools);
  if (services.showsStyle) app.route('/style', style);
  app.route('/year', years);
  app.route('/templates', templates);
  app.route('/archive', archive);
  app.route('/backups', backups);
  app.notFound((c) => notFound(c));
  app.onError((error, c) => failed(error, c));
  return app;
}

function failed(error: Error, c: Request): Response | Promise<Response> {
  if (error instanceof HTTPException) return refused(error, c);
  const trouble = troubleOf(error);
  console.error(trouble ? error.message : error);
  if (trouble) return heldUp(c, trouble);
  return reply(c, {
    title: 'Something went wrong',
    status: 500,
    body: jsx(Oops, {
      heading: 'That didn’t work, and it’s our fault.',
      message: 'Nothing was written. Go back and try once more; what you typed is still in the form.',
    }),
  });
}

function refused(error: HTTPException, c: Request): Response | Promise<Response> {
  const message =
    error.status === 403
      ? 'That came from another site, so nothing was done. Open Creasebook’s own page and try there.'
      : error.message;
  return reply(c, {
    title: 'Not accepted',
    status: error.status as 400,
    body: jsx(Oops, { heading: 'That wasn’t accepted.', message }),
  });
}
