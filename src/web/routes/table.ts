/** The start page, and filling an empty book with the demo. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import { listCardSizes } from '#stores/card-sizes.ts';
import { listLow, listPads } from '#stores/pads.ts';
import { listProjects } from '#stores/projects.ts';
import { Table } from '#views/table/table.tsx';
import type { Env, Request } from '../http/env.ts';
import { readForm } from '../http/form.ts';
import { newToken, once } from '../http/once.ts';
import { goTo, reply } from '../http/reply.ts';

export const table = new Hono<Env>();

table.get('/', async (c) => {
  const db = c.get('db');
  const body = jsx(Table, {
    units: c.get('units'),
    cards: await listCardSizes(db),
    low: (await listLow(db)).slice(0, 4),
    latest: await listProjects(db, { limit: 4 }),
    empty: await isEmpty(c),
    token: newToken(c),
  });
  return reply(c, { title: 'Creasebook', section: 'table', body });
});

table.post('/demo', async (c) => {
  const { now, loadDemo } = c.get('services');
  const typed = await readForm(c);
  if (!(await isEmpty(c))) return goTo(c, '/');
  return once(c, typed, async (db) => {
    await loadDemo(db, now());
    return { location: '/' };
  });
});

async function isEmpty(c: Request): Promise<boolean> {
  const db = c.get('db');
  const [pads, cards, projects] = await Promise.all([
    listPads(db),
    listCardSizes(db),
    listProjects(db, { limit: 1 }),
  ]);
  return pads.length + cards.length + projects.length === 0;
}
