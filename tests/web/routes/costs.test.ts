/** What a batch cost, from the price typed on a pad to the page that says it. */
import { expect, test } from 'vitest';
import { takePiece } from '#stores/cuts.ts';
import { readPad } from '#stores/pads.ts';
import { readSettings } from '#stores/settings.ts';
import { type App, openApp } from '#tests/support/app.ts';
import { type Cast, fillShelf, later, SQUARE_8, THANKS } from '#tests/support/cast.ts';

const PAD = {
  _method: 'PUT',
  name: 'Meadow walk',
  kind: 'patterned',
  width: '12',
  height: '12',
  weight: '',
  low: '6',
  source: '',
  note: '',
};

const body = async (answer: Response): Promise<string> => (await answer.text()).replace(/<[^>]+>/g, ' ');

async function taken(): Promise<{ app: App; cast: Cast }> {
  const app = await openApp();
  const cast = await fillShelf(app.db);
  const piece = { design: cast.fern.id, offcut: null };
  await takePiece(app.db, { piece, wanted: SQUARE_8, copies: 1, project: THANKS, at: later(1) });
  return { app, cast };
}

test('a price is for a number of sheets, and its sign is the book’s', async () => {
  const { app, cast } = await taken();
  const { id } = cast.fern.pad;
  const alone = await app.post(`/pads/${id}`, { ...PAD, price: '£7.20', priceSheets: '' });
  expect(alone.status).toBe(422);
  expect(await body(alone)).toContain('Say how many sheets that was for.');
  expect((await app.post(`/pads/${id}`, { ...PAD, price: 'cheap', priceSheets: '6' })).status).toBe(422);
  expect((await app.post(`/pads/${id}`, { ...PAD, price: '£7.20', priceSheets: '6' })).status).toBe(303);
  expect((await readPad(app.db, id))!.pad.price).toEqual({ hundredths: 720, sheets: 6 });
  expect((await readSettings(app.db)).currency).toBe('£');
  const other = await app.post(`/pads/${id}`, { ...PAD, price: '€7.20', priceSheets: '6' });
  expect(await body(other)).toContain('Your prices are in £; the sign is changed under Tools.');
  expect(await body(await app.get(`/pads/${id}`))).toContain('£7.20 for 6 sheets');
});

test('a project says what its paper cost, per set too, and which has no price', async () => {
  const { app, cast } = await taken();
  expect(await body(await app.get('/projects/1/cost'))).toContain('None of its paper has a price yet.');
  expect(await body(await app.get('/projects/1'))).toContain('What it cost in paper');
  await app.post(`/pads/${cast.fern.pad.id}`, { ...PAD, price: '12', priceSheets: '10' });
  const said = await body(await app.get('/projects/1/cost'));
  expect(said.replace(/\s+/g, ' ')).toMatch(/0\.53 , about 0\.18 for each of 3 sets/);
  expect((await app.get('/projects/99/cost')).status).toBe(404);
});
