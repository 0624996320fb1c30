/** Lessons on the pages where they matter: shown at their step, answered with not here and always, put right. */
import { beforeEach, describe, expect, test } from 'vitest';
import { seedDemo } from '#seed/demo.ts';
import { recordOutcome } from '#stores/envelopes.ts';
import { lessonsOf } from '#stores/lessons.ts';
import { createProject, editProject, listProjects } from '#stores/projects.ts';
import { type App, openApp } from '#tests/support/app.ts';
import { type Cast, fillShelf, later, RECIPE, THANKS } from '#tests/support/cast.ts';
import { takeThree } from '#tests/support/projects.ts';

let app: App;
let cast: Cast;
let project: number;
let envelopes: readonly number[];
const page = async (path: string): Promise<string> => (await app.get(path)).text();

beforeEach(async () => {
  app = await openApp();
  cast = await fillShelf(app.db);
  ({ project, envelopes } = await takeThree(app.db, cast, { ...THANKS, notcher: 1 }));
});

const lesson = async (of = project) => (await lessonsOf(app.db, of))[0]!;
const outcome = (fields: Record<string, string>) =>
  app.post(`/projects/${project}/outcomes`, { envelope: '1', ...fields });

describe('what is told on a form', () => {
  test('becomes a lesson whose step is guessed, or chosen there', async () => {
    await outcome({ wrong: 'The glue crept out.', savedBy: '', step: '' });
    expect(await lesson()).toMatchObject({ step: 'glue', chosen: false });
    expect(await page(`/projects/${project}/outcomes/new?envelope=1`)).toContain(
      'what its words say: gluing',
    );
    await outcome({ wrong: 'The glue crept out.', step: 'fold' });
    expect(await lesson()).toMatchObject({ step: 'fold', chosen: true });
    expect(await page(`/projects/${project}/outcomes/new?envelope=1`)).toMatch(/value="fold" selected/);
  });

  test('of a spoiled blank too', async () => {
    await app.post(`/projects/${project}/spoiled`, { envelope: '2', wrong: 'Slipped.', step: 'notch' });
    expect(await lesson()).toMatchObject({ words: 'Slipped.', step: 'notch', chosen: true });
  });

  test('with a step that there is not is refused, and nothing is written', async () => {
    const answer = await outcome({ wrong: 'The glue crept out.', step: 'dance' });
    expect(answer.status).toBe(422);
    expect(await lessonsOf(app.db, project)).toEqual([]);
  });
});

describe('a lesson comes up', () => {
  const told = async (wrong: string, savedBy = ''): Promise<number> => {
    await recordOutcome(app.db, envelopes[0]!, { wrong, savedBy }, later(2));
    return (await lesson()).id;
  };

  test('at the making step it belongs to, and at no other', async () => {
    const id = await told('Scored against the grain, it cracked.', 'Twice, lightly.');
    const texts = [];
    for (let step = 1; step <= 12; step += 1)
      texts.push(await page(`/projects/${project}/make?envelope=2&step=${step}`));
    const showing = texts.filter((text) => text.includes('it cracked. Twice, lightly.'));
    expect(showing).toHaveLength(1);
    expect(showing[0]).toContain(`href="/projects/${project}#lesson-${id}"`);
    expect(showing[0]).toMatch(/<h1 class="instruction">Score 1/);
  });

  test('on the envelopes page for its paper, and for its size of card', async () => {
    await told('This print runs off the front.');
    const card = '/envelopes?card=5+7%2F8+x+3';
    expect(await page(`${card}&design=${cast.fern.id}`)).toContain('runs off the front');
    expect(await page(`${card}&design=${cast.white.id}`)).not.toContain('runs off the front');
    await told('The card bowed and was tight.');
    expect(await page(`${card}&design=${cast.white.id}`)).toContain('The card bowed');
    expect(await page('/envelopes?card=7+x+5')).not.toContain('The card bowed');
  });

  test('where a batch is asked for, and on its plan until that is cut', async () => {
    await told('Cut on the wrong side of the line.');
    expect(await page(`/projects/${project}/plans/new`)).toContain('wrong side of the line');
    const other = (await createProject(app.db, { ...THANKS, title: 'Next door' }, later(3))).id;
    await app.post(`/projects/${other}/plans`, { do: 'plan', blanks: '1', paper: `design-${cast.fern.id}` });
    expect(await page('/plans/1')).toContain('wrong side of the line');
  });

  test('where its part is made', async () => {
    await told('The liner was a hair too tall.');
    const card = `width=5+7%2F8&height=3&fold=${RECIPE.fold}`;
    expect(await page(`/parts/liner?${card}`)).toContain('a hair too tall');
    expect(await page(`/parts/base?${card}`)).not.toContain('a hair too tall');
    expect(await page('/envelopes?card=5+7%2F8+x+3')).not.toContain('a hair too tall');
  });
});

describe('she says', () => {
  let id: number;
  let atGlue: string;

  beforeEach(async () => {
    await recordOutcome(app.db, envelopes[0]!, { wrong: 'The glue crept out.' }, later(2));
    ({ id } = await lesson());
    for (let step = 12; !atGlue || !(await page(atGlue)).includes('crept out'); step += 1)
      atGlue = `/projects/${project}/make?envelope=2&step=${step}`;
  });

  test('not here, and it is gone for this project until she lets it back', async () => {
    const answer = await app.post(`/lessons/${id}/not-here`, { project: `${project}`, back: atGlue });
    expect(answer.headers.get('Location')).toBe(atGlue);
    expect(await page(atGlue)).not.toContain('crept out');
    expect(await page(`/projects/${project}`)).toContain('but not in 1 place');
    const back = await app.post(`/lessons/${id}/not-here`, { _method: 'DELETE' });
    expect(back.headers.get('Location')).toBe(`/projects/${project}#lesson-${id}`);
    expect(await page(atGlue)).toContain('crept out');
  });

  test('always, and not always', async () => {
    await app.post(`/lessons/${id}/always`, { back: atGlue });
    expect(await lesson()).toMatchObject({ always: true });
    await app.post(`/lessons/${id}/always`, { _method: 'DELETE' });
    expect(await lesson()).toMatchObject({ always: false });
  });

  test('at another step, and leaves it to the words again', async () => {
    await app.post(`/lessons/${id}`, { _method: 'PUT', step: 'score' });
    expect(await page(atGlue)).not.toContain('crept out');
    expect(await page(`/projects/${project}`)).toContain('Comes up at scoring');
    await app.post(`/lessons/${id}`, { _method: 'PUT', step: '' });
    expect(await lesson()).toMatchObject({ step: 'glue', chosen: false });
  });

  test.each([
    ['/lessons/99/always', {}],
    ['/lessons/1/not-here', {}],
    ['/lessons/1/not-here', { project: '99' }],
    ['/lessons/1', { _method: 'PUT', step: 'dance' }],
  ])('nothing that a form of ours would not: %s %j', async (path, fields) => {
    expect((await app.post(path, fields as Record<string, string>)).status).toBe(404);
    expect(await lesson()).toMatchObject({ step: 'glue', chosen: false, always: false, hidden: 0 });
  });
});

test('in the demo, what the first frost taught comes up where the second is glued', async () => {
  const demo = await openApp();
  await seedDemo(demo.db, new Date(later(0)));
  const [second] = await listProjects(demo.db, { text: 'Second frost' });
  const texts = [];
  for (let step = 1; step <= 24; step += 1)
    texts.push(await (await demo.get(`/projects/${second!.id}/make?envelope=2&step=${step}`)).text());
  const glued = texts.filter((text) => /<h1 class="instruction">Glue/.test(text));
  expect(glued[0]).toContain('Vellum takes dry tape only');
  expect(texts.filter((text) => text.includes('Vellum takes dry tape only'))).toEqual([glued[0]]);
});

test('a project’s own lesson without a step says so', async () => {
  await editProject(app.db, project, { lesson: 'Never on a Sunday.' }, later(3));
  expect(await page(`/projects/${project}`)).toContain('Comes up nowhere yet');
});
