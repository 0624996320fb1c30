/** Tags: typed among a project’s words, shown as links, asked for in the journal, renamed and made one of two. */
import { beforeEach, describe, expect, test } from 'vitest';
import { createProject } from '#stores/projects.ts';
import { listTags, tagProject, tagsOf } from '#stores/tags.ts';
import { type App, openApp } from '#tests/support/app.ts';
import { later } from '#tests/support/cast.ts';

let app: App;
let kites: number;
let jam: number;
const page = async (path: string): Promise<string> => (await app.get(path)).text();
const namesOf = async (project: number): Promise<string[]> =>
  ((await tagsOf(app.db, [project])).get(project) ?? []).map(({ name }) => name);

beforeEach(async () => {
  app = await openApp();
  kites = (await createProject(app.db, { title: 'Kites' }, later(1))).id;
  jam = (await createProject(app.db, { title: 'Jam labels' }, later(2))).id;
});

describe('the tags of a project', () => {
  test('are typed with commas, each counts once, and capitals make no other tag', async () => {
    await app.post(`/projects/${jam}`, { _method: 'PUT', tags: 'Birthday' });
    await app.post(`/projects/${kites}`, {
      _method: 'PUT',
      tags: ' birthday,  dry   embossing ,, birthday ',
    });
    expect(await namesOf(kites)).toEqual(['Birthday', 'dry embossing']);
    expect(await page(`/projects/${kites}`)).toContain(
      '<a href="/projects?tag=dry+embossing">dry embossing</a>',
    );
    expect(await page('/projects')).toContain('<a href="/projects?tag=dry+embossing">dry embossing</a>');
  });

  test('stay as they are where none are sent, and go where the field is empty', async () => {
    await tagProject(app.db, kites, ['birthday']);
    await app.post(`/projects/${kites}`, { _method: 'PUT', notes: 'Thin paper.' });
    expect(await namesOf(kites)).toEqual(['birthday']);
    await app.post(`/projects/${kites}`, { _method: 'PUT', tags: '' });
    expect(await namesOf(kites)).toEqual([]);
    expect(await listTags(app.db, { limit: 9 })).toEqual([]);
  });

  test('are offered from those used, after those it has', async () => {
    await tagProject(app.db, jam, ['vellum']);
    await tagProject(app.db, kites, ['birthday']);
    expect(await page(`/projects/${kites}`)).toContain('<option value="birthday, vellum">');
  });
});

test('the journal shows what bears a tag, page by page', async () => {
  await tagProject(app.db, kites, ['Birthday']);
  const shown = await page('/projects?tag=birthday');
  expect(shown).toContain('Kites');
  expect(shown).not.toContain('Jam labels');
  expect(await page('/projects?tag=nothing')).toContain('Nothing like that is written down');
  for (let one = 0; one < 50; one += 1)
    await tagProject(app.db, (await createProject(app.db, { title: `Card ${one}` }, later(one))).id, [
      'many',
    ]);
  expect(await page('/projects?tag=many')).toContain('tag=many&amp;more=48');
});

describe('a tag', () => {
  beforeEach(async () => {
    await tagProject(app.db, kites, ['birthday', 'brithday']);
    await tagProject(app.db, jam, ['brithday']);
  });

  const idOf = async (name: string): Promise<number> =>
    (await listTags(app.db, { limit: 9 })).find((one) => one.name === name)!.id;

  test('is renamed', async () => {
    const answer = await app.post(`/tags/${await idOf('brithday')}`, { _method: 'PUT', name: 'party' });
    expect(answer.headers.get('Location')).toBe('/projects?tag=party');
    expect(await namesOf(jam)).toEqual(['party']);
  });

  test('becomes one with another of that name', async () => {
    await app.post(`/tags/${await idOf('brithday')}`, { _method: 'PUT', name: 'Birthday' });
    expect(await namesOf(kites)).toEqual(['birthday']);
    expect(await namesOf(jam)).toEqual(['birthday']);
    expect(await page('/tags')).toContain('2 projects');
  });

  test.each([
    ['', 'Give it a name.'],
    ['a, b', 'A tag has no comma.'],
    ['x'.repeat(41), 'Keep this under 40 characters.'],
  ])('can’t be called “%s”', async (name, message) => {
    const id = await idOf('brithday');
    const answer = await app.post(`/tags/${id}`, { _method: 'PUT', name });
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain(message);
    expect(await namesOf(jam)).toEqual(['brithday']);
  });

  test('that never was is not here', async () => {
    expect((await app.get('/tags/99')).status).toBe(404);
    expect((await app.post('/tags/99', { _method: 'PUT', name: 'Ghost' })).status).toBe(404);
  });
});
