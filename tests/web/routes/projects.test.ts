/** The journal as a browser asks for it: the list and its filters, a new idea, one project's page and its words. */
import { beforeEach, describe, expect, test } from 'vitest';
import { add, inches, type Length, printExact, typedLength } from '#shared/length.ts';
import { makeEnvelope, recordOutcome } from '#stores/envelopes.ts';
import { changeStart, createProject, editProject, listProjects, readProject } from '#stores/projects.ts';
import { addSeries, listSeries } from '#stores/series.ts';
import { type App, openApp } from '#tests/support/app.ts';
import { type Cast, fillShelf, later, THANKS } from '#tests/support/cast.ts';
import { takeThree } from '#tests/support/projects.ts';
import { rowCounts } from '#tests/support/shelf.ts';
import { printDay } from '#views/common/when.tsx';

let app: App;
let cast: Cast;
beforeEach(async () => {
  app = await openApp();
  cast = await fillShelf(app.db);
});

const page = async (path: string, headers: Record<string, string> = {}): Promise<string> =>
  (await app.get(path, headers)).text();

describe('the journal', () => {
  test('says how to begin when nothing is in it', async () => {
    expect(await page('/projects')).toContain('Nothing is written down yet');
  });

  test('shows each project with its front, title, state, day and lesson', async () => {
    const { project } = await takeThree(app.db, cast);
    await editProject(app.db, project, { lesson: 'Fold the scrap first.' }, later(5));
    const shown = await page('/projects');
    expect(shown).toContain('Thank you, neighbours');
    expect(shown).toContain('paper cut');
    expect(shown).toContain(printDay(later(5)));
    expect(shown).toContain('Fold the scrap first.');
    expect(shown).toContain(`front-${project}-print-0`);
  });

  test('tells of each what to set and how it fits, and which one didn’t work', async () => {
    const { project, envelopes } = await takeThree(app.db, cast);
    await recordOutcome(app.db, envelopes[0]!, { felt: 'tight' }, later(3));
    const set = (start: Length) => `7½″, start ${printExact(start, { unit: 'in', step: 16 })}, `;
    const [start] = THANKS.recipe!.starts;
    const failed = await page('/projects');
    expect(failed).toContain(`${set(start)}tight<strong class="verdict">didn’t work`);
    expect(failed).toContain('<li class="failed">');
    const changed = add(start, inches(1 / 8));
    await changeStart(app.db, project, changed, later(4));
    expect(await page('/projects')).toContain(set(changed));
    await recordOutcome(app.db, envelopes[1]!, { felt: 'easy' }, later(5));
    const worked = await page('/projects');
    expect(worked).toContain(`${set(changed)}easy`);
    expect(worked).not.toContain('didn’t work');
  });

  test('filters by state, series and words', async () => {
    const spring = (await addSeries(app.db, { name: 'Spring', note: 'Pale paper only.' }))!;
    await takeThree(app.db, cast);
    await createProject(app.db, { title: 'Jam tags', series: spring.id, notes: 'Kraft paper.' }, later(2));
    for (const query of ['state=idea', `series=${spring.id}`, 'q=kraft', 'q=JAM&state=idea']) {
      const shown = await page(`/projects?${query}`);
      expect(shown).toContain('Jam tags');
      expect(shown).not.toContain('Thank you, neighbours');
    }
    expect(await page('/projects?q=nowhere')).toContain('Nothing like that is written down');
    expect(await page(`/projects?series=${spring.id}`)).toContain(`href="/series/${spring.id}"`);
  });

  test('takes a query that makes no sense for none', async () => {
    await createProject(app.db, { title: 'Jam tags' }, later(1));
    for (const query of [
      'state=burnt',
      'series=x',
      'more=-3',
      'state=idea&state=made',
      `q=${'x'.repeat(400)}`,
    ]) {
      const answer = await app.get(`/projects?${query}`);
      expect(answer.status).toBe(200);
    }
    expect(await page('/projects?state=burnt')).toContain('Jam tags');
  });

  test('hands the entries alone to a form that asks as she types', async () => {
    const shown = await page('/projects?q=jam', { 'HX-Request': 'true' });
    expect(shown).toMatch(/^<div id="entries">/);
    expect(shown).not.toContain('<html');
  });

  test('shows more where there is more', async () => {
    for (let one = 1; one <= 50; one++) await createProject(app.db, { title: `Idea no ${one}.` }, later(one));
    const first = await page('/projects');
    expect(first).toContain('Idea no 50.');
    expect(first).not.toContain('Idea no 2.');
    expect(first).toContain('href="/projects?more=48"');
    expect(await page('/projects?more=48')).toContain('Idea no 1.');
  });
});

describe('a new idea', () => {
  test('opens a project, once', async () => {
    const fields = { once: 'idea-form-01', title: '  Tags for jam 🫙 <b>  ' };
    const answer = await app.post('/projects', fields);
    expect(answer.status).toBe(303);
    expect(answer.headers.get('Location')).toBe('/projects/1');
    expect((await app.post('/projects', fields)).headers.get('Location')).toBe('/projects/1');
    expect(await listProjects(app.db)).toHaveLength(1);
    const shown = await page('/projects/1');
    expect(shown).toContain('<h1>Tags for jam 🫙 &lt;b&gt;</h1>');
    expect(shown).toContain('Choose its envelope');
    expect(shown).toContain('href="/envelopes?project=1"');
  });

  test.each([
    ['', 'Give it a title.'],
    ['   ', 'Give it a title.'],
    ['x'.repeat(121), 'Keep this under 120 characters.'],
  ])('“%s” is refused beside the field', async (title, message) => {
    const answer = await app.post('/projects', { title });
    expect(answer.status).toBe(422);
    expect(await answer.text()).toMatch(new RegExp(`id="title-note" class="problem"[^>]*>${message}`));
    expect(await listProjects(app.db)).toEqual([]);
  });

  test('sent with two titles is refused', async () => {
    const answer = await app.post('/projects', [
      ['title', 'One'],
      ['title', 'Two'],
    ]);
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain('This came twice');
  });
});

describe('a project’s page', () => {
  test('has its measures large, its paper with code, its envelopes and what comes next', async () => {
    const { project } = await takeThree(app.db, cast);
    const shown = await page(`/projects/${project}`);
    for (const measure of [
      'Square',
      'Start',
      'Twin, from the other corner',
      'Flap C, bottom',
      'Pocket',
      'Card',
    ]) {
      expect(shown).toContain(`<dt>${measure}</dt>`);
    }
    expect(shown).toContain('<dd>7½″');
    expect(shown).toContain('3 sheets of <a href="/designs/1">Fern</a>');
    expect(shown).toMatch(/<a href="\/offcuts\/\d+" class="code">/);
    expect(shown).toContain('Envelopes 1–3');
    expect(shown).toMatch(
      new RegExp(`class="button next-thing" href="/projects/${project}/make">Make the trial piece`),
    );
    expect(shown).toContain('The flat sheet');
  });

  test('tells alike envelopes in one line and what was really done', async () => {
    const { project, envelopes } = await takeThree(app.db, cast);
    const [first, ...others] = envelopes;
    await recordOutcome(
      app.db,
      first!,
      { felt: 'tight', wrong: 'Too <thick>', savedBy: 'Thinner glue' },
      later(3),
    );
    const asMade = { square: THANKS.recipe!.blank.width, start: THANKS.card!.height };
    for (const id of others) await recordOutcome(app.db, id, { felt: 'easy', asMade }, later(4));
    const shown = await page(`/projects/${project}`);
    expect(shown).toContain('Went wrong: Too &lt;thick&gt;');
    expect(shown).toContain('Saved by: Thinner glue');
    expect(shown).toMatch(/<strong>Envelopes 2–3<\/strong> made; the card goes in easily/);
    expect(shown).toMatch(/<dt>Start<\/dt><dd>3″<small>≈76\.2 mm|<dt>Start<\/dt><dd>3″<small>76\.2 mm/);
  });

  test('asks for the lesson when all is written, and then shows it first', async () => {
    const { project, envelopes } = await takeThree(app.db, cast);
    for (const id of envelopes) await recordOutcome(app.db, id, { felt: 'easy' }, later(3));
    expect(await page(`/projects/${project}`)).toContain('What did this one teach you?');
    const answer = await app.post(`/projects/${project}`, { _method: 'PUT', lesson: 'Score twice.' });
    expect(answer.headers.get('Location')).toBe(`/projects/${project}`);
    const shown = await page(`/projects/${project}`);
    expect(shown).toMatch(/<blockquote class="lesson"><p>Score twice\./);
    expect(shown).toContain('Nothing is left to do.');
  });

  test('asks to write down what is made', async () => {
    const { project, envelopes } = await takeThree(app.db, cast);
    for (const id of envelopes) await makeEnvelope(app.db, id, later(3));
    expect(await page(`/projects/${project}`)).toContain(
      `href="/projects/${project}/outcomes/new?envelope=1"`,
    );
  });

  test.each([
    '/projects/999',
    '/projects/0',
    '/projects/x',
    '/projects/1e3',
    '/projects/99999999999999999999',
  ])('%s is not here, and the page helps on', async (path) => {
    const answer = await app.get(path);
    expect(answer.status).toBe(404);
    expect(await answer.text()).toContain('href="/projects"');
  });
});

describe('paper taken for a project', () => {
  const taking = (project: number, rest: Record<string, string> = {}) =>
    app.post('/cuts', {
      width: '5 7/8',
      height: '3',
      copies: '2',
      design: `${cast.fern.id}`,
      project: `${project}`,
      ...rest,
    });

  test('gives an idea its envelope', async () => {
    const { id } = await createProject(app.db, { title: 'Jam tags', notes: 'Kraft.' }, later(1));
    const answer = await taking(id);
    expect(answer.headers.get('Location')).toBe(`/projects/${id}`);
    const project = (await readProject(app.db, id))!;
    expect(project).toMatchObject({ title: 'Jam tags', notes: 'Kraft.', quantity: 2, state: 'cut' });
    expect(project.recipe!.blank.width).toBe(inches(7.5));
    expect(await page(`/projects/${id}`)).toContain('Make the trial piece');
  });

  test('leaves a recipe that is followed, with the start in use', async () => {
    const { project } = await takeThree(app.db, cast);
    await changeStart(app.db, project, inches(3), later(2));
    const [start] = THANKS.recipe!.starts;
    await taking(project, {
      copies: '1',
      square: '7 1/2',
      start: typedLength(start, { unit: 'mm' }).concat(' mm'),
    });
    expect(await readProject(app.db, project)).toMatchObject({ start: inches(3), quantity: 3 });
  });

  test('on another square gives the project that square', async () => {
    const { project } = await takeThree(app.db, cast);
    await taking(project, { copies: '1', square: '8 1/4', start: '3' });
    const { recipe, quantity } = (await readProject(app.db, project))!;
    expect(recipe!.blank.width).toBe(inches(8.25));
    expect(quantity).toBe(3);
  });
});

describe('a project’s words', () => {
  test('are changed, what is not sent stays, and a new series is begun', async () => {
    const { id } = await createProject(app.db, { title: 'Jam tags', notes: 'Kraft.' }, later(1));
    await app.post(`/projects/${id}`, {
      _method: 'PUT',
      title: 'Jam labels',
      series: 'Kitchen',
      quantity: '4',
    });
    const changed = (await readProject(app.db, id))!;
    expect(changed).toMatchObject({ title: 'Jam labels', notes: 'Kraft.', quantity: 4 });
    expect(changed.series?.name).toBe('Kitchen');
    await app.post(`/projects/${id}`, { _method: 'PUT', series: 'Kitchen' });
    expect(await listSeries(app.db)).toHaveLength(1);
    await app.post(`/projects/${id}`, { _method: 'PUT', series: '' });
    expect((await readProject(app.db, id))!.series).toBeNull();
  });

  test.each([
    ['title', ''],
    ['quantity', '0'],
    ['quantity', 'many'],
    ['lesson', 'x'.repeat(601)],
    ['series', 'x'.repeat(81)],
    ['tags', 'x'.repeat(41)],
    ['tags', [...'abcdefghijklm'].join(',')],
  ])('%s “%s” is refused beside the field, the rest kept as typed', async (field, typed) => {
    const { id } = await createProject(app.db, { title: 'Jam tags' }, later(1));
    const before = await readProject(app.db, id);
    const answer = await app.post(`/projects/${id}`, { _method: 'PUT', notes: 'typed <so>', [field]: typed });
    const shown = await answer.text();
    expect(answer.status).toBe(422);
    expect(shown).toContain(`id="${field}-note" class="problem"`);
    expect(shown).toContain('typed &lt;so&gt;');
    expect(await readProject(app.db, id)).toEqual(before);
  });

  test('of no project are not here', async () => {
    const before = await rowCounts(app.db);
    const answer = await app.post('/projects/999', { _method: 'PUT', title: 'Ghost', series: 'Ghosts' });
    expect(answer.status).toBe(404);
    expect(await rowCounts(app.db)).toEqual(before);
    expect(await listSeries(app.db)).toEqual([]);
  });
});

test('a project is called finished, and taken up again', async () => {
  const { project } = await takeThree(app.db, cast);
  await app.post(`/projects/${project}/finish`, {});
  expect((await readProject(app.db, project))!.state).toBe('made');
  expect(await page(`/projects/${project}`)).toContain('Go on with it after all');
  await app.post(`/projects/${project}/finish`, { _method: 'DELETE' });
  expect((await readProject(app.db, project))!.state).toBe('cut');
  expect((await app.post('/projects/999/finish', {})).status).toBe(404);
});
