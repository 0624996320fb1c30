/** Names, places and counts edited where they stand, with script in place and without on a page of their own. */
import { beforeEach, expect, test } from 'vitest';
import type { InPlaceKind } from '#shared/schemas/in-place.ts';
import { createProject } from '#stores/projects.ts';
import { addSeries } from '#stores/series.ts';
import { type App, openApp } from '#tests/support/app.ts';
import { type Cast, fillShelf, later } from '#tests/support/cast.ts';

let app: App;
let cast: Cast;
beforeEach(async () => {
  app = await openApp();
  cast = await fillShelf(app.db);
});

const SCRIPT = { 'HX-Request': 'true' };

const CASES: readonly [InPlaceKind, () => Promise<[id: number, page: string]>, string, string][] = [
  [
    'project-title',
    async () => {
      const { id } = await createProject(app.db, { title: 'Kites' }, later(1));
      return [id, `/projects/${id}`];
    },
    'Lanterns',
    '<h1>Lanterns</h1>',
  ],
  [
    'series-name',
    async () => {
      const { id } = (await addSeries(app.db, { name: 'Winter', note: 'cold' }))!;
      return [id, `/series/${id}`];
    },
    'Frost',
    '<h1>Frost</h1>',
  ],
  ['pad-name', async () => [1, '/pads/1'], 'Hedge walk', '<h1>Hedge walk</h1>'],
  ['design-name', async () => [cast.hem.id, `/designs/${cast.hem.id}`], 'Seam', '<h1>Seam</h1>'],
  ['offcut-place', async () => [1, '/offcuts/1'], 'attic', 'attic'],
  ['offcut-count', async () => [2, '/offcuts/2'], '7', '7 pieces'],
];

test.each(CASES)('%s is changed in its place', async (kind, make, value, shown) => {
  const [id, page] = await make();
  const at = `/in-place/${kind}/${id}`;
  expect(await (await app.get(page)).text()).toContain(`hx-get="${at}/edit"`);
  expect(await (await app.get(`${at}/edit`, SCRIPT)).text()).toMatch(/^<form class="in-place/);
  const changed = await app.post(at, { _method: 'PUT', value }, SCRIPT);
  const text = await changed.text();
  expect([changed.status, text.startsWith('<div class="in-place">')]).toEqual([200, true]);
  expect(text).toContain(shown);
  const plain = await app.post(at, { _method: 'PUT', value });
  expect([plain.status, plain.headers.get('location')]).toEqual([303, page]);
  expect(await (await app.get(page)).text()).toContain(shown);
});

test.each([
  ['pad-name/1', '', 'Give the pad a name.'],
  ['offcut-count/1', 'many', 'whole number'],
  ['offcut-place/1', 'x'.repeat(61), 'under 60 characters'],
])('%s refuses “%s” beside its field, with what was typed', async (at, value, message) => {
  const answer = await app.post(`/in-place/${at}`, { _method: 'PUT', value });
  const text = await answer.text();
  expect(answer.status).toBe(422);
  expect(text).toContain(message);
  expect(text).toContain(`value="${value}"`);
});

test('a series keeps its own name where another has it', async () => {
  await addSeries(app.db, { name: 'Winter', note: '' });
  const { id } = (await addSeries(app.db, { name: 'Frost', note: 'cold' }))!;
  const answer = await app.post(`/in-place/series-name/${id}`, { _method: 'PUT', value: 'Winter' });
  expect(await answer.text()).toContain('Another series has this name already.');
});

test('a design keeps the print of its whole sheet', async () => {
  await app.post(`/in-place/design-name/${cast.hem.id}`, { _method: 'PUT', value: 'Seam' });
  const page = await (await app.get(`/designs/${cast.hem.id}/edit`)).text();
  expect(page).toContain('value="1 1/2"');
});

test('what is not there is not edited', async () => {
  for (const at of ['/in-place/pad-name/99/edit', '/in-place/colour/1/edit', '/in-place/pad-name/x'])
    expect((await app.get(at)).status).toBe(404);
});
