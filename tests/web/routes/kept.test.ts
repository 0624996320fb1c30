/** Measures kept without paper, by hand and from an envelope; and that no door opens a second project for one envelope. */
import { beforeEach, describe, expect, test } from 'vitest';
import { typedLength } from '#shared/length.ts';
import { checkData } from '#stores/checks.ts';
import { listEnvelopes } from '#stores/envelopes.ts';
import { chosenNotcher } from '#stores/notchers.ts';
import { createProject, listProjects } from '#stores/projects.ts';
import { tallySets } from '#stores/sets.ts';
import { type App, openApp } from '#tests/support/app.ts';
import { type Cast, FIRST, fillShelf, later, size } from '#tests/support/cast.ts';
import { rowCounts, shelf } from '#tests/support/shelf.ts';

let app: App;
let cast: Cast;
beforeEach(async () => {
  app = await openApp();
  cast = await fillShelf(app.db);
});

const IN = { unit: 'in', step: 16 } as const;
/** The fields of the form as a browser sends them. */
const HAND = {
  card: '5 7/8 x 3',
  fold: 'diagonal',
  blank: '8 1/2',
  start: '3 1/4',
  came: 'made',
  day: '2025-04-12',
  felt: 'easy',
  notes: 'From the drawer.',
  title: '',
  copies: '1',
  bulk: '1/32',
  pocket: '',
  tool: '1',
};

const keep = (fields: Record<string, string> = {}) => app.post('/kept', { ...HAND, ...fields });

const only = async () => {
  const projects = await listProjects(app.db);
  expect(projects).toHaveLength(1);
  return { project: projects[0]!, envelopes: await listEnvelopes(app.db, projects[0]!.id) };
};

describe('by hand', () => {
  test('a card of last year is made on its day, and no paper moves', async () => {
    const before = await shelf(app.db);
    const answer = await keep();
    expect([answer.status, answer.headers.get('location')]).toEqual([303, '/projects/1']);
    const { project, envelopes } = await only();
    expect(project).toMatchObject({
      state: 'made',
      quantity: 1,
      notes: 'From the drawer.',
      changedAt: FIRST,
    });
    expect([project.createdAt, project.finishedAt].map((at) => at?.slice(0, 10))).toEqual([
      '2025-04-12',
      '2025-04-12',
    ]);
    expect(project.recipe).toMatchObject({ fold: 'diagonal', blank: size(8.5, 8.5) });
    expect(envelopes).toMatchObject([
      { state: 'made', trial: false, cut: null, outcome: { felt: 'easy', pocket: null, notcher: 1 } },
    ]);
    expect(await shelf(app.db)).toEqual(before);
    expect(await checkData(app.db)).toEqual([]);
    expect((await tallySets(app.db)).finished).toBe(1);
    expect(await (await app.get('/projects/1')).text()).not.toContain('scrap');
  });

  test('a pocket that was measured teaches the tool it was made on, and no other', async () => {
    await keep({ pocket: '6 7/8 x 3 7/8', tool: '' });
    expect((await chosenNotcher(app.db)).observations).toEqual([]);
    await keep({ pocket: '6 7/8 x 3 7/8' });
    expect((await chosenNotcher(app.db)).observations).toMatchObject([
      { square: size(8.5, 1).width, start: size(3.25, 1).width, pocket: size(6.875, 3.875) },
    ]);
  });

  test('several alike are kept in one go', async () => {
    await keep({ copies: '3', title: 'Thanks' });
    const { project, envelopes } = await only();
    expect([project.title, project.state, envelopes.length]).toEqual(['Thanks', 'made', 3]);
  });

  test('what was seen elsewhere waits for paper, with nothing made', async () => {
    await keep({ came: 'not yet' });
    const { project, envelopes } = await only();
    expect([project.state, project.finishedAt, envelopes]).toEqual(['planned', null, []]);
  });

  test('a straight fold is kept from its own blank, lying either way', async () => {
    const asked = 'card=5+7%2F8+x+3&fold=side-seam';
    const link = /href="(\/kept\/new[^"]*)"/.exec(await (await app.get(`/envelopes?${asked}`)).text())!;
    const typed = new URLSearchParams(link[1]!.replaceAll('&amp;', '&').split('?')[1]);
    const sides = [typed.get('cutHeight'), typed.get('cutWidth')];
    expect((await keep({ fold: 'side-seam', blank: sides.join(' x '), start: '' })).status).toBe(303);
    const { recipe } = (await only()).project;
    expect(recipe!.fold).toBe('side-seam');
    expect([typedLength(recipe!.blank.height, IN), typedLength(recipe!.blank.width, IN)]).toEqual(sides);
  });

  test.each([
    [{ card: '' }, 'card', 'How large is the card?'],
    [{ card: '5 7/8' }, 'card', ''],
    [{ blank: '' }, 'blank', 'How large is the paper'],
    [{ blank: 'big' }, 'blank', 'isn’t a length'],
    [{ blank: '8 x 9' }, 'blank', 'both sides are alike'],
    [{ fold: 'side-seam', blank: '8' }, 'blank', ''],
    [{ fold: 'side-seam', blank: '3 x 3' }, 'blank', 'is cut from that here'],
    [{ start: '' }, 'start', 'Where does the first notch go?'],
    [{ start: '9' }, 'start', 'has to lie between'],
    [{ day: '2026-03-02' }, 'day', 'still to come'],
    [{ day: '2025-02-30' }, 'day', 'Write the day like'],
    [{ pocket: '6' }, 'pocket', ''],
    [{ copies: '0' }, 'copies', 'whole number'],
    [{ tool: '99' }, 'tool', 'Choose one from the list'],
  ])('%o is refused beside %s, and kept as typed', async (fields, field, message) => {
    const counts = await rowCounts(app.db);
    const answer = await keep(fields);
    const text = await answer.text();
    expect(answer.status).toBe(422);
    expect(text).toMatch(new RegExp(`id="${field}-note" class="problem" role="alert">[^<]*${message}`));
    expect(text).toContain('From the drawer.');
    expect(await rowCounts(app.db)).toEqual(counts);
  });
});

/** The fields that a page's form or link carries. */
const carried = (link: string) =>
  Object.fromEntries(new URLSearchParams(link.replaceAll('&amp;', '&').split('?')[1]));

describe('from an envelope', () => {
  test('the form is filled in with the card and the very measures', async () => {
    const page = await (await app.get('/envelopes?card=5+7%2F8+x+3&fold=diagonal&fit=loose')).text();
    const link = /href="(\/kept\/new[^"]*)"/.exec(page)![1]!.replaceAll('&amp;', '&');
    const { square, start } = carried(link);
    const form = await (await app.get(link)).text();
    for (const value of ['5 7/8 x 3', square, start]) expect(form).toContain(`value="${value}"`);
    expect(form).toContain('name="fit" value="loose"');
  });

  test('an idea becomes the project, and is made with what is kept for it', async () => {
    const idea = await createProject(app.db, { title: 'Kites' }, later(-10));
    expect(await (await app.get(`/kept/new?project=${idea.id}`)).text()).toContain('For “Kites”');
    await keep({ project: `${idea.id}` });
    const { project, envelopes } = await only();
    expect(project).toMatchObject({ id: idea.id, title: 'Kites', state: 'made' });
    expect(envelopes).toHaveLength(1);
  });

  test('no such project is no such page, and nothing is kept', async () => {
    expect((await app.get('/kept/new?project=9')).status).toBe(404);
    expect((await keep({ project: '9' })).status).toBe(404);
    expect(await listProjects(app.db)).toEqual([]);
  });
});

describe('one envelope has one project', () => {
  const ASKED = { width: '5 7/8', height: '3', fold: 'diagonal', square: '8 1/2', start: '3 1/4' };
  const begin = (fields = {}) => app.post('/envelopes', { ...ASKED, copies: '2', ...fields });
  const take = (fields = {}) =>
    app.post('/cuts', { ...ASKED, copies: '1', design: `${cast.fern.id}`, offcut: '', ...fields });

  test('an idea whose batch is begun is that batch', async () => {
    const idea = await createProject(app.db, { title: 'Kites' }, later(-10));
    const answer = await begin({ project: `${idea.id}` });
    expect(answer.headers.get('location')).toBe(`/projects/${idea.id}/plans/new`);
    expect((await only()).project).toMatchObject({ title: 'Kites', state: 'planned', quantity: 2 });
    expect((await begin({ project: '99' })).status).toBe(404);
  });

  test.each([
    ['kept, begun, taken', [() => keep({ came: 'not yet' }), begin, take]],
    ['begun twice, kept as made', [begin, begin, () => keep()]],
  ])('%s: once', async (_, doors) => {
    for (const door of doors) expect((await door()).status).toBe(303);
    expect((await only()).project.quantity).toBe(2);
  });

  test('what is made already and what has other measures stands by itself', async () => {
    await keep();
    await begin();
    await begin({ start: '3 1/8' });
    expect(await listProjects(app.db)).toHaveLength(3);
  });
});
