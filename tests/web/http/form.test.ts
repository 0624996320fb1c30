/** The door that every typed field passes: what is too long for any field is told beside it, and not read. */
import { expect, test } from 'vitest';
import { openApp } from '#tests/support/app.ts';

const LONG = '²'.repeat(20_000);
const TOLD = 'That is 20,000 characters, and nothing here takes more than 4,000. Shorten it.';

test('a field of 20 000 signs is told so where it is posted, and comes back as it was typed', async () => {
  const app = await openApp();
  const answer = await app.post('/tools/cards', { name: 'Square', width: LONG, height: '5', bulk: '' });
  expect(answer.status).toBe(422);
  const html = await answer.text();
  expect(html).toMatch(new RegExp(`<input[^>]*name="width"[^>]*value="${LONG}"`));
  expect(html).toContain(TOLD);
  expect(await app.db.selectFrom('card_sizes').selectAll().execute()).toEqual([]);
});

test('and where it stands in an address, all such fields at once', async () => {
  const app = await openApp();
  const answer = await app.get(`/post?${new URLSearchParams({ width: LONG, height: '5', thick: LONG })}`);
  expect(answer.status).toBe(422);
  expect((await answer.text()).split(TOLD)).toHaveLength(3);
});

test('a name that every object knows is a field like any other', async () => {
  const app = await openApp();
  const fields = { constructor: 'x', width: '5', height: '5', thick: '1/8', mass: '1 oz' };
  expect((await app.get(`/post?${new URLSearchParams(fields)}`)).status).toBe(200);
});

test('signs that no keyboard types are dropped, so that a drawing that shows the text stays sound; lines stay', async () => {
  const app = await openApp();
  const notes = 'one\ttwo\r\nthree';
  const title = 'F\u0000e\u0001r\u001bn\u007f \u009bs';
  const { headers } = await app.post('/projects', { title });
  await app.post(headers.get('Location')!, { _method: 'PUT', title, notes });
  expect(await app.db.selectFrom('projects').select(['title', 'notes']).execute()).toEqual([
    { title: 'Fern s', notes },
  ]);
});
