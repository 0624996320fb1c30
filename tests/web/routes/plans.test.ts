/** A batch as a browser asks for it: the form and its messages, the plan, other ways, the cut sheet, cut and undone. */
import { beforeEach, describe, expect, test, vi } from 'vitest';
import type { CutPlan } from '#core/cutting/cuts.ts';
import type { Order } from '#core/cutting/order.ts';
import { planCuts } from '#core/cutting/plan.ts';
import type { Planner } from '#core/cutting/planner.ts';
import { inches } from '#shared/length.ts';
import { checkData } from '#stores/checks.ts';
import { listEnvelopes } from '#stores/envelopes.ts';
import { countSheets } from '#stores/movements.ts';
import { addOffcut, listOffcuts } from '#stores/offcuts.ts';
import { addPlan, finishPlan, readPlan } from '#stores/plans.ts';
import { createProject, editProject } from '#stores/projects.ts';
import { addSeries } from '#stores/series.ts';
import { type App, DIRECT, type Fields, openApp } from '#tests/support/app.ts';
import { type Cast, FIRST, fillShelf, later, RECIPE, scrap, size, THANKS } from '#tests/support/cast.ts';
import { rowCounts, shelf } from '#tests/support/shelf.ts';

let app: App;
let cast: Cast;
let project: number;
let home: string;

const open = async (planner?: Planner): Promise<void> => {
  app = await openApp(planner);
  cast = await fillShelf(app.db);
  project = (await createProject(app.db, THANKS, FIRST)).id;
  home = `/projects/${project}`;
};

beforeEach(() => open());

const page = async (path: string): Promise<string> => (await app.get(path)).text();
const words = (html: string): string =>
  html
    .replace(/<svg.*?<\/svg>/gs, ' ')
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ')
    .replace(/ ([.,:])/g, '$1');
const leadsTo = (answer: Response): string => answer.headers.get('Location') ?? `${answer.status}`;
const ask = (fields: Record<string, string> = {}): Promise<Response> =>
  app.post(`${home}/plans`, { do: 'plan', blanks: '3', paper: 'kind-patterned', ...fields });
const asked = async (fields: Record<string, string> = {}): Promise<string> => leadsTo(await ask(fields));
const front = (fields: Record<string, string> = {}, number = 0): Record<string, string> =>
  Object.fromEntries(
    Object.entries({ name: 'Front', width: '5', height: '3', copies: '3', ...fields }).map(
      ([field, value]) => [`parts.${number}.${field}`, value],
    ),
  );
const planOf = async (path: string) => (await readPlan(app.db, Number(/\/plans\/(\d+)/.exec(path)![1])))!;
const cut = (path: string, fields: Fields = { place: 'blue folder' }): Promise<Response> =>
  app.post(`${path}/cuts`, fields);

describe('the form', () => {
  test('asks for the blanks that are missing, and is reached from the project', async () => {
    expect(await page(home)).toContain(`href="${home}/plans/new"`);
    const shown = await page(`${home}/plans/new`);
    expect(shown).toMatch(/name="blanks"[^>]*value="3"/);
    expect(shown).toContain('3 are still missing');
  });

  test('adds a part of the card’s size at one tap, an empty one, and drops one; writing nothing', async () => {
    const rows = await rowCounts(app.db);
    const added = await (await ask({ ...front(), do: 'add-base' })).text();
    expect(added).toMatch(/name="parts\.0\.name"[^>]*value="Front"/);
    expect(added).toMatch(/name="parts\.1\.width"[^>]*value="11 3\/4"/);
    const empty = await (await ask({ ...front(), do: 'add' })).text();
    expect(empty).toMatch(/name="parts\.1\.copies"[^>]*value="3"/);
    const dropped = await (await ask({ ...front(), ...front({ name: 'Tag' }, 1), do: 'drop-0' })).text();
    expect(dropped).toMatch(/name="parts\.0\.name"[^>]*value="Tag"/);
    expect(dropped).not.toContain('name="parts.1.name"');
    expect(await rowCounts(app.db)).toEqual(rows);
  });

  test.each([
    ['nothing to cut', { blanks: '0' }, 'blanks', 'There is nothing to cut'],
    ['copies of 0', front({ copies: '0' }), 'parts.0.copies', 'whole number from 1 to 500'],
    ['copies of 10 000', front({ copies: '10000' }), 'parts.0.copies', 'whole number from 1 to 500'],
    ['blanks of 10 000', { blanks: '10000' }, 'blanks', 'whole number from 0 to 500'],
    ['a nonsense length', front({ width: 'wide' }), 'parts.0.width', '“wide” isn’t a length I can read'],
    ['no length', front({ height: '' }), 'parts.0.height', 'Type a length'],
    ['not a number', front({ height: 'NaN' }), 'parts.0.height', 'isn’t a length'],
    ['no name', front({ name: ' ' }), 'parts.0.name', 'Give the part a name'],
    [
      'a part larger than everything',
      front({ width: '40' }),
      'parts.0.width',
      'larger than any of this paper',
    ],
    ['paper that is not there', front({ paper: 'kind-vellum' }), 'parts.0.paper', 'none of this paper'],
    ['paper that never was', front({ paper: 'silk' }), 'parts.0.paper', 'Choose one from the list'],
    ['a weight in words', front({ grammage: 'heavy' }), 'parts.0.grammage', 'grams per square metre'],
    ['half a spot', front({ fromLeft: '2' }), 'parts.0.fromTop', 'Give both distances, or neither'],
    ['a nonsense spot', front({ fromLeft: '2', fromTop: 'low' }), 'parts.0.fromTop', 'isn’t a length'],
    [
      'a spot over the edge',
      front({ fromLeft: '8', fromTop: '0' }),
      'parts.0.fromLeft',
      'runs over the edge of the sheet',
    ],
  ])('keeps what was typed and says what is wrong with %s', async (_, fields, field, message) => {
    const rows = await rowCounts(app.db);
    const answer = await ask({ once: 'plan-form-01', ...fields });
    expect(answer.status).toBe(422);
    const shown = await answer.text();
    const note = new RegExp(`id="${field}-note"[^>]*role="alert"[^>]*>[^<]*${message}`);
    expect(shown).toMatch(note);
    for (const [name, value] of Object.entries(fields)) {
      if (!/paper/.test(name)) expect(shown).toMatch(new RegExp(`name="${name}"[^>]*value="${value}"`));
    }
    expect(await rowCounts(app.db)).toEqual(rows);
    expect(await readPlan(app.db, 1)).toBeUndefined();
  });

  test('offers a spot on the sheet, and keeps it with the plan until it is cut', async () => {
    const empty = await (await ask({ do: 'add' })).text();
    expect(empty).toMatch(/<details class="spot">.*name="parts\.0\.fromLeft".*name="parts\.0\.fromTop"/s);
    const spot = front({ fromLeft: '1 1/2', fromTop: '0', copies: '1', paper: `design-${cast.hare.id}` });
    const path = await asked({ blanks: '0', ...spot });
    const { batch, plan } = await planOf(path);
    expect(batch.parts[0]!.at).toEqual({ x: inches(1.5), y: inches(0) });
    expect(plan!.used[0]!.rectangles).toMatchObject([{ x: inches(1.5), y: 0, turned: false }]);
    expect(words(await page(`${path}/sheet`))).toContain('1½″ from the left and 0″ from the top of a sheet');
    const again = await page(`${home}/plans/new`);
    expect(again).toMatch(/<details class="spot" open[^>]*>.*name="parts\.0\.fromLeft"[^>]*value="1 1\/2"/s);
    expect(again).toMatch(/name="parts\.0\.fromTop"[^>]*value="0"/);
    expect(await checkData(app.db)).toEqual([]);
  });

  test('asks for a border or for a spot, not for both', async () => {
    const answer = await ask(front({ print: 'bordered', fromLeft: '0', fromTop: '0' }));
    expect(answer.status).toBe(422);
    expect(await answer.text()).toMatch(
      /id="parts\.0\.print-note"[^>]*role="alert"[^>]*>The border is along/,
    );
  });

  test('takes a paper by its name, and asks which where several are called so', async () => {
    const path = await asked({ paper: '', paperNamed: 'fern', ...front({ paperNamed: 'White card' }) });
    const { batch } = await planOf(path);
    expect(batch.paper).toEqual({ of: 'design', design: cast.fern.id });
    expect(batch.parts[0]!.paper).toEqual({ of: 'design', design: cast.white.id });
    const unclear = await ask({ paperNamed: 'meadow', blanks: '2' });
    const shown = await unclear.text();
    expect(unclear.status).toBe(422);
    expect(shown).toMatch(/id="paper-note" class="problem"[^>]*>More than one is called “meadow”/);
    const select = /<select id="paper".*?<\/select>/s.exec(shown)![0];
    expect(select).toContain('<option value="which">which of these?');
    for (const { id, name } of [cast.fern, cast.hare, cast.hem])
      expect(select).toMatch(new RegExp(`<option value="design-${id}">Meadow walk · ${name} \\(`));
    expect(shown).toMatch(/name="blanks"[^>]*value="2"/);
    const unknown = await (await ask({ paperNamed: 'silk' })).text();
    expect(unknown).toMatch(
      /id="paperNamed-note" class="problem"[^>]*>Nothing on the shelf is called “silk”/,
    );
    expect(unknown).toMatch(/name="paperNamed"[^>]*value="silk"/);
  });

  test('suggests what suits the envelope, and any paper is as good as before', async () => {
    const shown = await page(`${home}/plans/new`);
    const select = /<select id="paper".*?<\/select>/s.exec(shown)![0];
    expect(select).toContain('<option value="">any of my paper that suits</option>');
    expect(select).toMatch(
      /Suits the envelope best".*?<option value="design-1">Meadow walk · Fern \(5 left\)/s,
    );
    const { order } = await planOf(await asked({ paper: '' }));
    expect(order.parts[0]).not.toHaveProperty('designs');
  });

  test('keeps another piece by its code or a design by its name', async () => {
    const kept = await (await ask({ do: 'keep', keepNamed: cast.strips.code.toLowerCase() })).text();
    expect(kept).toMatch(new RegExp(`name="keep.offcut-${cast.strips.id}" checked`));
    const both = { [`keep.offcut-${cast.strips.id}`]: 'on', keepNamed: 'hem' };
    const { batch } = await planOf(await asked(both));
    expect([...batch.keep].sort()).toEqual([`offcut-${cast.strips.id}`, `sheet-${cast.hem.id}`]);
    const none = await ask({ keepNamed: 'nothing such' });
    expect(await none.text()).toMatch(/id="keepNamed-note" class="problem"/);
    expect(none.status).toBe(422);
  });

  test('says so when everything is to be kept', async () => {
    const keep = Object.fromEntries(
      [
        ...[cast.fern, cast.hare, cast.hem, cast.white].map(({ id }) => `keep.sheet-${id}`),
        ...(await listOffcuts(app.db)).map(({ id }) => `keep.offcut-${id}`),
      ].map((name) => [name, 'on']),
    );
    const answer = await ask(keep);
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain('There is no paper left to cut from.');
  });

  test('shows a plan that waits to be cut', async () => {
    const path = await asked();
    expect(await page(`${home}/plans/new`)).toContain(`href="${path}"`);
    await cut(path);
    expect(await page(`${home}/plans/new`)).not.toContain(`href="${path}"`);
  });

  test('refuses more parts than can be planned at once', async () => {
    const many = Object.assign({}, ...[0, 1, 2, 3, 4].map((number) => front({ copies: '500' }, number)));
    const answer = await ask(many);
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain('That is 2503 parts in all; at most 2000 are planned at once.');
  });

  test.each(['999', '0', 'x'])('project %s is not here', async (id) => {
    expect((await app.get(`/projects/${id}/plans/new`)).status).toBe(404);
    expect((await app.post(`/projects/${id}/plans`, { blanks: '1' })).status).toBe(404);
  });

  test('sent twice asks once', async () => {
    const once = { once: 'plan-form-02' };
    expect(await asked(once)).toBe('/plans/1');
    expect(await asked(once)).toBe('/plans/1');
    expect(await readPlan(app.db, 2)).toBeUndefined();
  });
});

describe('the plan', () => {
  test('answers in one line, with its proof in another', async () => {
    // One square of 8 goes on a sheet of 12, one on the corner of 8½: two of three blanks take a sheet whatever the plan.
    const path = await asked({ paper: `design-${cast.fern.id}` });
    const shown = words(await page(path));
    expect(shown).toContain('2 sheets of Fern and 1 offcut: everything fits.');
    expect(shown).toContain('Opens 2 sheets; no plan from Fern opens fewer.');
  });

  test('names what is left out, and what would help', async () => {
    const path = await asked({ blanks: '9', paper: `design-${cast.fern.id}` });
    const shown = words(await page(path));
    expect(shown).toContain('5 sheets of Fern and 1 offcut: 6 of 9 parts fit.');
    expect(shown).toContain('Looked at Fern. Left out:');
    expect(shown).toContain('(not the paper asked for)');
    expect(shown.indexOf('Left out:')).toBeLessThan(shown.indexOf('No plan from Fern places more.'));
    expect(shown).toContain('3 × Envelope: 3 more sheets of Fern would take them.');
  });

  test('cuts bases from bordered paper too, beside the border, where any patterned paper will do', async () => {
    for (const { id } of [cast.fern, cast.hare]) await countSheets(app.db, id, { sheets: 0, at: later(2) });
    // Two bases of 8½ × 5½ stand side by side above the 1½ in border of each 12 × 12 sheet of Hem.
    const base = front({
      name: 'Base',
      width: '8 1/2',
      height: '5 1/2',
      copies: '4',
      paper: 'kind-patterned',
    });
    const path = await asked({ blanks: '0', ...base });
    const shown = words(await page(path));
    expect(shown).toContain('Looked at');
    expect(shown).toMatch(/Hem.*(offcut|sheet)/);
    const { plan, pieces } = await planOf(path);
    expect(pieces.map(({ id }) => id)).toContain(`sheet-${cast.hem.id}`);
    expect(plan!.placed).toBe(4);
    for (const { piece, rectangles } of plan!.used)
      if (piece === `sheet-${cast.hem.id}`)
        expect(rectangles.every(({ y, height }) => y + height <= inches(10.5))).toBe(true);
  });

  test('names the paper that it leaves out with the reason, before it claims anything', async () => {
    const band = front({ name: 'Band', width: '12', height: '4', copies: '5', print: 'bordered' });
    const shown = words(await page(await asked({ blanks: '0', ...band })));
    expect(shown).toContain('Looked at Hem.');
    expect(shown).toMatch(/Left out: .*sheets of Fern.*\(no border to show\)/);
    expect(shown).toContain('3 parts are left out. Whether a plan from Hem fits them all is not known yet.');
    const high = front({ width: '12', height: '11', copies: '1', paper: `design-${cast.hem.id}` });
    expect(words(await (await ask({ blanks: '0', ...high })).text())).toContain(
      'the largest piece is 12 × 10½″ beside its border. With the border along its bottom it would fit.',
    );
  });

  test('says how many sets are whole where some parts are left out', async () => {
    await countSheets(app.db, cast.fern.id, { sheets: 1, at: later(2) });
    const keep = { [`keep.offcut-${cast.strips.id}`]: 'on' };
    const mat = front({ width: '7', height: '7', copies: '4', paper: `design-${cast.fern.id}` });
    const shown = words(
      await page(await asked({ blanks: '4', paper: `design-${cast.fern.id}`, ...keep, ...mat })),
    );
    expect(shown).toMatch(/[01] of 4 sets (is|are) complete\./);
  });

  test('says what a longer look has changed, and never leaves a gap unexplained', async () => {
    const looks = [0, 1];
    await open({
      ...DIRECT,
      start: ({ order, pieces }) => {
        const plan = planCuts(order, pieces, { work: 60, seed: 1 });
        const weak = { ...plan, bounds: { ...plan.bounds, newSheetArea: 0 }, proved: false };
        const found = looks.shift() === 0 ? weak : plan;
        return { plan: Promise.resolve(found), progress: () => undefined, stop: () => {} };
      },
    });
    const path = await asked({ paper: `design-${cast.fern.id}` });
    const gap = words(await page(path));
    expect(gap).toContain('Opens 2 sheets. Whether a plan from Fern does with fewer is not known yet.');
    const longer = words(await page(leadsTo(await app.post(`${path}/again`, { longer: 'on' }))));
    expect(longer).toContain(
      'Looked longer: as many sheets as before, and it is now certain that none does with fewer than 2 (0 before).',
    );
  });

  test('says what would help a part that has to match, and which room only its match closes', async () => {
    await countSheets(app.db, cast.fern.id, { sheets: 1, at: later(2) });
    const keep = { [`keep.offcut-${cast.corner.id}`]: 'on' };
    const fern = { blanks: '1', paper: `design-${cast.fern.id}`, ...keep };
    // Larger than what a blank leaves of the one sheet, and than the corner; smaller than the blank.
    const narrow = front({ width: '9', height: '6', copies: '1', match: 'on' });
    expect(words(await page(await asked({ ...fern, ...narrow })))).toContain(
      '1 × Front: another sheet of Fern would take it, or there is room if it need not be of the same design as the rest.',
    );
    const free = await asked({ ...fern, ...narrow, 'parts.0.match': '' });
    expect(words(await page(free))).toContain('everything fits');
    expect(words(await page(await asked({ ...fern, blanks: '2' })))).toMatch(
      /1 × Envelope: another sheet of Fern would take it, or there is room on offcut \w+ of Fern, kept back now\./,
    );
  });

  test('is asked again with an offcut or a design kept, or from another design', async () => {
    const first = await asked({ paper: `design-${cast.fern.id}` });
    const kept = leadsTo(await app.post(`${first}/again`, { keep: `offcut-${cast.corner.id}` }));
    expect(words(await page(kept))).toContain('3 sheets of Fern: everything fits.');
    expect(words(await page(kept))).toContain('Before: 2 sheets of Fern and 1 offcut, everything fits.');
    const hare = leadsTo(await app.post(`${first}/again`, { design: `${cast.hare.id}` }));
    expect(words(await page(hare))).toContain('3 sheets of Hare: everything fits.');
    const none = await app.post(`${kept}/again`, { keep: `sheet-${cast.fern.id}` });
    expect(none.status).toBe(422);
    expect(words(await none.text())).toContain('larger than any of this paper');
  });

  test('asked again by a form sent twice is asked once, and each way counts apart', async () => {
    const first = await asked({ paper: `design-${cast.fern.id}` });
    const forms = (await page(first)).match(/<form[^>]*\/(again|trials)".*?<\/form>/gs)!;
    const [token] = forms.map((form) => /name="once" value="([^"]+)"/.exec(form)?.[1]);
    for (const form of forms) expect(form).toContain(`name="once" value="${token}"`);
    const send = async (way: string, fields: Record<string, string> = {}): Promise<string> =>
      leadsTo(await app.post(`${first}/${way}`, { once: token!, ...fields }));
    const ways = [
      await send('again', { keep: `offcut-${cast.corner.id}` }),
      await send('again', { design: `${cast.hare.id}` }),
      await send('again', { longer: 'on' }),
      await send('again'),
      await send('trials'),
    ];
    expect(new Set(ways).size).toBe(5);
    expect(await send('again', { keep: `offcut-${cast.corner.id}` })).toBe(ways[0]);
    expect(await send('again', { design: `${cast.hare.id}` })).toBe(ways[1]);
    expect(await send('trials')).toBe(ways[4]);
    expect(await readPlan(app.db, 7)).toBeUndefined();
  });

  test('says how much of a long shelf was looked at', async () => {
    expect(words(await page(await asked()))).not.toContain('different pieces');
    for (let one = 0; one < 1510; one += 1)
      await addOffcut(app.db, { design: cast.fern.id, offcut: scrap(8, 8 + one / 64), count: 1, at: FIRST });
    // And the sheets of Fern, Hare and Hem, and the corner.
    expect(words(await page(await asked({ blanks: '1' })))).toContain(
      'Looked at 1500 of the 1514 different pieces that would do, and speaks of these: sheets first, then for each part the smallest offcuts.',
    );
    expect(await checkData(app.db)).toEqual([]);
  });

  test('spans the projects of a series', async () => {
    const series = (await addSeries(app.db, { name: 'Neighbours', note: '' }))!.id;
    await editProject(app.db, project, { series }, later(1));
    const other = await createProject(
      app.db,
      { ...THANKS, title: 'Next door <but one>', quantity: 1, series },
      later(1),
    );
    expect(await page(`${home}/plans/new`)).toContain(`name="with.${other.id}"`);
    const path = await asked({ [`with.${other.id}`]: 'on' });
    const shown = await page(path);
    expect(shown).toContain('Envelope for Next door &lt;but one&gt;');
    await cut(path);
    expect(await listEnvelopes(app.db, other.id)).toHaveLength(1);
    expect(await listEnvelopes(app.db, project)).toHaveLength(3);
    expect(await page(`/projects/${other.id}`)).toContain('Taken on');
    expect(await checkData(app.db)).toEqual([]);
  });

  test.each(['999', '0', 'x'])('%s is not here', async (id) => {
    for (const rest of ['', '/sheet']) expect((await app.get(`/plans/${id}${rest}`)).status).toBe(404);
    for (const rest of ['/again', '/trials', '/ticks', '/cuts', '/spoiled', '/planning'])
      expect((await app.post(`/plans/${id}${rest}`, { step: '0' })).status).toBe(404);
  });
});

describe('the cut sheet', () => {
  let path: string;
  beforeEach(async () => {
    path = await asked({ paper: `design-${cast.fern.id}`, ...front({ copies: '2' }) });
  });

  test('has its steps by setting, the caution about the blade, and what comes of it', async () => {
    const shown = words(await page(`${path}/sheet`));
    expect(shown).toContain('fingers well behind it');
    expect(shown).toMatch(/Set 7½″: \d cuts/);
    expect(shown).toContain('edge to the fence');
    expect(shown).toMatch(/3 × Envelope, 7½ × 7½″/);
    expect(shown).toMatch(/2 × Front, 5 × 3″/);
    expect(shown).toContain('no waste');
  });

  test('shows sheets that are cut alike once, with how many they are and what is set for them', async () => {
    const many = await asked({
      blanks: '4',
      paper: `design-${cast.fern.id}`,
      [`keep.offcut-${cast.corner.id}`]: 'on',
    });
    const shown = await page(`${many}/sheet`);
    expect(shown.match(/ id="piece-/g)).toHaveLength(1);
    expect(words(shown)).toContain('cut alike ×4: 4 new sheets of Fern set 7½″');
    expect(words(shown)).toContain('What you keep lies against the fence');
    // A blank of 7½ × 7½ from each of four sheets of 12 × 12: two cuts a sheet, all at one setting.
    expect(words(shown)).toContain('Set 7½″: 8 cuts');
    expect(words(await page(many))).toContain('cut alike ×4: 4 new sheets of Fern');
  });

  test('of a plan kept before steps were has the ticks it had', async () => {
    const { project: of, batch, order, pieces, suitable, leftOut, plan } = await planOf(path);
    const id = await addPlan(app.db, { project: of, batch, order, pieces, suitable, leftOut }, later(1));
    const { steps: _, patterns: __, ...earlier } = plan!;
    await finishPlan(app.db, id, earlier as CutPlan);
    await app.post(`/plans/${id}/ticks`, { step: '0' });
    const shown = await page(`/plans/${id}/sheet`);
    expect(words(shown)).toContain('Step 2 of');
    expect(words(await page(`/plans/${id}/sheet?step=1`))).toMatch(/Step 1 of \d+ · cut/);
    expect(words(await page(`/plans/${id}`))).toContain('everything fits');
  });

  test('says first what to fetch and from where, and what needs no cut', async () => {
    const lying = front({ width: '9', height: '4', copies: '1', paper: `design-${cast.hare.id}` });
    const mixed = await asked({ blanks: '2', paper: `design-${cast.fern.id}`, ...lying });
    const shown = words(await page(`${mixed}/sheet`));
    expect(shown).toContain('1 new sheet of Fern 12 × 12″');
    expect(shown).toContain(`${cast.corner.code} 8½ × 8½″, from tray 1`);
    expect(shown).toContain(
      `${cast.lying.code} 9 × 4″, from tray 2; needs no cut, it has the size of “Front”`,
    );
  });

  test('keeps ticks over a reload, and lets them be taken back', async () => {
    expect(leadsTo(await app.post(`${path}/ticks`, { step: '1' }))).toBe(`${path}/sheet?step=2`);
    expect(words(await page(`${path}/sheet?step=1`))).toMatch(/Step 1 of \d+ · cut/);
    const back = { step: '1', _method: 'DELETE' };
    expect(leadsTo(await app.post(`${path}/ticks`, back))).toBe(`${path}/sheet?step=1`);
    expect(words(await page(`${path}/sheet?step=1`))).not.toMatch(/Step 1 of \d+ · cut/);
    expect((await app.post(`${path}/ticks`, { step: '99' })).status).toBe(404);
    expect((await app.post(`${path}/ticks`, { step: 'x' })).status).toBe(404);
  });

  test('shows one step at a time, from the first that is not cut to writing it down', async () => {
    const { plan } = await planOf(path);
    const steps = plan!.steps.length;
    for (const at of Array.from({ length: steps }, (_, index) => index + 1)) {
      const answer = await app.get(`${path}/sheet`, { 'HX-Request': 'true' });
      const shown = await answer.text();
      expect(shown).toMatch(new RegExp(`^<title>Step ${at} of ${steps} · Cut sheet · `));
      expect(shown.match(/id="now-picture-0"|now-picture-0-title/g)!.length).toBeGreaterThan(0);
      expect(shown).not.toContain('write it down');
      const next = leadsTo(await app.post(`${path}/ticks`, { step: `${at}` }));
      expect(next).toBe(`${path}/sheet?step=${at + 1}`);
    }
    const ended = await page(`${path}/sheet`);
    expect(ended).toContain('<title>All cut · Cut sheet · ');
    expect(ended.match(/It’s cut: write it down/g)).toHaveLength(1);
    expect(words(await page(`${path}/sheet?step=99`))).toContain('That was the last cut.');
  });

  test('is cut, names the codes to pencil, and everything comes back when undone', async () => {
    const before = await shelf(app.db);
    expect(leadsTo(await cut(path))).toBe(path);
    const plan = await planOf(path);
    const shown = await page(path);
    expect(words(shown)).toContain('Cut and written down on');
    for (const offcut of (await listOffcuts(app.db)).filter(({ place }) => place === 'blue folder'))
      expect(shown).toContain(offcut.code);
    expect(await listEnvelopes(app.db, project)).toHaveLength(3);
    expect(await checkData(app.db)).toEqual([]);
    expect(words(await page(home))).toMatch(/1 blank.* from it/);
    await app.post(`/cuts/${plan.cut!.id}`, { _method: 'DELETE' });
    expect(await shelf(app.db)).toEqual(before);
    expect(await page(path)).toContain('To the cut sheet');
  });

  test('twice is cut once', async () => {
    const fields = { once: 'cut-form-001', place: '' };
    await cut(path, fields);
    const after = await shelf(app.db);
    expect(leadsTo(await cut(path, fields))).toBe(path);
    expect(leadsTo(await cut(path))).toBe(path);
    expect(await shelf(app.db)).toEqual(after);
  });

  test('keeps too long a place in its field and writes nothing', async () => {
    const before = await shelf(app.db);
    const answer = await cut(path, { place: 'x'.repeat(61) });
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain('x'.repeat(61));
    expect(await shelf(app.db)).toEqual(before);
  });

  test('on a changed shelf writes nothing and shows the difference with a fresh plan', async () => {
    await countSheets(app.db, cast.fern.id, { sheets: 1, at: later(2) });
    const before = await shelf(app.db);
    expect(leadsTo(await app.get(`${path}/sheet`))).toBe(path);
    expect(words(await page(path))).toContain('Sheets of Fern: 1 left of the 2 it takes.');
    const fresh = leadsTo(await cut(path));
    expect(fresh).not.toBe(path);
    expect(await shelf(app.db)).toEqual(before);
    const shown = words(await page(fresh));
    expect(shown).toContain('This is a fresh plan');
    expect(shown).toContain('Sheets of Fern: 1 left of the 2 it takes.');
    expect(shown).toContain('parts fit');
  });

  test('written down twice on a changed shelf is planned afresh once', async () => {
    await countSheets(app.db, cast.fern.id, { sheets: 1, at: later(2) });
    const fields = { once: 'cut-form-002', place: '' };
    const sent = await Promise.all([cut(path, fields), cut(path, fields)]);
    expect(new Set([...sent, await cut(path, fields)].map(leadsTo)).size).toBe(1);
    expect(leadsTo(sent[0]!)).not.toBe(path);
    expect(await readPlan(app.db, 3)).toBeUndefined();
  });

  test('gives a spoiled part a replacement to plan', async () => {
    expect((await app.post(`${path}/spoiled`, { part: 'Front', wrong: 'x' })).status).toBe(404);
    await cut(path);
    const refused = await app.post(`${path}/spoiled`, { part: 'Front', wrong: ' ' });
    expect(refused.status).toBe(422);
    expect(await refused.text()).toContain('Give a word on what happened.');
    expect((await app.post(`${path}/spoiled`, { part: 'Door', wrong: 'x' })).status).toBe(404);
    expect(leadsTo(await app.post(`${path}/spoiled`, { part: 'Front', wrong: 'glue on the print' }))).toBe(
      path,
    );
    expect(words(await page(path))).toContain('glue on the print');
    const form = await page(`${home}/plans/new`);
    expect(form).toMatch(/name="blanks"[^>]*value="0"/);
    expect(form).toMatch(/name="parts\.0\.name"[^>]*value="Front"/);
    expect(form).toMatch(/name="parts\.0\.copies"[^>]*value="1"/);
    await asked({ blanks: '1', ...front({ name: 'Door', copies: '7' }) });
    const link = /href="([^"]+)"[^>]*>\s*Plan 1 replacement/.exec(await page(path))![1]!;
    expect(await page(link)).toMatch(/name="parts\.0\.name"[^>]*value="Front"/);
    expect(await page(link)).not.toContain('value="Door"');
    expect(await page(`${home}/plans/new?after=99`)).toContain('value="Door"');
    await app.post(`${path}/spoiled`, { part: 'Front', wrong: 'cut short' });
    const third = await app.post(`${path}/spoiled`, { part: 'Front', wrong: 'once too often' });
    expect(third.status).toBe(422);
    expect(words(await third.text())).toContain('All 2 of “Front” that were cut are spoiled already.');
    expect((await planOf(path)).spoiled).toHaveLength(2);
    const { part, at } = (await planOf(path)).spoiled[0]!;
    const back = () => app.post(`${path}/spoiled`, { _method: 'DELETE', part, at });
    expect(leadsTo(await back())).toBe(path);
    expect((await planOf(path)).spoiled).toHaveLength(1);
    await back();
    expect((await back()).status).toBe(404);
    await app.post(`/cuts/${(await planOf(path)).cut!.id}`, { _method: 'DELETE' });
    await cut(path);
    expect((await planOf(path)).spoiled).toEqual([]);
    expect(await page(link)).not.toContain('name="parts.0.name"');
  });
});

describe('a trial piece first', () => {
  test('cuts one envelope, and the rest is planned with what the trial changed', async () => {
    const path = await asked({ paper: `design-${cast.fern.id}`, ...front({ copies: '2' }) });
    const trial = leadsTo(await app.post(`${path}/trials`, {}));
    expect(words(await page(trial))).toMatch(/First one envelope, from 1 (sheet of Fern|offcut)\./);
    await cut(trial);
    expect((await listEnvelopes(app.db, project)).map((one) => one.trial)).toEqual([true]);
    await editProject(app.db, project, { recipe: { ...RECIPE, blank: size(8.25, 8.25) } }, later(3));
    expect(words(await page(path))).toContain('“Thank you, neighbours” was 7½ × 7½″ and is 8¼ × 8¼″ now');
    const form = await page(`${home}/plans/new`);
    expect(form).toMatch(/name="blanks"[^>]*value="2"/);
    expect(form).toMatch(/name="parts\.0\.copies"[^>]*value="2"/);
    const rest = await planOf(leadsTo(await app.post(`${path}/again`, {})));
    expect(rest.order.parts).toMatchObject([
      { id: 'envelope', ...size(8.25, 8.25), copies: 2 },
      { id: 'Front', copies: 2 },
    ]);
  });
});

describe('planning that takes longer', () => {
  /** Finishes when told to. */
  function slow(): { planner: Planner; stopped: () => boolean; finish: () => void } {
    let finish = (): void => {};
    let stopped = false;
    const planner: Planner = {
      ...DIRECT,
      start: ({ order, pieces }) => ({
        plan: new Promise((resolve) => {
          finish = () => resolve(planCuts(order, pieces, { work: 20, seed: 1 }));
        }),
        progress: () => ({
          placed: 2,
          unplaced: 1,
          newSheets: 2,
          newSheetArea: 0,
          bounds: { unplaced: 0, newSheetArea: size(12, 12).width ** 2 },
        }),
        stop: () => {
          stopped = true;
          finish();
        },
      }),
    };
    return { planner, stopped: () => stopped, finish: () => finish() };
  }

  /** A plan of which nothing is placed, though it might be. */
  const nothingOf = (order: Order, plan: CutPlan): CutPlan => ({
    ...plan,
    ...{
      used: [],
      patterns: [],
      steps: [],
      placed: 0,
      newSheets: 0,
      newSheetArea: 0,
      offcutAreaUsed: 0,
      worthLost: 0,
    },
    unplaced: order.parts.map(({ id, copies }) => ({ part: id, copies, remedies: [] })),
    bounds: { unplaced: 0, newSheetArea: 0 },
    proved: false,
  });

  test('shows the best so far, asks again by itself, and can be stopped', async () => {
    const { planner, stopped } = slow();
    await open(planner);
    const path = await asked();
    const answer = await app.get(path);
    expect(answer.headers.get('Refresh')).toBeNull();
    const html = await answer.text();
    expect(html).toContain('<noscript><meta http-equiv="refresh" content="1"/></noscript>');
    const shown = words(html);
    expect(shown).toContain('0 seconds gone');
    expect(shown).toContain('Best so far: 2 of 3 parts fit, 2 new sheets.');
    expect(shown).toContain('Whatever the plan: at least 1 new sheet.');
    const asking = { 'HX-Request': 'true' };
    const further = /id="planning-gone"[^>]* hx-get="([^"]+)"/.exec(html)![1]!;
    const same = await (await app.get(further, asking)).text();
    expect(same).toMatch(/^<p id="planning-gone"/);
    expect(same).not.toContain('planning-best');
    const fresh = await (await app.get(`${path}/planning?seen=waits`, asking)).text();
    expect(words(fresh)).toContain('Best so far: 2 of 3 parts fit');
    expect(leadsTo(await app.get(`${path}/planning`))).toBe(path);
    expect(leadsTo(await app.post(`${path}/planning`, { _method: 'DELETE' }))).toBe(path);
    expect(stopped()).toBe(true);
    expect((await app.get(further, asking)).headers.get('HX-Redirect')).toBe(path);
    expect(words(await page(path))).toContain('everything fits');
  });

  test('looks once more, for longer, where the first look leaves out what might fit', async () => {
    const times: number[] = [];
    await open({
      ...DIRECT,
      start: (request) => {
        times.push(request.options?.timeMs ?? 0);
        const { order, pieces } = request;
        const found = planCuts(order, pieces, { work: 20, seed: 1 });
        const plan = Promise.resolve(times.length === 1 ? nothingOf(order, found) : found);
        return { plan, progress: () => undefined, stop: () => {} };
      },
    });
    expect(words(await page(await asked()))).toContain('everything fits');
    expect(times).toEqual([1000, 5000]);
  });

  test('keeps the first plan where the longer look breaks down', async () => {
    const log = vi.spyOn(console, 'error').mockImplementation(() => {});
    let looks = 0;
    await open({
      ...DIRECT,
      start: (request) => {
        looks += 1;
        const { order, pieces } = request;
        const found = planCuts(order, pieces, { work: 20, seed: 1 });
        const plan =
          looks === 1
            ? Promise.resolve(nothingOf(order, found))
            : Promise.reject(new Error('worker out of memory'));
        return { plan, progress: () => undefined, stop: () => {} };
      },
    });
    const path = await asked();
    expect(looks).toBe(2);
    expect((await planOf(path)).plan!.placed).toBe(0);
    expect((await app.get(path)).status).toBe(200);
    expect(log).toHaveBeenCalled();
    log.mockRestore();
  });

  test('is left to its turn when it is stopped while it waits', async () => {
    await open({
      ...DIRECT,
      start: () => ({ plan: new Promise(() => {}), progress: () => undefined, stop: () => {} }),
    });
    const path = await asked();
    expect(leadsTo(await app.post(`${path}/planning`, { _method: 'DELETE' }))).toBe(path);
    expect(words(await page(path))).toContain('It waits for its turn.');
  });

  test('says so when too many are waiting, and keeps what was asked', async () => {
    let busy = true;
    await open({ ...DIRECT, start: (request) => (busy ? 'busy' : DIRECT.start(request)) });
    const full = await asked();
    expect(full).toMatch(/\?busy=yes$/);
    const waiting = await app.get(full);
    expect(waiting.status).toBe(503);
    expect(words(await waiting.text())).toContain('Plan it now');
    const path = full.replace(/\?.*/, '');
    const answer = await app.post(`${path}/planning`, {});
    expect(answer.status).toBe(503);
    expect(words(await answer.text())).toContain('Too many plans are waiting.');
    busy = false;
    expect(leadsTo(await app.post(`${path}/planning`, {}))).toBe(path);
    expect(words(await page(path))).toContain('everything fits');
  });

  test.each([
    [
      'a plan that fails the judge',
      (plan: ReturnType<typeof planCuts>) => ({ ...plan, placed: plan.placed + 1 }),
    ],
    [
      'a planner that breaks down',
      () => {
        throw new Error('out of paper');
      },
    ],
  ])('%s is logged, not shown and not kept', async (_, spoil) => {
    const log = vi.spyOn(console, 'error').mockImplementation(() => {});
    await open({
      ...DIRECT,
      start: ({ order, pieces }) => ({
        ...(DIRECT.start({ order, pieces, options: { timeMs: 1 } }) as Exclude<
          ReturnType<Planner['start']>,
          'busy'
        >),
        plan: Promise.resolve().then(() => spoil(planCuts(order, pieces, { work: 20, seed: 1 }))),
      }),
    });
    const path = await asked();
    const answer = await app.get(path);
    expect(answer.status).toBe(500);
    expect(words(await answer.text())).toContain('that’s our fault');
    expect((await planOf(path)).plan).toBeNull();
    expect(log).toHaveBeenCalled();
    expect((await cut(path)).status).toBe(404);
    log.mockRestore();
  });
});
