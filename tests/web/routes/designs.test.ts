/** One design through its forms: bought, counted again, gone, undone, put right. */
import { beforeEach, describe, expect, test } from 'vitest';
import { takePiece } from '#stores/cuts.ts';
import { readDesign } from '#stores/designs.ts';
import { listMovements } from '#stores/movements.ts';
import { addOffcut } from '#stores/offcuts.ts';
import { type App, openApp } from '#tests/support/app.ts';
import { type Cast, fillShelf, later, SQUARE_8, scrap } from '#tests/support/cast.ts';
import { rowCounts } from '#tests/support/shelf.ts';

let app: App;
let cast: Cast;
beforeEach(async () => {
  app = await openApp();
  cast = await fillShelf(app.db);
});

const sheets = async (): Promise<number> => (await readDesign(app.db, cast.fern.id))!.sheets;
const here = (): string => `/designs/${cast.fern.id}`;

test('the page has its sheets, its offcuts and its ledger', async () => {
  const page = await (await app.get(here())).text();
  expect(page).toContain('5 sheets');
  expect(page).toContain(cast.corner.code);
  expect(page).toContain('12 × 3″');
  expect(page).not.toContain(cast.lying.code);
  expect(page).toMatch(/bought<\/td><td class="number">\+5<\/td><td class="number">5/);
});

test('the page says when it does not draw all of its offcuts', async () => {
  const cut = (count: number): Promise<unknown[]> =>
    Promise.all(
      Array.from({ length: count }, () =>
        addOffcut(app.db, { design: cast.fern.id, offcut: scrap(3, 3), count: 1, at: later(1) }),
      ),
    );
  const places = [here(), `/pads/${cast.fern.pad.id}`];
  await cut(197);
  for (const place of places) expect(await (await app.get(place)).text()).not.toContain('Only the newest');
  await cut(3);
  for (const place of places)
    expect(await (await app.get(place)).text()).toContain('Only the newest are drawn');
});

describe('sheets', () => {
  test('bought come on top, once', async () => {
    const fields = { once: 'bought-form-01', bought: '12' };
    expect((await app.post(`${here()}/purchases`, fields)).headers.get('Location')).toBe(here());
    await app.post(`${here()}/purchases`, fields);
    expect(await sheets()).toBe(17);
  });

  test('counted are as many as were counted, and the ledger says how far off it was', async () => {
    await app.post(`${here()}/counts`, { counted: '3' });
    expect(await sheets()).toBe(3);
    const page = await (await app.get(here())).text();
    expect(page).toContain('fewer than noted');
    expect(page).toContain('−2');
  });

  test('gone are taken off, and may be put back', async () => {
    await app.post(`${here()}/losses`, { lost: '2' });
    expect(await sheets()).toBe(3);
    const [line] = await listMovements(app.db, { piece: { design: cast.fern.id, offcut: null }, limit: 1 });
    const back = await app.post(`/movements/${line!.id}`, { _method: 'DELETE', back: here() });
    expect(back.headers.get('Location')).toBe(here());
    expect(await sheets()).toBe(5);
    expect(await (await app.get(here())).text()).toContain('gone (undone since)');
  });

  test('gone can’t be more than there are', async () => {
    const answer = await app.post(`${here()}/losses`, { lost: '6' });
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain('There are only 5 left.');
    expect(await sheets()).toBe(5);
  });

  test.each([
    ['purchases', 'bought', '0'],
    ['purchases', 'bought', 'a few'],
    ['purchases', 'bought', '99999999999'],
    ['counts', 'counted', '-1'],
    ['counts', 'counted', ''],
    ['losses', 'lost', '1.5'],
  ])('%s of “%s = %s” are refused beside the field', async (where, field, typed) => {
    const before = await rowCounts(app.db);
    const answer = await app.post(`${here()}/${where}`, { [field]: typed });
    const page = await answer.text();
    expect(answer.status).toBe(422);
    expect(page).toMatch(new RegExp(`id="${field}-note" class="problem"`));
    expect(page).toContain(`value="${typed}"`);
    expect(await rowCounts(app.db)).toEqual(before);
  });
});

describe('undoing', () => {
  test('of a count is answered with the other way', async () => {
    await app.post(`${here()}/counts`, { counted: '3' });
    const [line] = await listMovements(app.db, { limit: 1 });
    const answer = await app.post(`/movements/${line!.id}`, { _method: 'DELETE' });
    expect(answer.status).toBe(409);
    expect(await answer.text()).toContain('counting again');
  });

  test('of what was counted since says so, and writes nothing', async () => {
    await app.post(`${here()}/losses`, { lost: '2' });
    const [line] = await listMovements(app.db, { limit: 1 });
    await app.post(`${here()}/counts`, { counted: '3' });
    const answer = await app.post(`/movements/${line!.id}`, { _method: 'DELETE', back: here() });
    const page = await answer.text();
    expect(answer.status).toBe(409);
    expect(page).toContain('a count of the sheets of Fern');
    expect(page).toContain(`href="${here()}"`);
    expect(await sheets()).toBe(3);
  });

  test('leads back only to pages of ours', async () => {
    for (const back of [
      '//elsewhere.example/stash',
      '/..//elsewhere.example',
      '/./%2e%2e//elsewhere.example',
    ]) {
      await app.post(`${here()}/losses`, { lost: '1' });
      const [line] = await listMovements(app.db, { limit: 1 });
      const answer = await app.post(`/movements/${line!.id}`, { _method: 'DELETE', back });
      expect(answer.headers.get('Location')).toBe(here());
    }
  });

  test('of a line that never was is not here', async () => {
    expect((await app.post('/movements/999', { _method: 'DELETE' })).status).toBe(404);
  });
});

test('the ledger names the project that a sheet was cut for', async () => {
  const piece = { design: cast.fern.id, offcut: null };
  const project = { title: 'Thank-yous <3' };
  await takePiece(app.db, { piece, wanted: SQUARE_8, copies: 1, project, at: later(1) });
  const page = await (await app.get(here())).text();
  expect(page).toMatch(/cut for <a href="\/projects\/1">Thank-yous &lt;3<\/a>/);
});

test('a design is put right without its count', async () => {
  const fields = {
    _method: 'PUT',
    name: 'Bracken',
    direction: 'upright',
    doubleSided: 'on',
    motif: 'dots',
    ground: '#ffffff',
    inks: '1',
    ink1: '#111111',
    ink2: '#222222',
    ink3: '#333333',
    sheets: '99',
  };
  expect((await app.post(here(), fields)).status).toBe(303);
  expect(await readDesign(app.db, cast.fern.id)).toMatchObject({
    name: 'Bracken',
    print: { direction: 'upright' },
    doubleSided: true,
    swatch: { motif: 'dots', ground: '#ffffff', inks: ['#111111'] },
    sheets: 5,
  });
  const wrong = await app.post(here(), { ...fields, name: '' });
  expect(wrong.status).toBe(422);
});

test.each(['/designs/99', '/designs/x', '/designs/99/edit'])('%s is not here', async (path) => {
  expect((await app.get(path)).status).toBe(404);
});
