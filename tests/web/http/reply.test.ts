/** What a page says after a form: once that it was saved, or all that is wrong, with a way to each field. */
import { beforeAll, expect, test } from 'vitest';
import { type App, openApp } from '#tests/support/app.ts';
import { fillShelf } from '#tests/support/cast.ts';

let app: App;
beforeAll(async () => {
  app = await openApp();
  await fillShelf(app.db);
});

test('a page says once that what was typed is saved', async () => {
  const sent = await app.post('/tools/fits/reset', {});
  expect(sent.status).toBe(303);
  const cookie = sent.headers.get('Set-Cookie')!;
  expect(cookie).toMatch(/HttpOnly/);
  expect(cookie).toMatch(/SameSite=Strict/);
  const path = sent.headers.get('Location')!;
  expect(path).not.toContain('?');
  const page = await app.get(path, { Cookie: cookie.split(';')[0]! });
  expect(await page.text()).toContain('Saved.');
  expect(page.headers.get('Set-Cookie')).toMatch(/^saved=;.*Max-Age=0/);
  expect(await (await app.get(path)).text()).not.toContain('Saved.');
});

test.each([
  ['/pads', {}],
  ['/pads/1/designs', {}],
  ['/offcuts', {}],
  ['/projects', {}],
  ['/ready-made', {}],
  ['/tools/notchers', { name: '', inset: 'x', zeroOffset: 'y' }],
  ['/tools/cards', { name: '' }],
  ['/tools/fits', { snug: 'x', easy: '', loose: 'y' }],
])('POST %s refused: the problems take the focus and lead to fields that there are', async (path, fields) => {
  const refused = await app.post(path, fields);
  expect(refused.status).toBe(422);
  const page = await refused.text();
  const summary = /<ul class="problems" tabindex="-1" autofocus[^>]*>(.*?)<\/ul>/s.exec(page)![1]!;
  const before = page.slice(0, page.indexOf('class="problems"'));
  expect(before).not.toContain('autofocus');
  const leads = [...summary.matchAll(/href="#([^"]+)"/g)].map(([, id]) => id!);
  expect(leads.length).toBeGreaterThan(0);
  expect(leads.filter((id) => !page.includes(`id="${id}"`))).toEqual([]);
});
