/** Pads and the designs added to them through their forms, good and bad. */
import { beforeEach, describe, expect, test } from 'vitest';
import { inches, millimetres } from '#shared/length.ts';
import { listDesigns, readDesign } from '#stores/designs.ts';
import { listPads, readPad } from '#stores/pads.ts';
import { type App, type Fields, openApp } from '#tests/support/app.ts';
import { fillShelf } from '#tests/support/cast.ts';
import { rowCounts, shelf } from '#tests/support/shelf.ts';

let app: App;
beforeEach(async () => {
  app = await openApp();
});

const PAD: Record<string, string> = {
  once: 'pad-form-0001',
  name: 'Harbour lights',
  kind: 'patterned',
  width: '12',
  height: '12 in',
  weight: '80 lb cover',
  low: '6',
  source: 'swapped for two ribbons',
  note: '',
};

const DESIGN: Record<string, string> = {
  once: 'design-form-0001',
  name: 'Mooring',
  sheets: '7',
  direction: 'one edge',
  border: '1 1/2',
  motif: 'waves',
  ground: '#E8F0F2',
  inks: '2',
  ink1: '#2f6f86',
  ink2: '#7fb0bd',
  ink3: '#000000',
};

describe('a pad', () => {
  test('is added with what its label says, and its designs come next', async () => {
    const answer = await app.post('/pads', PAD);
    expect(answer.status).toBe(303);
    expect(answer.headers.get('Location')).toBe('/pads/1/designs/new');
    const { pad } = (await readPad(app.db, 1))!;
    expect(pad).toMatchObject({
      name: 'Harbour lights',
      sheet: { width: inches(12), height: inches(12) },
      lowMark: 6,
    });
    // By the definition of basis weight (ream of 500, basic sheet 20 × 26 in) 80 lb cover is 216.3 g/m².
    expect(pad.grammage).toBeCloseTo((80 * 1406.1392) / 520, 2);
  });

  test('is added once, however often its form is sent', async () => {
    await app.post('/pads', PAD);
    const again = await app.post('/pads', PAD);
    expect(again.headers.get('Location')).toBe('/pads/1/designs/new');
    expect(await listPads(app.db, { limit: 20 })).toHaveLength(1);
  });

  test('needs no weight', async () => {
    await app.post('/pads', { ...PAD, weight: '' });
    expect((await readPad(app.db, 1))!.pad.grammage).toBeNull();
  });

  test.each<[string, Record<string, string>, string]>([
    ['no name', { name: '   ' }, 'Give the pad a name.'],
    ['a name that only a machine can type', { name: '\u0000' }, 'Give the pad a name.'],
    ['a note as long as a novel', { note: 'word '.repeat(401) }, 'under 2000 characters'],
    ['a width of nothing', { width: '0' }, 'more than zero'],
    ['a negative height', { height: '-4' }, 'can’t be negative'],
    ['a sheet larger than a house', { width: '101 in' }, 'That is more than 100″.'],
    ['millimetres without saying so', { width: '210' }, '210 inches? Type 210 mm if you mean millimetres'],
    [
      'the name of a sheet for one side',
      { width: 'A4' },
      'Type 210 mm for one side and 297 mm for the other',
    ],
    ['both sides in one field', { width: '6 x 8' }, 'Type 6 for one side and 8 for the other'],
    ['a huge number', { width: '9'.repeat(200) }, 'isn’t a length'],
    ['words for a size', { height: 'quite tall' }, '“quite tall” isn’t a length'],
    ['pounds of no grade', { weight: '80 lb' }, 'Say which grade'],
    ['half a sheet as its mark', { low: '2.5' }, 'whole number'],
    ['a kind that is none', { kind: 'parchment' }, 'Choose one of'],
  ])('is refused with %s, keeping what was typed', async (_, wrong, message) => {
    const answer = await app.post('/pads', { ...PAD, ...wrong });
    const page = await answer.text();
    expect(answer.status).toBe(422);
    expect(page).toContain(message);
    expect(page).toContain('value="swapped for two ribbons"');
    expect(await listPads(app.db, { limit: 20 })).toEqual([]);
  });

  test('tells all its problems at once, and asks for every field that is missing', async () => {
    const page = await (await app.post('/pads', { once: PAD.once! })).text();
    for (const field of ['name', 'kind', 'width', 'height', 'low']) {
      expect(page).toMatch(new RegExp(`id="${field}-note" class="problem"`));
    }
  });

  test('with a field that came twice is refused beside that field', async () => {
    const fields: Fields = [...Object.entries(PAD), ['width', '8']];
    const answer = await app.post('/pads', fields);
    expect(answer.status).toBe(422);
    expect(await answer.text()).toMatch(/id="width-note" class="problem"[^>]*>This came twice/);
    expect(await listPads(app.db, { limit: 20 })).toEqual([]);
  });

  test('may be called anything, which is shown as text', async () => {
    const name = '<script>alert("1")</script> 🌿 & co';
    await app.post('/pads', { ...PAD, name });
    for (const path of ['/pads/1', '/stash', '/pads/1/designs/new', '/pads/1/edit']) {
      const page = await (await app.get(path)).text();
      expect(page).toContain('&lt;script&gt;');
      expect(page).toContain('🌿 &amp; co');
      expect(page).not.toContain('<script>alert');
    }
  });

  test('is put right', async () => {
    await app.post('/pads', PAD);
    const edit = await (await app.get('/pads/1/edit')).text();
    expect(edit).toContain('value="216 g/m²"');
    await app.post('/pads/1', { ...PAD, _method: 'PUT', name: 'Harbour', width: '210 mm', height: '297 mm' });
    const { pad } = (await readPad(app.db, 1))!;
    expect(pad.name).toBe('Harbour');
    expect(pad.sheet).toEqual({ width: millimetres(210), height: millimetres(297) });
  });
});

describe('the sheets of a pad', () => {
  /** The sides of A4 in millimetres: ISO 216:2007, trimmed sizes of the A series. */
  const A4 = { width: millimetres(210), height: millimetres(297) };
  const A4_TYPED = { ...PAD, width: '210 mm', height: '297 mm' };

  test.each([
    ['12 × 12', { width: inches(12), height: inches(12) }],
    ['8 × 8', { width: inches(8), height: inches(8) }],
    ['6 × 6', { width: inches(6), height: inches(6) }],
    // Letter is 8½ × 11 in: ANSI/ASME Y14.1, size A.
    ['Letter', { width: inches(8.5), height: inches(11) }],
    ['A4', A4],
  ])('are %s by one choice, whatever else stands in the fields', async (size, sheet) => {
    const { width: _, ...unsaid } = PAD;
    const answer = await app.post('/pads', { ...unsaid, size, height: 'quite tall' });
    expect(answer.status).toBe(303);
    expect((await readPad(app.db, 1))!.pad.sheet).toEqual(sheet);
    const edit = await (await app.get('/pads/1/edit')).text();
    expect(edit).toMatch(new RegExp(`<input type="radio" name="size" value="${size}" checked`));
  });

  test('of A4 show in millimetres to a reader of inches', async () => {
    await app.post('/pads', { ...PAD, size: 'A4' });
    expect(await (await app.get('/pads/1')).text()).toContain('210 × 297 mm');
    expect(await (await app.get('/pads/new')).text()).toContain('A4, 210 × 297 mm');
  });

  test('of no common size are typed', async () => {
    await app.post('/pads', { ...PAD, size: 'own', width: '7', height: '9 1/2' });
    expect((await readPad(app.db, 1))!.pad.sheet).toEqual({ width: inches(7), height: inches(9.5) });
  });

  test('of a size that nobody offers are asked about', async () => {
    const answer = await app.post('/pads', { ...PAD, size: 'A3' });
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain('Choose one of: 12 × 12');
  });

  test('may measure differently and have a strip, which the pad then says', async () => {
    const asIs = { measuredWidth: '209.5 mm', stripEdge: 'top', stripDepth: '1/2' };
    await app.post('/pads', { ...PAD, size: 'A4', ...asIs });
    const { pad } = (await readPad(app.db, 1))!;
    expect(pad.sheet).toEqual(A4);
    expect(pad.measured).toEqual({ width: millimetres(209.5) });
    expect(pad.strip).toEqual({ edge: 'top', depth: inches(1 / 2) });
    const page = await (await app.get('/pads/1')).text();
    expect(page).toContain('A sheet really measures 209.5 × 297 mm.');
    expect(page).toContain('½″ along its top edge can’t be used');
    expect(page).toContain('209.5 × 284.3 mm is left');
    const edit = await (await app.get('/pads/1/edit')).text();
    expect(edit).toMatch(/<details class="as-is" open/);
    expect(edit).toContain('value="209.5 mm"');
  });

  test('are what they are sold by where nothing is said', async () => {
    await app.post('/pads', PAD);
    expect((await readPad(app.db, 1))!.pad).toMatchObject({ measured: {}, strip: null });
    expect(await (await app.get('/pads/1')).text()).not.toContain('really measures');
    expect(await (await app.get('/pads/1/edit')).text()).toContain('<details class="as-is">');
  });

  test.each<[string, Record<string, string>, string, string]>([
    [
      'a slipped point',
      { measuredWidth: '20.95 mm' },
      'measuredWidth',
      'far off the 210 mm of its size above',
    ],
    ['sides swapped', { measuredWidth: '297 mm' }, 'measuredWidth', 'about its other side'],
    ['a side as long as a room', { measuredHeight: '120 in' }, 'measuredHeight', 'more than 100″'],
    ['words for a side', { measuredHeight: 'a bit less' }, 'measuredHeight', 'isn’t a length'],
    ['a strip of no edge', { stripDepth: '12' }, 'stripEdge', 'Along which edge'],
    ['an edge without a depth', { stripEdge: 'left' }, 'stripDepth', 'How deep'],
    ['a strip of nothing', { stripEdge: 'left', stripDepth: '0' }, 'stripDepth', 'more than zero'],
    [
      'a strip that is all of it',
      { measuredWidth: '209.5 mm', stripEdge: 'left', stripDepth: '209.5 mm' },
      'stripDepth',
      'leaves no paper: the sheet is only 209.5 mm wide',
    ],
  ])('are refused with %s, beside its field', async (_, wrong, field, message) => {
    await app.db
      .updateTable('settings')
      .set({ unit: wrong.measuredHeight === '120 in' ? 'in' : 'mm' })
      .execute();
    const answer = await app.post('/pads', { ...A4_TYPED, ...wrong });
    expect(answer.status).toBe(422);
    const page = await answer.text();
    expect(page).toMatch(new RegExp(`id="${field}-note" class="problem"[^>]*>[^<]*${message}`));
    expect(page).toMatch(/<details class="as-is" open/);
    for (const typed of Object.values(wrong)) expect(page).toContain(`value="${typed}"`);
    expect(await listPads(app.db, { limit: 20 })).toEqual([]);
  });

  test('keep a border’s depth as it was typed, whatever the strip takes of it', async () => {
    await app.post('/pads', { ...PAD, stripEdge: 'bottom', stripDepth: '1' });
    await app.post('/pads/1/designs', DESIGN);
    const [design] = await listDesigns(app.db);
    expect(design!.print).toEqual({ direction: 'one edge', border: inches(1 / 2) });
    expect(await (await app.get('/pads/1')).text()).toContain('½″ of it above the strip');
    const edit = await (await app.get('/designs/1/edit')).text();
    expect(edit).toMatch(/name="border"[^>]*value="1 1\/2"/);
  });
});

describe('a design', () => {
  beforeEach(() => app.post('/pads', PAD));

  test('is added with its sheets, and the form for the next one keeps its print and colours', async () => {
    const answer = await app.post('/pads/1/designs', DESIGN);
    expect(answer.headers.get('Location')).toBe('/pads/1/designs/new?after=1');
    expect(await readDesign(app.db, 1)).toMatchObject({
      name: 'Mooring',
      sheets: 7,
      print: { direction: 'one edge', border: inches(1.5) },
      doubleSided: false,
      swatch: { motif: 'waves', ground: '#e8f0f2', inks: ['#2f6f86', '#7fb0bd'] },
    });
    const next = await (await app.get('/pads/1/designs/new?after=1')).text();
    expect(next).toContain('Mooring');
    expect(next).toMatch(/<option value="one edge" selected/);
    expect(next).toContain('value="1 1/2"');
    expect(next).toMatch(/name="ground" value="#e8f0f2"/);
    expect(next).toMatch(/<input(?=[^>]*name="name")(?=[^>]*value="")(?=[^>]*autofocus)/);
  });

  test('has a border only where its print has one edge', async () => {
    await app.post('/pads/1/designs', { ...DESIGN, direction: 'any way', border: 'whatever' });
    expect((await readDesign(app.db, 1))!.print).toEqual({ direction: 'any way' });
  });

  test.each<[string, Record<string, string>, string]>([
    ['no name', { name: '' }, 'Give the design a name.'],
    ['no depth for its border', { border: '' }, 'Type a length'],
    ['a border deeper than its sheet', { border: '12 1/8' }, 'That is more than 12″.'],
    ['fewer sheets than none', { sheets: '-1' }, 'whole number'],
    ['a thousand pads of sheets', { sheets: '10001' }, 'whole number'],
    ['a motif nobody draws', { motif: 'unicorn' }, 'Choose one of'],
    ['a colour in words', { ground: 'moss' }, 'Write the colour like'],
    ['a script for a colour', { ink1: '"><script>' }, 'Write the colour like'],
    ['four inks', { inks: '4' }, 'whole number from 1 to 3'],
    ['a direction that is none', { direction: 'sideways' }, 'Choose one of'],
  ])('is refused with %s, and nothing is written', async (_, wrong, message) => {
    const before = await rowCounts(app.db);
    const answer = await app.post('/pads/1/designs', { ...DESIGN, ...wrong });
    const page = await answer.text();
    expect(answer.status).toBe(422);
    expect(page).toContain(message);
    expect(page).not.toContain('<script>"');
    expect(await listDesigns(app.db)).toEqual([]);
    expect(await rowCounts(app.db)).toEqual(before);
  });

  test('shows its look while colours are chosen, and waits while they can’t be read', async () => {
    const look = await app.get(`/pads/1/look?${new URLSearchParams(DESIGN)}`, { 'HX-Request': 'true' });
    expect(await look.text()).toMatch(/^<div id="look">.*#2f6f86/s);
    const typing = await app.get(`/pads/1/look?${new URLSearchParams({ ...DESIGN, ground: '#e8' })}`);
    expect(typing.status).toBe(204);
  });
});

describe('more of a pad', () => {
  test('is added to each design that was bought', async () => {
    const { fern, hare, hem } = await fillShelf(app.db);
    const once = 'bought-form-01';
    const fields = {
      once,
      [`bought-${fern.id}`]: '10',
      [`bought-${hare.id}`]: '',
      [`bought-${hem.id}`]: '2',
    };
    expect((await app.post(`/pads/${fern.pad.id}/purchases`, fields)).status).toBe(303);
    expect((await app.post(`/pads/${fern.pad.id}/purchases`, fields)).status).toBe(303);
    expect(await shelf(app.db)).toMatchObject({ 'Fern 1': 15, 'Hare 2': 3, 'Hem 3': 4 });
  });

  test('is refused where nothing was bought, or one count is nonsense', async () => {
    const { fern, hare } = await fillShelf(app.db);
    const before = await rowCounts(app.db);
    const none = await app.post(`/pads/${fern.pad.id}/purchases`, {});
    expect(none.status).toBe(422);
    expect(await none.text()).toContain('Say how many sheets');
    const fields = { [`bought-${fern.id}`]: '10', [`bought-${hare.id}`]: 'some' };
    const some = await app.post(`/pads/${fern.pad.id}/purchases`, fields);
    expect(some.status).toBe(422);
    expect(await some.text()).toContain('value="some"');
    expect(await rowCounts(app.db)).toEqual(before);
  });
});

test.each(['/pads/99', '/pads/0', '/pads/abc', '/pads/1e3', '/pads/99/edit', '/pads/99/designs/new'])(
  '%s is not here, and the page says where to go',
  async (path) => {
    const answer = await app.get(path);
    expect(answer.status).toBe(404);
    expect(await answer.text()).toContain('href="/stash"');
  },
);
