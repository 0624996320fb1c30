/** The start page, and filling an empty book with the demo. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import { listCardSizes } from '#stores/card-sizes.ts';
import type { Database } from '#stores/database.ts';
import { listLow } from '#stores/low.ts';
import { hasPads } from '#stores/pads.ts';
import { listProjects } from '#stores/projects.ts';
import { listAway } from '#stores/put-away.ts';
import { Table } from '#views/table/table.tsx';
import type { Env } from '../http/env.ts';
import { readForm } from '../http/form.ts';
import { newToken, once } from '../http/once.ts';
import { goTo, reply } from '../http/reply.ts';

export const table = new Hono<Env>();

table.get('/', async (c) => {
  const { low, cards, latest, empty } = await readTable(c.get('db'));
  const body = jsx(Table, {
    units: c.get('units'),
    cards,
    low,
    latest,
    empty,
    token: newToken(c),
  });
  return reply(c, { title: 'Creasebook', section: 'table', body });
});

table.post('/demo', async (c) => {
  const { now, loadDemo } = c.get('services');
  const typed = await readForm(c);
  if (!(await readTable(c.get('db'))).empty) return goTo(c, '/');
  return once(c, typed, async (db) => {
    await loadDemo(db, now());
    return { location: '/' };
  });
});

async function readTable(db: Database) {
  const [pads, low, cards, latest] = [
    await hasPads(db),
    await listLow(db, { limit: 4 }),
    await listCardSizes(db),
    await listProjects(db, { limit: 4 }),
  ];
  const bare = !pads && cards.length + latest.length === 0;
  return {
    low,
    cards,
    latest,
    empty: bare && (await listAway(db, { limit: 1 })).length === 0,
  };
}
