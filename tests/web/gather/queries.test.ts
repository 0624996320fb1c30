/** What each page asks of the database: no question twice in one answer, and few while she types. */
import { beforeAll, expect, test } from 'vitest';
import { seedDemo } from '#seed/demo.ts';
import { type App, openApp } from '#tests/support/app.ts';
import { FIRST } from '#tests/support/cast.ts';
import { PAGES, withPlans } from '#tests/support/pages.ts';
import { askedTwice, type Queries, watchQueries } from '#tests/support/queries.ts';

let app: App;
let queries: Queries;

beforeAll(async () => {
  app = await openApp();
  await seedDemo(app.db, new Date(FIRST));
  await withPlans(app);
  queries = watchQueries(app.db);
});

test('every page is asked', () => {
  const routes = app.app.routes.filter(
    ({ method, path }) => method === 'GET' && !path.startsWith('/assets/'),
  );
  expect([...new Set(routes.map(({ path }) => path))].sort()).toEqual(Object.keys(PAGES).sort());
});

test.each(Object.values(PAGES).flat())('%s asks nothing twice', async (address) => {
  queries.take();
  const answer = await app.get(address);
  const asked = queries.take();
  expect(answer.status).toBeLessThan(500);
  expect(askedTwice(asked)).toEqual([]);
});

test.each(PAGES['/envelopes']!)('a keypress that asks for %s takes 12 queries at most', async (address) => {
  queries.take();
  await app.get(address, { 'HX-Request': 'true' });
  expect(queries.take().length).toBeLessThanOrEqual(12);
});
