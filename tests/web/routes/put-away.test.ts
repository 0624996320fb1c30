/** Deleting and putting away as a reader meets it: what is said before and after, and the way back, for each kind of thing. */
import { beforeEach, expect, test } from 'vitest';
import type { AwayKind } from '#shared/put-away.ts';
import { addCardSize } from '#stores/card-sizes.ts';
import { addNotcher, readNotcher } from '#stores/notchers.ts';
import { addPad } from '#stores/pads.ts';
import { createProject } from '#stores/projects.ts';
import { addSeries } from '#stores/series.ts';
import { type App, openApp } from '#tests/support/app.ts';
import { CARD, type Cast, fillShelf, later, PLAIN, THANKS } from '#tests/support/cast.ts';
import { takeThree } from '#tests/support/projects.ts';

let app: App;
let cast: Cast;
beforeEach(async () => {
  app = await openApp();
  cast = await fillShelf(app.db);
});

const page = async (path: string): Promise<string> => (await app.get(path)).text();

/** What is left of the page where a thing's name has to be missing. */
const listed = async (path: string, name: string): Promise<boolean> => (await page(path)).includes(name);

interface Case {
  readonly name: string;
  readonly kind: AwayKind;
  readonly home: (id: number) => string;
  readonly list: string;
  readonly word: 'Deleted' | 'Put away';
  readonly make: () => Promise<number>;
}

const CASES: readonly Case[] = [
  {
    name: 'Kites',
    kind: 'projects',
    home: (id) => `/projects/${id}`,
    list: '/projects',
    word: 'Deleted',
    make: async () => (await createProject(app.db, { title: 'Kites' }, later(1))).id,
  },
  {
    name: THANKS.title,
    kind: 'projects',
    home: (id) => `/projects/${id}`,
    list: '/projects',
    word: 'Put away',
    make: async () => (await takeThree(app.db, cast)).project,
  },
  {
    name: 'Mistyped',
    kind: 'pads',
    home: (id) => `/pads/${id}`,
    list: '/stash',
    word: 'Deleted',
    make: async () => (await addPad(app.db, { ...PLAIN, name: 'Mistyped' })).id,
  },
  {
    name: 'Fern',
    kind: 'designs',
    home: (id) => `/designs/${id}`,
    list: '/stash',
    word: 'Put away',
    make: async () => cast.fern.id,
  },
  {
    name: 'Long note',
    kind: 'cards',
    home: (id) => `/tools/cards/${id}`,
    list: '/envelopes',
    word: 'Deleted',
    make: async () => (await addCardSize(app.db, { name: 'Long note', ...CARD })).id,
  },
  {
    name: 'Old ruler',
    kind: 'tools',
    home: (id) => `/tools/notchers/${id}`,
    list: '/tools',
    word: 'Deleted',
    make: async () => {
      const { tool } = (await readNotcher(app.db, 1))!;
      return (await addNotcher(app.db, { ...tool, name: 'Old ruler' })).tool.id;
    },
  },
  {
    name: 'Winter',
    kind: 'series',
    home: (id) => `/series/${id}`,
    list: '/series',
    word: 'Put away',
    make: async () => {
      const { id } = (await addSeries(app.db, { name: 'Winter', note: '' }))!;
      await createProject(app.db, { ...THANKS, series: id }, later(1));
      return id;
    },
  },
];

test.each(CASES)('$kind: “$name” is $word, says so, and is brought back', async (one) => {
  const id = await one.make();
  const home = one.home(id);
  const before = await page(home);
  expect(before).toContain(one.word === 'Deleted' ? 'Delete it' : 'Put it away');
  expect(before).toContain(one.word === 'Deleted' ? 'Nothing else names it' : 'nothing is lost');
  expect(await listed(one.list, one.name)).toBe(true);

  const sent = await app.post('/put-away', { kind: one.kind, id: `${id}` });
  expect([sent.status, sent.headers.get('location')]).toEqual([303, home]);
  const after = await page(home);
  expect(after).toContain(`${one.word} on `);
  expect(after).not.toContain('action="/put-away"');
  expect(await listed(one.list, one.name)).toBe(false);
  expect(await page('/put-away')).toContain(one.name);

  const back = await app.post(`/put-away/${one.kind}/${id}`, { _method: 'DELETE' });
  expect([back.status, back.headers.get('location')]).toEqual([303, home]);
  expect(await page(home)).not.toContain(`${one.word} on `);
  expect(await listed(one.list, one.name)).toBe(true);
  expect(await page('/put-away')).toContain('Nothing is put away.');
});

test('an offcut of paper put away says so', async () => {
  await app.post('/put-away', { kind: 'pads', id: `${cast.fern.pad.id}` });
  expect(await page(`/offcuts/${cast.corner.id}`)).toContain('Put away on ');
  expect(await page(`/designs/${cast.fern.id}`)).toContain('“Meadow walk” is in no list');
});

test('the tool in use is refused, with the way on', async () => {
  const answer = await app.post('/put-away', { kind: 'tools', id: '1' });
  expect(answer.status).toBe(409);
  expect(await answer.text()).toContain('Choose another tool first');
});

test.each([
  { kind: 'offcuts', id: '1' },
  { kind: 'pads', id: '99' },
  { kind: 'pads', id: 'x' },
])('%o is not there to be put away', async (fields) => {
  expect((await app.post('/put-away', fields)).status).toBe(404);
  const back = await app.post(`/put-away/${fields.kind}/${fields.id}`, { _method: 'DELETE' });
  expect(back.status).toBe(404);
});
