/** Making as a browser asks for it: the trial, every step, the card tried, another start, a spoiled blank. */
import { beforeEach, describe, expect, test } from 'vitest';
import { finishFlaps } from '#core/envelope/finish.ts';
import { foldOf } from '#core/envelope/folds.ts';
import { solveEnvelope, tryMeasures } from '#core/envelope/recipes.ts';
import { add, inches, printLength } from '#shared/length.ts';
import { printPocketSide } from '#shared/pocket.ts';
import { addTrial, listEnvelopes, makeEnvelope, recordOutcome } from '#stores/envelopes.ts';
import { createProject, readProject } from '#stores/projects.ts';
import { type App, openApp } from '#tests/support/app.ts';
import { CARD, type Cast, fillShelf, later, RECIPE, THANKS } from '#tests/support/cast.ts';
import { takeThree } from '#tests/support/projects.ts';
import { rowCounts, shelf } from '#tests/support/shelf.ts';

const UNITS = { unit: 'in', step: 16 } as const;
const STEPS = foldOf(RECIPE).steps(RECIPE, 'clockwise', undefined);

let app: App;
let cast: Cast;
let project: number;
let envelopes: readonly number[];
let home: string;
beforeEach(async () => {
  app = await openApp();
  cast = await fillShelf(app.db);
  ({ project, envelopes } = await takeThree(app.db, cast));
  home = `/projects/${project}`;
});

const page = async (path: string): Promise<string> => (await app.get(path)).text();
const leadsTo = (answer: Response): string | null => answer.headers.get('Location');
const envelopeNo = async (number: number) =>
  (await listEnvelopes(app.db, project)).find((one) => one.number === number)!;

describe('the trial', () => {
  test('is offered first, from scrap or from the batch', async () => {
    const shown = await page(`${home}/make`);
    expect(shown).toContain('First a trial piece.');
    expect(shown).toContain('a square of 7½″');
    expect(shown).toContain(`action="${home}/trials"`);
    expect(shown).toContain(`href="${home}/make?envelope=1&amp;step=1"`);
  });

  test('from scrap opens an envelope that costs no paper, once', async () => {
    const before = await shelf(app.db);
    const fields = { once: 'trial-form-01' };
    expect(leadsTo(await app.post(`${home}/trials`, fields))).toBe(`${home}/make?envelope=4&step=1`);
    expect(leadsTo(await app.post(`${home}/trials`, fields))).toBe(`${home}/make?envelope=4&step=1`);
    expect(await envelopeNo(4)).toMatchObject({ trial: true, cut: null, state: 'blank' });
    expect(await listEnvelopes(app.db, project)).toHaveLength(4);
    expect(await shelf(app.db)).toEqual(before);
    expect(leadsTo(await app.get(`${home}/make`))).toBe(`${home}/make?envelope=4&step=1`);
  });

  test('is past once one is made: then the next blank comes', async () => {
    await makeEnvelope(app.db, envelopes[0]!, later(3));
    expect(leadsTo(await app.get(`${home}/make`))).toBe(`${home}/make?envelope=2&step=1`);
    for (const id of envelopes) await makeEnvelope(app.db, id, later(4));
    expect(leadsTo(await app.get(`${home}/make`))).toBe(home);
  });

  test('needs a recipe', async () => {
    const idea = await createProject(app.db, { title: 'Some day' }, later(2));
    expect(leadsTo(await app.get(`/projects/${idea.id}/make`))).toBe(`/projects/${idea.id}`);
    expect((await app.post(`/projects/${idea.id}/trials`, {})).status).toBe(404);
    expect((await app.get('/projects/999/make')).status).toBe(404);
  });
});

describe('the steps', () => {
  test('show one instruction each, with its picture, and links back and on', async () => {
    const withLook = STEPS.length + 1;
    for (let step = 1; step <= withLook; step++) {
      const shown = await page(`${home}/make?envelope=1&step=${step}`);
      expect(shown).toContain(`Step ${step} of ${withLook}`);
      expect(shown.match(/class="instruction"/g)).toHaveLength(1);
      expect(shown).toContain('id="making-sheet-title"');
      expect(shown).toContain(`href="${home}/make?envelope=1&amp;step=${step + 1}" rel="next"`);
      expect(shown.includes('rel="prev"')).toBe(step > 1);
    }
  });

  test('lay the print down as its look says, and measure once only', async () => {
    const texts = await Promise.all(
      Array.from({ length: STEPS.length + 1 }, (_, at) => page(`${home}/make?envelope=1&step=${at + 1}`)),
    );
    expect(texts[1]).toContain('Print down.');
    const measured = texts.filter((text) => text.includes('Set the edge to'));
    expect(measured).toHaveLength(1);
    expect(measured[0]).toContain(`Set the edge to ${printLength(RECIPE.starts[0], UNITS)}.`);
    expect(texts.filter((text) => text.includes('Turn a quarter, clockwise'))).toHaveLength(3);
  });

  test('tell what is to be set or cut as it is, and what a cut leaves open, in steps, template and journal', async () => {
    const card = { width: inches(5), height: inches(3.5), bulk: inches(1 / 32) };
    const notcher = { ...RECIPE.notcher, graduation: inches(1 / 16) };
    const tried = tryMeasures({ card, notcher, square: inches(7.1875), start: inches(3.0625) });
    const recipe = finishFlaps(tried, { D: { shape: 'straight', depth: inches(0.65625) } });
    await app.db.updateTable('settings').set({ unit: 'in', step: 8 }).execute();
    const { id: odd } = await createProject(app.db, { ...THANKS, card, recipe }, later(2));
    const { number } = (await addTrial(app.db, odd, later(3)))!;
    const steps = foldOf(recipe).steps(recipe, 'clockwise').length;
    const texts = await Promise.all(
      Array.from({ length: steps + 1 }, (_, at) =>
        page(`/projects/${odd}/make?envelope=${number}&step=${at + 1}`),
      ),
    );
    for (const exact of [
      'Cut a square, 7³⁄₁₆″.',
      'Set the edge to 3¹⁄₁₆″.',
      'cut straight, ²¹⁄₃₂″ from its score',
    ])
      expect(
        texts.filter((text) => text.includes(`<h1 class="instruction">`) && text.includes(exact)),
      ).toHaveLength(1);
    const warned =
      /The flaps leave the back open in the middle along the top\. \d\.\d\d sq in of it lie bare\./;
    expect(texts.filter((text) => warned.test(text)).length).toBeGreaterThan(0);
    expect(texts[0]).not.toMatch(warned);
    expect(await page(`/templates/projects/${odd}/template.svg`)).toMatch(warned);
    const journal = await page(`/projects/${odd}`);
    for (const exact of ['7³⁄₁₆″', '3¹⁄₁₆″', '²¹⁄₃₂″']) expect(journal).toContain(`<dd>${exact}`);
    expect(journal).toMatch(warned);
  });

  test('warn where a blade or adhesive comes', async () => {
    expect(await page(`${home}/make?envelope=1&step=1`)).toContain('fingers well behind it');
    const glue = STEPS.findIndex((step) => step.kind === 'glue') + 2;
    expect(await page(`${home}/make?envelope=1&step=${glue}`)).toContain('Hot glue burns');
  });

  test('end by trying the card, whatever number is asked for beyond', async () => {
    const last = await page(`${home}/make?envelope=1&step=99`);
    expect(last).toContain('Put the card in. Does it go?');
    expect(await page(`${home}/make?envelope=1&step=${STEPS.length + 2}`)).toContain('Does it go?');
    expect(await page(`${home}/make?envelope=1&step=soon`)).toContain('Step 1 of');
  });

  test('of an envelope that is not there are not here', async () => {
    for (const number of ['9', '0', 'x', '1e0']) {
      expect((await app.get(`${home}/make?envelope=${number}&step=1`)).status).toBe(404);
    }
  });

  test('come as a fragment to a link that swaps', async () => {
    const answer = await app.get(`${home}/make?envelope=1&step=2`, { 'HX-Request': 'true' });
    expect(await answer.text()).toMatch(
      /^<title>Step 2 of 20 · Thank you, neighbours · Creasebook<\/title><article id="making"/,
    );
  });
});

describe('a folded envelope', () => {
  test('that takes its card is made, and leads back to what comes next', async () => {
    const fields = { once: 'made-form-001', envelope: '1', goes: 'yes' };
    expect(leadsTo(await app.post(`${home}/made`, fields))).toBe(home);
    expect(await envelopeNo(1)).toMatchObject({ state: 'made', outcome: null });
    expect(await page(home)).toContain('Fold envelope 2');
  });

  test.each([
    ['tight', 'tight'],
    ['no', "won't go"],
  ])('of which she says “%s” is noted so, and another start is offered', async (goes, felt) => {
    expect(leadsTo(await app.post(`${home}/made`, { envelope: '1', goes }))).toBe(`${home}/start`);
    expect((await envelopeNo(1)).outcome).toMatchObject({ felt });
    expect(await page(`${home}/start`)).toContain('Which way is it tight?');
  });

  test('with the rest of the batch is ticked off in one go, once one was tried', async () => {
    expect(await page(home)).not.toContain('folded now');
    await makeEnvelope(app.db, envelopes[0]!, later(3));
    await addTrial(app.db, project, later(3));
    expect(await page(home)).toContain('All of these are folded now');
    const fields = { once: 'made-form-002', envelope: '2', rest: 'on' };
    expect(leadsTo(await app.post(`${home}/made`, fields))).toBe(home);
    const states = (await listEnvelopes(app.db, project)).map(({ state }) => state);
    expect(states).toEqual(['made', 'made', 'made', 'blank']);
  });

  test('ticked off by mistake is a blank again, alone or with those beside it', async () => {
    for (const id of envelopes) await makeEnvelope(app.db, id, later(3));
    const states = async () => (await listEnvelopes(app.db, project)).map(({ state }) => state);
    expect(await page(home)).toContain('None of these is');
    const one = { _method: 'DELETE', envelope: '3' };
    expect(leadsTo(await app.post(`${home}/made`, one))).toBe(home);
    expect(await states()).toEqual(['made', 'made', 'blank']);
    expect((await readProject(app.db, project))!.state).toBe('cut');
    await app.post(`${home}/made`, { _method: 'DELETE', envelope: '2', rest: 'on' });
    expect(await states()).toEqual(['blank', 'blank', 'blank']);
    expect(await page(home)).toContain('Make the trial piece');
  });

  test('stays made once it is written down how it came out', async () => {
    await recordOutcome(app.db, envelopes[0]!, { felt: 'snug' }, later(3));
    expect(await page(home)).not.toContain('It isn’t folded yet');
    const answer = await app.post(`${home}/made`, { _method: 'DELETE', envelope: '1', rest: 'on' });
    expect(leadsTo(answer)).toBe(home);
    expect(await envelopeNo(1)).toMatchObject({ state: 'made', outcome: { felt: 'snug' } });
  });

  test('that is not of this project is not here', async () => {
    const before = await rowCounts(app.db);
    for (const fields of [
      { envelope: '7', goes: 'yes' },
      { goes: 'yes' },
      { envelope: '1', goes: 'perhaps' },
    ]) {
      expect((await app.post(`${home}/made`, fields as Record<string, string>)).status).toBe(404);
    }
    expect(await rowCounts(app.db)).toEqual(before);
  });
});

describe('another start', () => {
  const [start] = RECIPE.starts;
  const more = add(start, RECIPE.notcher.graduation);

  test('is offered one graduation more and one less, with the pockets they give', async () => {
    const shown = await page(`${home}/start`);
    expect(shown).toContain(`Use ${printLength(more, UNITS)} for the rest`);
    expect(shown).toContain(`Along its height, ${printPocketSide(RECIPE.pocket.height, UNITS)}`);
    expect(shown).toContain(`Along its width, ${printPocketSide(RECIPE.pocket.width, UNITS)}`);
    expect(shown.match(/for the rest<\/button>/g)).toHaveLength(2);
  });

  test('is used for what is still to be made, and seen on the page', async () => {
    const answer = await app.post(`${home}/start`, { _method: 'PUT', start: '3' });
    expect(leadsTo(answer)).toBe(home);
    expect((await readProject(app.db, project))!.start).toBe(inches(3));
    const shown = await page(home);
    expect(shown).toContain(`changed after the trial, from ${printLength(start, UNITS)}`);
    expect(await page(`${home}/make?envelope=2&step=3`)).toContain('Set the edge to 3″.');
  });

  test('that is the recipe’s again is none', async () => {
    await app.post(`${home}/start`, { _method: 'PUT', start: '3' });
    await app.post(`${home}/start`, { _method: 'PUT', start: printLength(start, UNITS) });
    expect((await readProject(app.db, project))!.start).toBeNull();
  });

  test.each([
    ['', 'Type a length'],
    ['soon', 'isn’t a length'],
    ['0', 'more than zero'],
    ['-2', 'can’t be negative'],
    ['1/8', 'the start has to lie between'],
    ['8', 'the start has to lie between'],
    ['99 in', 'the start has to lie between'],
  ])('of “%s” is refused beside the field', async (typed, message) => {
    const answer = await app.post(`${home}/start`, { _method: 'PUT', start: typed });
    const shown = await answer.text();
    expect(answer.status).toBe(422);
    expect(shown).toMatch(new RegExp(`id="start-note" class="problem"[^>]*>[^<]*${message}`));
    expect(shown).toContain(`value="${typed}"`);
    expect((await readProject(app.db, project))!.start).toBeNull();
  });

  test('of no project is not here', async () => {
    expect((await app.post('/projects/999/start', { _method: 'PUT', start: '3' })).status).toBe(404);
  });
});

describe('a spoiled blank', () => {
  test('is written off, and the project asks for another', async () => {
    await makeEnvelope(app.db, envelopes[0]!, later(3));
    await makeEnvelope(app.db, envelopes[1]!, later(3));
    const fields = { once: 'spoil-form-01', envelope: '3', wrong: 'Scored through', savedBy: 'A tag' };
    expect(leadsTo(await app.post(`${home}/spoiled`, fields))).toBe(home);
    expect(leadsTo(await app.post(`${home}/spoiled`, fields))).toBe(home);
    expect(await envelopeNo(3)).toMatchObject({ state: 'spoiled', outcome: { wrong: 'Scored through' } });
    const shown = await page(home);
    expect(shown).toContain('Take one blank from the shelf');
    expect(shown).toContain(`href="/envelopes?project=${project}"`);
    expect(shown).toContain('2 of 3 made, 1 spoiled');
  });

  test('needs a word on what went wrong', async () => {
    const answer = await app.post(`${home}/spoiled`, { envelope: '2', wrong: ' ', savedBy: 'kept <this>' });
    const shown = await answer.text();
    expect(answer.status).toBe(422);
    expect(shown).toContain('Give a word on what went wrong.');
    expect(shown).toContain('kept &lt;this&gt;');
    expect((await envelopeNo(2)).state).toBe('blank');
  });

  test('can’t be one that is made', async () => {
    await makeEnvelope(app.db, envelopes[0]!, later(3));
    const answer = await app.post(`${home}/spoiled`, { envelope: '1', wrong: 'too late' });
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain('Envelope 1 is made already');
  });

  test('that is not there is not here', async () => {
    expect((await app.get(`${home}/spoiled?envelope=9`)).status).toBe(404);
    expect((await app.post(`${home}/spoiled`, { envelope: '9', wrong: 'gone' })).status).toBe(404);
  });
});

test.each([
  ['side-seam', /Glue C onto A and B\./, 1],
  ['two-piece', /Glue the two pieces together\./, 2],
] as const)('a %s fold is made step by step on each of its blanks', async (name, glue, blanks) => {
  const [recipe] = solveEnvelope({ card: CARD, notcher: RECIPE.notcher, folds: [name] });
  const { id } = await createProject(app.db, { ...THANKS, recipe: recipe! }, later(2));
  const trial = (await addTrial(app.db, id, later(3)))!;
  const { length } = foldOf(recipe!).steps(recipe!, 'clockwise');
  const texts = await Promise.all(
    Array.from({ length }, (_, at) => page(`/projects/${id}/make?envelope=${trial.number}&step=${at + 1}`)),
  );
  for (const [at, text] of texts.entries()) expect(text).toContain(`Step ${at + 1} of ${length}`);
  expect(texts.filter((text) => glue.test(text))).toHaveLength(1);
  const tabs = texts.filter((text) => text.includes('its tabs A, B and E inside'));
  expect(tabs).toHaveLength(blanks - 1);
  expect(texts.filter((text) => text.includes('<h1 class="instruction">Cut a'))).toHaveLength(blanks);
  expect(texts.some((text) => text.includes('Set the edge to'))).toBe(false);
  const shown = await page(`/projects/${id}`);
  const known = shown.slice(shown.indexOf('<section class="known"'), shown.indexOf('<details'));
  expect(known.match(/<dt>Blank<\/dt>/g)).toHaveLength(blanks);
  expect(shown).not.toContain('<dt>Start</dt>');
  const shift = await page(`/projects/${id}/start`);
  expect(shift).toContain('It takes a larger blank');
  expect(shift).not.toContain('Another start');
  expect((await app.post(`/projects/${id}/start`, { _method: 'PUT', start: '3' })).status).toBe(404);
});

test('sizes are said in the reader’s units', async () => {
  await app.db.updateTable('settings').set({ unit: 'mm' }).execute();
  expect(await page(`${home}/make?envelope=1&step=1`)).toContain('Cut a square, 190.5 mm.');
  // 1 in = 25.4 mm exactly: 5.875 × 3 in.
  expect(await page(home)).toContain('149.225 × 76.2 mm');
});
