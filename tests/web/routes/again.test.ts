/** The whole way without script: an odd card, a tight trial, another start, what worked, and the same card once more. */
import { beforeEach, expect, test } from 'vitest';
import { add, inches, printExact, typedLength } from '#shared/length.ts';
import { listEnvelopes } from '#stores/envelopes.ts';
import { binOffcut, countSheets } from '#stores/movements.ts';
import { listOffcuts } from '#stores/offcuts.ts';
import { createProject, readProject } from '#stores/projects.ts';
import { type App, openApp } from '#tests/support/app.ts';
import { CARD, type Cast, fillShelf, later, THANKS } from '#tests/support/cast.ts';
import { takeThree } from '#tests/support/projects.ts';

const IN = { unit: 'in', step: 16 } as const;
const ODD = { width: '5 3/16', height: '3 9/16' };
const ODD_CARD = '/envelopes?card=5+3%2F16+x+3+9%2F16';

let app: App;
let cast: Cast;
beforeEach(async () => {
  app = await openApp();
  cast = await fillShelf(app.db);
});

const page = async (path: string): Promise<string> => (await app.get(path)).text();
const send = async (path: string, fields: Record<string, string>): Promise<string> => {
  const answer = await app.post(path, fields);
  expect(answer.status, await answer.clone().text()).toBe(303);
  return answer.headers.get('Location')!;
};

test('what worked for a card is said first when the card comes again, and made again', async () => {
  expect(await page(ODD_CARD)).not.toContain('You made this');
  await send('/envelopes', { ...ODD, copies: '2', fold: 'diagonal' });
  const planned = (await readProject(app.db, 1))!.recipe!;
  await send('/projects/1/trials', {});
  expect(await send('/projects/1/made', { envelope: '1', goes: 'tight' })).toBe('/projects/1/start');
  expect(await page('/projects')).toContain('didn’t work');
  const start = add(planned.starts[0], planned.notcher.graduation);
  await send('/projects/1/start', { _method: 'PUT', start: typedLength(start, IN) });
  const part = { name: 'Front', width: '5', height: '3 1/4', copies: '2', paper: `design-${cast.fern.id}` };
  const parts = Object.entries(part).map(([name, value]) => [`parts.0.${name}`, value]);
  await send('/projects/1/plans', { do: 'plan', blanks: '2', ...Object.fromEntries(parts) });
  expect(await page('/projects/1')).toMatch(/Front<\/th><td>5 × 3¼″<\/td><td>2<\/td><td><strong>2<\/strong>/);
  await send('/plans/1/cuts', { place: 'tray 1' });
  expect(await page('/projects/1')).toMatch(/Front<\/th><td>5 × 3¼″<\/td><td>2<\/td><td>none/);
  for (const { number } of (await listEnvelopes(app.db, 1)).slice(1))
    await send('/projects/1/outcomes', { envelope: `${number}`, felt: 'easy' });

  const again = await page(ODD_CARD);
  expect(again).toContain(`, start ${printExact(start, IN)}, easy</strong>, in March 2026`);
  expect(again).toContain('action="/projects/1/again"');
  expect(again.indexOf('You made this')).toBeLessThan(again.indexOf('class="answer"'));

  await countSheets(app.db, cast.fern.id, { sheets: 0, at: later(30), note: '' });
  expect(await send('/projects/1/again', {})).toBe('/projects/2/plans/new');
  const project = (await readProject(app.db, 2))!;
  expect(project.recipe!.starts[0]).toBe(start);
  expect(project).toMatchObject({ quantity: 2, title: (await readProject(app.db, 1))!.title });
  expect(await page('/projects/2')).toMatch(/Made again from <a href="\/projects\/1">/);
  expect(await page('/projects/1')).toMatch(/Made again as <a href="\/projects\/2">/);
  const order = await page('/projects/2/plans/new');
  expect(order).toMatch(/name="parts\.0\.width"[^>]*value="5"/);
  expect(order).toMatch(/name="blanks"[^>]*value="2"/);
});

test('a card a thirty-second off, lying the other way, was made before; one further off or thicker was not', async () => {
  const { envelopes } = await takeThree(app.db, cast);
  const asked = (width: string, height: string, bulk = '1/32') =>
    page(`/envelopes?${new URLSearchParams({ width, height, bulk })}`);
  expect(await asked('5 7/8', '3')).not.toContain('made this');
  await app.post('/projects/1/outcomes', { envelope: '1', felt: 'easy' });
  expect(envelopes).toHaveLength(3);
  expect(await asked('3 1/32', '5 27/32', '1/16')).toContain('You made this');
  expect(await asked('3 3/64', '5 7/8')).not.toContain('You made this');
  expect(await asked('5 7/8', '3', '5/64')).not.toContain('You made this');
  expect(await (await app.get('/made-before?card=5+7%2F8+x+3', { 'HX-Request': 'true' })).text()).toContain(
    'You made this',
  );
  expect((await app.get('/made-before?card=5+7%2F8+x+3')).headers.get('Location')).toContain('/envelopes?');
});

test('an idea with a card made before says so, and takes over what worked without a second project', async () => {
  await takeThree(app.db, cast);
  await app.post('/projects/1/outcomes', { envelope: '1', felt: 'easy', start: '3 1/4' });
  const { id } = await createProject(app.db, { title: 'For Ada', card: CARD, quantity: 5 }, later(9));
  expect(await page(`/projects/${id}`)).toContain(`name="into" value="${id}"`);
  expect(await send('/projects/1/again', { into: `${id}` })).toBe(`/projects/${id}/plans/new`);
  const taken = (await readProject(app.db, id))!;
  expect(taken).toMatchObject({ title: 'For Ada', quantity: 5 });
  expect(taken.recipe!.starts[0]).toBe(inches(3.25));
  expect(await page(`/projects/${id}`)).not.toContain('You made this');
});

test('paper that is used up is said, and its kind asked for instead', async () => {
  await takeThree(app.db, cast, THANKS);
  await countSheets(app.db, cast.fern.id, { sheets: 0, at: later(30), note: '' });
  for (const { id, count } of await listOffcuts(app.db, { designs: [cast.fern.id] }))
    await binOffcut(app.db, id, { count, at: later(31), note: '' });
  expect(await send('/projects/1/again', {})).toBe('/projects/2/plans/new');
  const order = await page('/projects/2/plans/new');
  expect(order).toContain('Fern is used up: any patterned paper instead.');
});

test('nothing is made again from an idea', async () => {
  await createProject(app.db, { title: 'Jam tags' }, later(1));
  expect((await app.post('/projects/1/again', {})).status).toBe(404);
});
