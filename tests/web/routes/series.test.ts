/** Series: the list, one at a glance with its projects in order, and a form that writes all or nothing. */
import { beforeEach, describe, expect, test } from 'vitest';
import { makeEnvelope } from '#stores/envelopes.ts';
import { createProject, readProject } from '#stores/projects.ts';
import { addSeries, listSeries } from '#stores/series.ts';
import { type App, openApp } from '#tests/support/app.ts';
import { fillShelf, later, THANKS } from '#tests/support/cast.ts';
import { takeThree } from '#tests/support/projects.ts';
import { watchQueries } from '#tests/support/queries.ts';

let app: App;
const page = async (path: string): Promise<string> => (await app.get(path)).text();

beforeEach(async () => {
  app = await openApp();
});

describe('a series at a glance', () => {
  test('shows its projects as they were begun: card, setting, what was made of which paper, notes', async () => {
    const cast = await fillShelf(app.db);
    const { id: series } = (await addSeries(app.db, { name: 'Neighbours', note: 'Pale paper only.' }))!;
    const { project, envelopes } = await takeThree(app.db, cast, { ...THANKS, series, notes: 'Left door.' });
    await makeEnvelope(app.db, envelopes[0]!, later(2));
    await createProject(app.db, { title: 'Jam tags', series }, later(3));
    await createProject(app.db, { title: 'Elsewhere' }, later(4));
    const shown = await page(`/series/${series}`);
    for (const words of [
      'Pale paper only.',
      '5⅞ × 3″',
      '1 of 3 made',
      'From Fern',
      'Left door.',
      '2 projects',
    ])
      expect(shown).toContain(words);
    const { recipe } = (await readProject(app.db, project))!;
    expect(recipe!.fold).toBe('diagonal');
    expect(shown).toMatch(/class="setting">[\d⅛¼⅜½⅝¾⅞]+″, start [\d⅛¼⅜½⅝¾⅞]+″/);
    expect(shown.indexOf(THANKS.title)).toBeLessThan(shown.indexOf('Jam tags'));
    expect(shown).not.toContain('Elsewhere');
    expect(await page('/series')).toContain('2 projects, 1 envelope made');
  });

  test('of many projects comes in pages, in few queries', async () => {
    const { id: series } = (await addSeries(app.db, { name: 'Neighbours', note: '' }))!;
    for (let one = 1; one <= 30; one += 1)
      await createProject(app.db, { title: `Door ${one}.`, series }, later(one));
    const queries = watchQueries(app.db);
    const first = await page(`/series/${series}`);
    expect(queries.take().length).toBeLessThanOrEqual(15);
    expect(first).toContain('Door 24.');
    expect(first).not.toContain('Door 25.');
    expect(first).toContain(`/series/${series}?from=24`);
    expect(await page(`/series/${series}?from=24`)).toContain('Door 30.');
    expect((await app.get(`/series/${series}?from=lots`)).status).toBe(200);
  });

  test('is renamed and noted', async () => {
    const { id } = (await addSeries(app.db, { name: 'Spring', note: '' }))!;
    const answer = await app.post(`/series/${id}`, { _method: 'PUT', name: 'Early spring', note: 'Pale.' });
    expect(answer.headers.get('Location')).toBe(`/series/${id}`);
    expect(await listSeries(app.db)).toEqual([{ id, name: 'Early spring', note: 'Pale.' }]);
  });

  test.each([
    ['Autumn', 'Another series has this name already.'],
    ['', 'Give it a name.'],
  ])('called “%s” is refused, and nothing is written', async (name, message) => {
    const { id } = (await addSeries(app.db, { name: 'Spring', note: 'Pale.' }))!;
    await addSeries(app.db, { name: 'Autumn', note: '' });
    const answer = await app.post(`/series/${id}`, { _method: 'PUT', name, note: 'Dark.' });
    expect(answer.status).toBe(422);
    const shown = await answer.text();
    expect(shown).toContain(message);
    expect(shown).toContain('Dark.');
    expect(await listSeries(app.db)).toContainEqual({ id, name: 'Spring', note: 'Pale.' });
  });

  test('that never was is not here', async () => {
    expect((await app.get('/series/9')).status).toBe(404);
    expect((await app.post('/series/9', { _method: 'PUT', name: 'Ghost' })).status).toBe(404);
  });
});
