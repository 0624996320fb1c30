/** Writing down how envelopes came out, as a browser sends it, and what a measured pocket then says of the tool. */
import { sql } from 'kysely';
import { beforeEach, describe, expect, test } from 'vitest';
import { inches, length, millimetres, typedLength } from '#shared/length.ts';
import { listEnvelopes, makeEnvelope } from '#stores/envelopes.ts';
import { chosenNotcher, editNotcher } from '#stores/notchers.ts';
import { createProject, readProject } from '#stores/projects.ts';
import { spoilBlank } from '#stores/spoil.ts';
import { type App, type Fields, openApp } from '#tests/support/app.ts';
import { type Cast, fillShelf, later, RECIPE } from '#tests/support/cast.ts';
import { takeThree } from '#tests/support/projects.ts';
import { rowCounts } from '#tests/support/shelf.ts';

const UNITS = { unit: 'in', step: 16 } as const;
const [START, TWIN] = RECIPE.starts;
const SQUARE = RECIPE.blank.width;

/** A pocket as it would be measured on a tool of this inset, by plane geometry: S = (w + h)/√2 + 2m, start = h/√2 + m. */
const pocketAt = (inset: number) => ({
  pocketWidth: typedLength(length(Math.round((SQUARE - START - inset) * Math.SQRT2)), UNITS),
  pocketHeight: typedLength(length(Math.round((START - inset) * Math.SQRT2)), UNITS),
});

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
  for (const id of envelopes) await makeEnvelope(app.db, id, later(3));
});

const page = async (path: string): Promise<string> => (await app.get(path)).text();
const write = (fields: Fields) => app.post(`${home}/outcomes`, fields);
const outcomeOf = async (number: number) =>
  (await listEnvelopes(app.db, project)).find((one) => one.number === number)!.outcome;

describe('the form', () => {
  test('asks for fit, pocket, what went wrong, and offers the rest', async () => {
    const shown = await page(`${home}/outcomes/new?envelope=1`);
    expect(shown).toContain('How did envelope 1 come out?');
    for (const fit of ['won’t go', 'tight', 'snug', 'easy', 'loose', 'not tried'])
      expect(shown).toContain(fit);
    expect(shown).toContain('The same for the rest: envelopes 2, 3');
    expect(shown).not.toContain('<details open');
  });

  test('shows again what is noted, measures of the recipe left empty', async () => {
    await write({
      envelope: '2',
      felt: 'snug',
      ...pocketAt(inches(0.5)),
      wrong: 'A crease',
      cShape: 'rounded',
      cMore: '1/4',
    });
    const shown = await page(`${home}/outcomes/new?envelope=2`);
    expect(shown).toMatch(/value="snug" checked/);
    expect(shown).toContain(`value="${pocketAt(inches(0.5)).pocketWidth}"`);
    expect(shown).toMatch(/id="start" name="start" class="length" value=""/);
    expect(shown).toContain('A crease');
    expect(shown).toMatch(/<option value="rounded" selected/);
    expect(shown).toContain('<details open');
  });

  test('is there for envelopes that are, not for spoiled ones, and not without a recipe', async () => {
    await spoilBlank(app.db, envelopes[0]!, { wrong: 'late' }, later(4));
    for (const number of ['9', '0', 'x']) {
      expect((await app.get(`${home}/outcomes/new?envelope=${number}`)).status).toBe(404);
    }
    const idea = await createProject(app.db, { title: 'Some day' }, later(4));
    expect((await app.get(`/projects/${idea.id}/outcomes/new?envelope=1`)).status).toBe(404);
    expect((await app.post(`/projects/${idea.id}/outcomes`, { envelope: '1' })).status).toBe(404);
    expect((await app.post('/projects/999/outcomes', { envelope: '1' })).status).toBe(404);
  });
});

describe('writing it down', () => {
  test('notes fit, trouble and rescue', async () => {
    const answer = await write({ envelope: '1', felt: 'easy', wrong: ' Glue <out> ', savedBy: '' });
    expect(answer.headers.get('Location')).toBe(home);
    expect(await outcomeOf(1)).toMatchObject({
      felt: 'easy',
      wrong: 'Glue <out>',
      pocket: null,
      asMade: null,
    });
    expect(await outcomeOf(2)).toBeNull();
  });

  test('goes for the rest alike, but not over what is noted already', async () => {
    await write({ envelope: '2', felt: 'tight' });
    await write({ envelope: '1', felt: 'easy', rest: 'on' });
    expect(await outcomeOf(2)).toMatchObject({ felt: 'tight' });
    expect(await outcomeOf(3)).toMatchObject({ felt: 'easy' });
  });

  test('takes lengths in the reader’s units and hers', async () => {
    await write({
      envelope: '1',
      pocketWidth: '169,5 mm',
      pocketHeight: '3 9/16',
      start: '70mm',
      square: '203 mm',
    });
    expect(await outcomeOf(1)).toMatchObject({
      pocket: { width: millimetres(169.5), height: inches(3.5625) },
      asMade: { square: millimetres(203), start: millimetres(70) },
    });
  });

  test('reads a start from the other corner, and a flap finished otherwise', async () => {
    await write({
      envelope: '1',
      twin: 'on',
      ...pocketAt(inches(0.45)),
      cShape: 'tapered',
      cDepth: '2',
      cMore: '1/8',
      dShape: 'straight',
      dDepth: '2 1/4',
    });
    expect(await outcomeOf(1)).toMatchObject({
      twin: true,
      asMade: { square: SQUARE, start: TWIN },
      finishes: {
        C: { shape: 'tapered', depth: inches(2), taper: inches(1 / 8) },
        D: { shape: 'straight', depth: inches(2.25) },
      },
    });
  });

  test.each([
    [{ pocketWidth: '5' }, 'pocketHeight', 'both ways'],
    [{ pocketHeight: '5' }, 'pocketWidth', 'both ways'],
    [{ pocketWidth: 'wide', pocketHeight: '5' }, 'pocketWidth', 'isn’t a length'],
    [{ pocketWidth: '0', pocketHeight: '5' }, 'pocketWidth', 'more than zero'],
    [{ pocketWidth: '5', pocketHeight: '9999999' }, 'pocketHeight', 'more than'],
    [{ start: '12' }, 'start', 'outside the square'],
    [{ cShape: 'straight' }, 'cDepth', 'How far from its score'],
    [{ cShape: 'straight', cDepth: '7' }, 'cDepth', 'The cut has to lie within'],
    [{ dShape: 'tapered', dDepth: '2' }, 'dMore', 'How far in'],
    [{ dShape: 'tapered', dDepth: '2', dMore: '4' }, 'dMore', 'takes more than there is'],
    [{ dShape: 'rounded', dMore: '6' }, 'dMore', 'radius'],
    [{ cShape: 'folded' }, 'cShape', 'Choose one of'],
    [{ wrong: 'x'.repeat(601) }, 'wrong', 'under 600'],
  ])('of %o is refused beside %s, and what was typed stays', async (typed, field, message) => {
    const answer = await write({
      envelope: '1',
      savedBy: 'kept <this>',
      ...(typed as Record<string, string>),
    });
    const shown = await answer.text();
    expect(answer.status).toBe(422);
    expect(shown).toMatch(new RegExp(`id="${field}-note" class="problem"[^>]*>[^<]*${message}`));
    expect(shown).toContain('kept &lt;this&gt;');
    if (/^[cd]/.test(field)) expect(shown).toContain('<details open');
    expect(await outcomeOf(1)).toBeNull();
  });

  test('refuses a fit that is none, and a form with two envelopes or none', async () => {
    const before = await rowCounts(app.db);
    expect((await write({ envelope: '1', felt: 'perfect' })).status).toBe(422);
    expect((await write({ felt: 'easy' })).status).toBe(404);
    const twice = await write([
      ['envelope', '1'],
      ['felt', 'easy'],
      ['felt', 'tight'],
    ]);
    expect(twice.status).toBe(422);
    expect(await rowCounts(app.db)).toEqual(before);
  });
});

describe('called finished', () => {
  const finishing = `outcomes/new?envelope=3&amp;finish=on`;

  test('a project asks first what was really made, with the measures that worked', async () => {
    await write({ envelope: '2', felt: 'easy', start: '2 15/16' });
    expect(await page(home)).toContain(`href="${home}/${finishing}"`);
    const shown = await page(`${home}/${finishing.replace('&amp;', '&')}`);
    expect(shown).toContain(`name="square" class="length" value="${typedLength(SQUARE, UNITS)}"`);
    expect(shown).toContain('name="start" class="length" value="2 15/16"');
    expect(shown.indexOf('What was really made')).toBeLessThan(shown.indexOf('measured inside'));
    expect(shown).toMatch(
      /action="[^"]+\/finish"><p><button[^>]*>Finish without saying more.*What was really made/s,
    );

    const answer = await write({ envelope: '3', felt: 'snug', start: '2 7/8', square: '', finish: 'on' });
    expect(answer.headers.get('Location')).toBe(home);
    expect(await outcomeOf(3)).toMatchObject({ felt: 'snug', asMade: { start: inches(2.875) } });
    expect((await readProject(app.db, project))!.finishedAt).not.toBeNull();
  });

  test('a form that is refused stays the last that is asked, and finishes nothing', async () => {
    const answer = await write({ envelope: '3', start: 'wide', finish: 'on' });
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain('name="finish" value="on"');
    expect((await readProject(app.db, project))!.finishedAt).toBeNull();
    await write({ envelope: '3', felt: 'easy' });
    expect((await readProject(app.db, project))!.finishedAt).toBeNull();
  });

  test('without an envelope made, a project is finished at once', async () => {
    const idea = await createProject(app.db, { title: 'Some day' }, later(4));
    expect(await page(`/projects/${idea.id}`)).toContain(`action="/projects/${idea.id}/finish"`);
  });
});

describe('a pocket with its sides swapped', () => {
  const { pocketWidth: height, pocketHeight: width } = pocketAt(inches(0.5));
  const swapped = {
    envelope: '1',
    felt: 'easy',
    pocketWidth: width,
    pocketHeight: height,
    wrong: 'kept <this>',
  };
  const askedIn = (shown: string) => /name="asked" value="([^"]+)"/.exec(shown)?.[1] ?? '';

  test('is asked about beside its fields, with all that was typed, and not written yet', async () => {
    const answer = await write(swapped);
    const shown = await answer.text();
    expect(answer.status).toBe(422);
    expect(shown).toMatch(/Did you mean [^<]+ across and [^<]+ up\?/);
    expect(shown).toContain(`name="pocketWidth" class="length" value="${width}"`);
    expect(shown).toContain('kept &lt;this&gt;');
    expect(shown).toMatch(/value="easy" checked/);
    expect(await outcomeOf(1)).toBeNull();
  });

  test('is swapped or kept as she answers', async () => {
    const asked = askedIn(await (await write(swapped)).text());
    const kept = await write({ ...swapped, asked, sides: 'kept' });
    expect(kept.headers.get('Location')).toBe(`${home}/outcomes/1`);
    const noted = (await outcomeOf(1))!.pocket!;
    expect(typedLength(noted.width, UNITS)).toBe(width);
    await write({ ...swapped, asked, sides: 'turned' });
    expect((await outcomeOf(1))!.pocket).toEqual({ width: noted.height, height: noted.width });
    expect((await chosenNotcher(app.db)).notcher.inset).toBeCloseTo(inches(0.5), -2);
  });

  test('an answer counts only for the pocket that was asked about', async () => {
    const asked = askedIn(await (await write(swapped)).text());
    expect((await write({ ...swapped, pocketWidth: '3', asked, sides: 'turned' })).status).toBe(422);
    await write({ ...swapped, ...pocketAt(inches(0.5)), asked, sides: 'turned' });
    expect(typedLength((await outcomeOf(1))!.pocket!.height, UNITS)).toBe(width);
  });

  test('is asked by the measures as made, from either corner', async () => {
    const otherWay = { ...pocketAt(inches(0.5)), start: typedLength(TWIN, UNITS) };
    expect((await write({ envelope: '1', ...otherWay })).status).toBe(422);
    expect((await write({ envelope: '1', ...otherWay, twin: 'on' })).status).toBe(303);
  });

  test('kept in the record does not count, and every page still answers', async () => {
    const asked = askedIn(await (await write(swapped)).text());
    await write({ ...swapped, asked, sides: 'kept' });
    expect(await page(`${home}/outcomes/1`)).toContain('does not fit what is known');
    const tool = await page('/tools/notchers/1');
    expect(tool).toContain('Doesn’t agree, so it isn’t counted.');
    expect(tool).toContain('sides turned round');
  });

  test('in an old book makes no page fail', async () => {
    const { db } = app;
    await write({ envelope: '1', ...pocketAt(inches(0.5)), rest: 'on' });
    // As books from before hold it: a pocket of 8⅜ × 3⅜ in from a square of 9¼, noted as 3⅜ × 8⅜.
    await sql`UPDATE outcomes SET square = ${inches(9.25)}, start = ${inches(2.8125)},
      pocket_width = ${inches(3.375)}, pocket_height = ${inches(8.375)}`.execute(db);
    expect((await chosenNotcher(db)).inset).toEqual({ from: 'default' });
    for (const path of [
      '/',
      '/tools',
      '/tools/notchers/1',
      home,
      `${home}/outcomes/1`,
      '/envelopes?width=5&height=7',
      '/envelopes?width=4.25&height=5.5&boxWidth=6&boxHeight=6',
      '/envelopes?width=5&height=7&square=9.25&start=3',
      '/envelopes?width=30&height=30',
    ]) {
      expect((await app.get(path)).status, path).toBe(200);
    }
    const { tool } = await chosenNotcher(db);
    for (const pinnedZeroOffset of [inches(1), length(-inches(1))]) {
      await editNotcher(db, tool.id, { ...tool, pinnedInset: inches(3), pinnedZeroOffset });
      expect((await app.get('/envelopes?width=5&height=7')).status).toBe(200);
    }
  });
});

describe('a measured pocket', () => {
  test('leads to what it says of the tool, before and after', async () => {
    const answer = await write({ envelope: '1', felt: 'easy', ...pocketAt(inches(0.5)) });
    expect(answer.headers.get('Location')).toBe(`${home}/outcomes/1`);
    const shown = await page(`${home}/outcomes/1`);
    expect(shown).toContain('is known better now.');
    expect(shown).toContain('<dd>0.500″');
    expect(shown).toContain('0.438″ before this project; now learned from 1 pocket');
    expect(shown).toContain('It rests on this one pocket. A pocket is read to about ¹⁄₃₂″');
    expect(shown).toContain('href="/tools"');
    expect((await chosenNotcher(app.db)).notcher.inset).toBeCloseTo(inches(0.5), -2);
  });

  test('written down for the rest too is one pocket, on every record and among the tools', async () => {
    await write({ envelope: '1', ...pocketAt(inches(0.5)), rest: 'on' });
    for (const number of [1, 3]) {
      expect(await page(`${home}/outcomes/${number}`)).toContain('It rests on this one pocket.');
    }
    const tool = await page('/tools/notchers/1');
    expect(tool).toContain('learned from 1 pocket');
    expect(tool).toContain('Noted for envelopes 2 and 3 too; it counts once.');
  });

  test('copied to the rest later is still the one pocket', async () => {
    await write({ envelope: '1', ...pocketAt(inches(0.5)) });
    await app.db
      .updateTable('outcomes')
      .set({ at: later(2) })
      .execute();
    await write({ envelope: '1', ...pocketAt(inches(0.5)), rest: 'on' });
    expect((await chosenNotcher(app.db)).inset).toEqual({ from: 'learned', pockets: 1 });
  });

  test('and another that agrees: what that says and what it doesn’t', async () => {
    await write({ envelope: '1', ...pocketAt(inches(0.5)) });
    await write({ envelope: '2', ...pocketAt(inches(0.505)) });
    const shown = await page(`${home}/outcomes/2`);
    expect(shown).not.toContain('within 0.000');
    expect(shown).toContain('It rests on 2 measured pockets, and they agree with each other.');
    expect(shown).toContain('read to about ¹⁄₃₂″, so take the values as true to about that.');
  });

  test('changes nothing that is pinned, and says so', async () => {
    const { tool } = await chosenNotcher(app.db);
    await editNotcher(app.db, tool.id, { ...tool, pinnedInset: inches(0.4375) });
    await write({ envelope: '1', ...pocketAt(inches(0.5)) });
    const shown = await page(`${home}/outcomes/1`);
    expect(shown).toContain('the same before this project; now set by you');
    expect(shown).toContain('A pinned value stays');
  });

  test('that contradicts the others is named, with the way to put it right', async () => {
    await write({ envelope: '1', ...pocketAt(inches(0.45)) });
    await write({ envelope: '2', ...pocketAt(inches(0.455)) });
    await write({ envelope: '3', ...pocketAt(inches(0.9)) });
    const shown = await page(`${home}/outcomes/3`);
    expect(shown).toContain('does not fit what is known');
    expect(shown).toContain('This one is off from what the others say.');
    expect(shown).toContain(`href="${home}/outcomes/new?envelope=3"`);
  });

  test('is only there where one was measured', async () => {
    await write({ envelope: '1', felt: 'easy' });
    for (const path of [
      `${home}/outcomes/1`,
      `${home}/outcomes/2`,
      `${home}/outcomes/9`,
      '/projects/999/outcomes/1',
    ]) {
      expect((await app.get(path)).status).toBe(404);
    }
  });
});
