/** Mistakes taken back: an outcome corrected or withdrawn, a blank or a part that is not spoiled after all. */
import { beforeEach, expect, test } from 'vitest';
import { checkData } from '#stores/checks.ts';
import { listEnvelopes } from '#stores/envelopes.ts';
import { chosenNotcher } from '#stores/notchers.ts';
import { readProject } from '#stores/projects.ts';
import { type App, openApp } from '#tests/support/app.ts';
import { fillShelf } from '#tests/support/cast.ts';
import { takeThree } from '#tests/support/projects.ts';

let app: App;
let home: string;
let project: number;
beforeEach(async () => {
  app = await openApp();
  const taken = await takeThree(app.db, await fillShelf(app.db));
  project = taken.project;
  home = `/projects/${project}`;
});

const record = (fields: Record<string, string>) =>
  app.post(`${home}/outcomes`, { envelope: '1', felt: 'easy', ...fields });
const withdraw = (number: number, fields = {}) =>
  app.post(`${home}/outcomes/${number}`, { _method: 'DELETE', ...fields });
const envelopes = () => listEnvelopes(app.db, project);
const pockets = async () => (await chosenNotcher(app.db)).observations.length;
const POCKET = { pocketWidth: '6 1/2', pocketHeight: '3 9/16' };

/** All three folded, the first written down for all of them. */
async function writtenAlike(): Promise<void> {
  await app.post(`${home}/made`, { envelope: '1', goes: '', rest: 'on' });
  await record({ ...POCKET, rest: 'on' });
}

test('an outcome is withdrawn, the tool forgets it, and the envelope stays made', async () => {
  await record(POCKET);
  expect(await pockets()).toBe(1);
  expect(await (await app.get(`${home}/outcomes/new?envelope=1`)).text()).toContain(
    'withdraw what is written',
  );
  expect((await withdraw(1)).headers.get('location')).toBe(home);
  expect((await envelopes())[0]).toMatchObject({ state: 'made', outcome: null });
  expect(await pockets()).toBe(0);
  expect(await checkData(app.db)).toEqual([]);
  expect((await withdraw(1)).status).toBe(404);
});

test('what was written down alike is withdrawn together', async () => {
  await writtenAlike();
  await withdraw(2, { rest: 'on' });
  expect((await envelopes()).map(({ outcome }) => outcome)).toEqual([null, null, null]);
});

test('a mistyped pocket is corrected for all that were written down alike', async () => {
  await writtenAlike();
  const form = await (await app.get(`${home}/outcomes/new?envelope=2`)).text();
  expect(form).toMatch(/name="rest" checked=""/);
  await record({ ...POCKET, envelope: '2', pocketHeight: '3 5/8', rest: 'on' });
  const heights = (await envelopes()).map(({ outcome }) => outcome!.pocket!.height);
  expect(new Set(heights).size).toBe(1);
  expect(await pockets()).toBe(1);
});

test('a blank that is not spoiled after all is a blank again', async () => {
  await app.post(`${home}/spoiled`, { envelope: '2', wrong: 'Cut short.' });
  expect((await envelopes())[1]).toMatchObject({ state: 'spoiled' });
  expect(await (await app.get(home)).text()).toContain('It isn’t spoiled after all');
  await withdraw(2);
  expect((await envelopes())[1]).toMatchObject({ state: 'blank', outcome: null, start: null });
  expect(await checkData(app.db)).toEqual([]);
});

test('measures that were only written down go with their outcome, and the project waits for paper', async () => {
  const kept = { card: '5 x 3', fold: 'diagonal', blank: '8', start: '3 1/2', came: 'made', tool: '1' };
  const { headers } = await app.post('/kept', { ...kept, copies: '1', bulk: '1/32' });
  const other = headers.get('location')!;
  await app.post(`${other}/outcomes/1`, { _method: 'DELETE' });
  const id = Number(other.split('/').at(-1));
  expect(await listEnvelopes(app.db, id)).toEqual([]);
  expect(await readProject(app.db, id)).toMatchObject({ state: 'planned', finishedAt: null });
});
