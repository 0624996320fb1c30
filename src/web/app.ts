/** Puts the routers together behind the doors of security.ts, and answers what goes wrong. Knows no resource. */

import { Hono } from 'hono';
import { HTTPException } from 'hono/http-exception';
import { jsx } from 'hono/jsx';
import { readSettings } from '#stores/settings.ts';
import { Oops } from '#views/errors/oops.tsx';
import { assets } from './assets.ts';
import type { Env, Request, Services } from './env.ts';
import { reply } from './reply.ts';
import { guard } from './security.ts';

export function createApp(services: Services): Hono<Env> {
  const app = new Hono<Env>();
  guard(app, services.hosts);
  app.route('/assets', assets);
  app.use(async (c, next) => {
    const settings = await readSettings(services.db);
    c.set('services', services);
    c.set('db', services.db);
    c.set('settings', settings);
    c.set('units', settings.units);
    await next();
  });
  app.notFound((c) => notFound(c));
  app.onError((error, c) => failed(error, c));
  return app;
}

/** For a row that isn't there, and for every address that nothing answers. */
export const notFound = (c: Request): Response | Promise<Response> =>
  reply(c, {
    title: 'Not here',
    status: 404,
    body: jsx(Oops, {
      heading: 'Nothing lies here.',
      message: 'It may have been renamed, undone or binned. What you have is on one of these pages:',
    }),
  });

function failed(error: Error, c: Request): Response | Promise<Response> {
  if (error instanceof HTTPException) return refused(error, c);
  console.error(error);
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
  if (error.message === '' || error.res) return error.getResponse();
  return reply(c, {
    title: 'Not accepted',
    status: error.status as 400,
    body: jsx(Oops, { heading: 'That wasn’t accepted.', message: error.message }),
  });
}
