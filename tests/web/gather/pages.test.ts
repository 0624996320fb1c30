/** What holds for every page, each asked once: its questions, its names, its title, its weight over the wire. */
import { brotliCompressSync, gzipSync } from 'node:zlib';
import { beforeAll, expect, test } from 'vitest';
import { seedDemo } from '#seed/demo.ts';
import { type App, openApp } from '#tests/support/app.ts';
import { FIRST } from '#tests/support/cast.ts';
import { PAGES, withPlans } from '#tests/support/pages.ts';
import { askedTwice, type Queries, watchQueries } from '#tests/support/queries.ts';

const FIRST_VISIT = 120_000;
const LIVE = 25_000;

interface Answer {
  readonly route: string;
  readonly status: number;
  readonly asked: ReturnType<Queries['take']>;
  readonly html: string;
}

let app: App;
let queries: Queries;
const answers = new Map<string, Answer>();

beforeAll(async () => {
  app = await openApp();
  await seedDemo(app.db, new Date(FIRST));
  await withPlans(app);
  queries = watchQueries(app.db);
  for (const [route, addresses] of Object.entries(PAGES))
    for (const address of addresses) {
      queries.take();
      const answer = await app.get(address);
      const asked = queries.take();
      answers.set(address, { route, status: answer.status, asked, html: await answer.text() });
    }
});

const pages = (): [string, Answer][] =>
  [...answers].filter(([, { html }]) => html.startsWith('<!doctype html>'));

const all = (html: string, pattern: RegExp): string[] => [...html.matchAll(pattern)].map(([, one]) => one!);

test('every page is asked', () => {
  const routes = app.app.routes.filter(
    ({ method, path }) => method === 'GET' && !path.startsWith('/assets/'),
  );
  expect([...new Set(routes.map(({ path }) => path))].sort()).toEqual(Object.keys(PAGES).sort());
});

test.each(Object.values(PAGES).flat())('%s asks nothing twice', (address) => {
  const { status, asked } = answers.get(address)!;
  expect(status).toBeLessThan(500);
  expect(askedTwice(asked)).toEqual([]);
});

test.each(PAGES['/envelopes']!)(
  'a keypress that asks for %s takes 12 queries and 25 kB at most',
  async (address) => {
    queries.take();
    const answer = await app.get(address, { 'HX-Request': 'true' });
    expect(queries.take().length).toBeLessThanOrEqual(12);
    expect(gzipSync(await answer.text()).length).toBeLessThan(LIVE);
  },
);

test('no page names two things alike, or points at what is not on it', () => {
  const wrong = pages().flatMap(([address, { html }]) => {
    const ids = all(html, / id="([^"]*)"/g);
    const twice = ids.filter((id, one) => ids.indexOf(id) !== one);
    const pointed = all(html, / (?:for|aria-labelledby|aria-describedby|list|form)="([^"]*)"/g);
    const lost = pointed.flatMap((some) => some.split(' ')).filter((id) => !ids.includes(id));
    const both = [...new Set([...twice, ...lost])];
    return both.length > 0 ? [`${address}: ${both.join(', ')}`] : [];
  });
  expect(wrong).toEqual([]);
});

test('no two routes answer under one title', () => {
  const routes = new Map<string, Set<string>>();
  for (const [, { route, html }] of pages()) {
    const [title] = all(html, /<title>([^<]*)<\/title>/g) as [string];
    routes.set(title, (routes.get(title) ?? new Set()).add(route));
  }
  expect([...routes].filter(([, some]) => some.size > 1)).toEqual([]);
});

test('a first visit weighs less than 120 kB, with all that the page loads', async () => {
  const weights = new Map<string, number>();
  const weigh = async (at: string): Promise<number> => {
    const body = Buffer.from(await (await app.get(at)).arrayBuffer());
    const weight = at.endsWith('.woff2') ? body.length : brotliCompressSync(body).length;
    weights.set(at, weight);
    return weight;
  };
  const heavy: string[] = [];
  for (const [address, { html }] of pages()) {
    let weight = gzipSync(html).length;
    for (const at of new Set(all(html, / (?:href|src)="(\/assets\/[^"]*)"/g)))
      weight += weights.get(at) ?? (await weigh(at));
    if (weight >= FIRST_VISIT) heavy.push(`${address}: ${weight}`);
  }
  expect(heavy).toEqual([]);
});
