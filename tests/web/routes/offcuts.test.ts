/** Offcuts through their forms: several in a row, gone and put back, counted again, put right. */
import { beforeEach, describe, expect, test } from 'vitest';
import { inches } from '#shared/length.ts';
import { takePiece } from '#stores/cuts.ts';
import { binOffcut } from '#stores/movements.ts';
import { listOffcuts, readOffcut } from '#stores/offcuts.ts';
import { type App, openApp } from '#tests/support/app.ts';
import { type Cast, fillShelf, later, SQUARE_8 } from '#tests/support/cast.ts';
import { rowCounts } from '#tests/support/shelf.ts';

let app: App;
let cast: Cast;
beforeEach(async () => {
  app = await openApp();
  cast = await fillShelf(app.db);
});

const SCRIPT = { 'HX-Request': 'true' };
const follow = async (answer: Response, headers = {}): Promise<string> =>
  (await app.get(answer.headers.get('Location')!, headers)).text();

describe('adding', () => {
  const scrap = (): Record<string, string> => ({
    once: 'offcut-form-01',
    design: `${cast.hem.id}`,
    width: '12',
    height: '4 3/8',
    count: '2',
    border: 'on',
    place: 'the flat box',
    note: '',
  });

  test('shows the code to pencil on its back and is ready for the next', async () => {
    const answer = await app.post('/offcuts', scrap());
    expect(answer.headers.get('Location')).toBe('/offcuts/new?after=4');
    const added = (await readOffcut(app.db, 4))!;
    expect(added).toMatchObject({ width: inches(12), height: inches(4.375), border: true, count: 2 });
    const next = await follow(answer);
    expect(next).toContain(`<span class="pencil">${added.code}</span>`);
    expect(next).toContain('the back of all 2');
    expect(next).toMatch(/<input id="design"[^>]*value="Meadow walk · Hem"/);
    expect(next).toContain('value="the flat box"');
    expect(next).toMatch(/<input(?=[^>]*name="width")(?=[^>]*value="")(?=[^>]*autofocus)/);
  });

  test('the same form twice puts one on the shelf', async () => {
    await app.post('/offcuts', scrap());
    const again = await app.post('/offcuts', scrap());
    expect(again.headers.get('Location')).toBe('/offcuts/new?after=4');
    expect(await listOffcuts(app.db)).toHaveLength(4);
  });

  test('a border stays only with a print that has one', async () => {
    await app.post('/offcuts', { ...scrap(), design: `${cast.fern.id}` });
    expect((await readOffcut(app.db, 4))!.border).toBe(false);
  });

  test('a print without an up may lie across its sheet, one with an up may not', async () => {
    const across = { ...scrap(), width: '11', height: '8' };
    expect((await app.post('/offcuts', { ...across, design: `${cast.white.id}` })).status).toBe(303);
    const tall = { ...scrap(), once: 'offcut-form-02', design: `${cast.hare.id}`, height: '12 1/2' };
    const answer = await app.post('/offcuts', tall);
    expect(answer.status).toBe(422);
    expect(await answer.text()).toMatch(
      /id="height-note" class="problem"[^>]*>A whole sheet of it is only 12 × 12″/,
    );
  });

  test.each<[string, Record<string, string>, string]>([
    ['no design', { design: '' }, 'Give the design it is cut from.'],
    ['a design that never was', { design: '99' }, 'No design is called “99”.'],
    ['words that no design has', { design: 'Fern of the sea' }, 'No design is called “Fern of the sea”.'],
    ['nonsense for its width', { width: '4 7/' }, '“4 7/” isn’t a length'],
    ['no width at all', { width: '0 in' }, 'more than zero'],
    ['none of it', { count: '0' }, 'whole number from 1'],
    ['a place as long as a letter', { place: 'x'.repeat(61) }, 'under 60 characters'],
  ])('is refused with %s, keeping what was typed', async (_, wrong, message) => {
    const before = await rowCounts(app.db);
    const answer = await app.post('/offcuts', { ...scrap(), ...wrong, note: 'a “torn” <b>corner</b> ✂️' });
    const page = await answer.text();
    expect(answer.status).toBe(422);
    expect(page).toContain(message);
    expect(page).toContain('value="a “torn” &lt;b&gt;corner&lt;/b&gt; ✂️"');
    expect(await rowCounts(app.db)).toEqual(before);
  });

  test.each(['Meadow walk · Hem', 'hem', 'MEADOW WALK HEM', 'Hem (Meadow walk)', 'he'])(
    'takes its design by name: %s',
    async (design) => {
      expect((await app.post('/offcuts', { ...scrap(), design })).status).toBe(303);
      expect((await readOffcut(app.db, 4))!.design.name).toBe('Hem');
    },
  );

  test('a name of several comes back with those to choose from', async () => {
    const answer = await app.post('/offcuts', { ...scrap(), design: 'meadow' });
    const html = await answer.text();
    expect(answer.status).toBe(422);
    expect(html).toContain('More than one design is called so.');
    const select = /<select id="design".*?<\/select>/s.exec(html)![0];
    expect([...select.matchAll(/<option value="(\d*)">([^<,]+)/g)].map(([, , name]) => name)).toEqual([
      'Meadow walk · Hem',
      'Meadow walk · Hare',
      'Meadow walk · Fern',
      'none of these',
    ]);
    expect(html).toContain('value="the flat box"');
    const [, chosen] = /<option value="(\d+)">Meadow walk · Hare/.exec(select)!;
    await app.post('/offcuts', { ...scrap(), design: chosen!, width: '5' });
    expect((await readOffcut(app.db, 4))!.design.name).toBe('Hare');
  });

  test('as a name is typed the few that are likely are offered', async () => {
    const likely = async (path: string): Promise<string> => (await app.get(path, SCRIPT)).text();
    expect(await likely('/likely/designs?design=mead+ha')).toBe(
      '<option value="Meadow walk · Hare"></option>',
    );
    expect(await likely('/likely/designs?design=%22%2A')).toBe('');
    expect(await likely('/likely/places?place=tray')).toBe(
      '<option value="tray 1"></option><option value="tray 2"></option>',
    );
    expect((await app.get('/likely/designs?design=fern')).headers.get('Location')).toBe('/find?q=fern');
    expect((await app.get('/likely/else?x=fern')).status).toBe(404);
  });

  test('with nothing filled in asks for everything', async () => {
    const page = await (await app.post('/offcuts', {})).text();
    for (const field of ['design', 'width', 'height', 'count']) {
      expect(page).toMatch(new RegExp(`id="${field}-note" class="problem"`));
    }
  });

  test('before there is any design leads to the first pad', async () => {
    const empty = await openApp();
    expect(await (await empty.get('/offcuts/new')).text()).toContain('href="/pads/new"');
  });
});

describe('gone', () => {
  const form = (rest: Record<string, string> = {}): Record<string, string> => ({
    _method: 'DELETE',
    back: '/stash?place=tray+1',
    ...rest,
  });

  test('takes it off the shelf, and the way back stands where she was', async () => {
    const { corner } = cast;
    const answer = await app.post(`/offcuts/${corner.id}`, form({ count: '1' }));
    expect(answer.headers.get('Location')).toBe(`/stash?place=tray+1&gone=${corner.id}#offcuts`);
    expect((await readOffcut(app.db, corner.id))!.count).toBe(0);
    expect(await follow(answer)).toContain(`action="/offcuts/${corner.id}/returns"`);
    const back = await app.post(`/offcuts/${corner.id}/returns`, { back: '/stash?place=tray+1' });
    expect(back.headers.get('Location')).toBe(`/stash?place=tray+1#offcut-${corner.id}`);
    expect((await readOffcut(app.db, corner.id))!.count).toBe(1);
    expect(await follow(answer)).not.toContain('Put back');
  });

  test('changes only its tile where there is script', async () => {
    const { corner } = cast;
    const answer = await app.post(`/offcuts/${corner.id}`, form(), SCRIPT);
    const tile = await follow(answer, SCRIPT);
    expect(tile).toMatch(/^<div class="about gone">/);
    expect(tile).toContain('Put back');
    const back = await app.post(`/offcuts/${corner.id}/returns`, { back: '/stash' }, SCRIPT);
    expect(await follow(back, SCRIPT)).toMatch(/^<div class="about">.*Gone/s);
  });

  test('one of several leaves the others', async () => {
    const { strips } = cast;
    const answer = await app.post(`/offcuts/${strips.id}`, form({ once: 'gone-form-01', count: '1' }));
    await app.post(`/offcuts/${strips.id}`, form({ once: 'gone-form-01', count: '1' }));
    expect((await readOffcut(app.db, strips.id))!.count).toBe(2);
    expect(await follow(answer)).toContain('Gone; 2 left.');
  });

  test('in a second window, that one is told', async () => {
    const { strips } = cast;
    await app.post(`/offcuts/${strips.id}`, form({ count: '2' }));
    const second = await app.post(`/offcuts/${strips.id}`, form({ count: '3' }));
    expect(second.status).toBe(409);
    expect(await second.text()).toContain('Only 1 of them were left.');
    await app.post(`/offcuts/${strips.id}`, form({ count: '1' }));
    const third = await app.post(`/offcuts/${strips.id}`, form({ count: '1' }), SCRIPT);
    expect(third.status).toBe(409);
    expect(await third.text()).toMatch(/^<div class="about gone">.*It was gone already\./s);
    expect((await readOffcut(app.db, strips.id))!.count).toBe(0);
  });

  test.each(['0', '-1', '1.5', 'all'])('is refused for %s of them', async (count) => {
    const answer = await app.post(`/offcuts/${cast.strips.id}`, form({ count }));
    expect(answer.status).toBe(422);
    expect((await readOffcut(app.db, cast.strips.id))!.count).toBe(3);
  });

  test('can’t be put back when it never went, or was counted since', async () => {
    const { corner, strips } = cast;
    const never = await app.post(`/offcuts/${corner.id}/returns`, {});
    expect(never.status).toBe(409);
    await binOffcut(app.db, strips.id, { at: later(1) });
    await app.post(`/offcuts/${strips.id}/counts`, { counted: '1' });
    const counted = await app.post(`/offcuts/${strips.id}/returns`, {});
    expect(counted.status).toBe(409);
    expect(await counted.text()).toContain(`a count of offcut ${strips.code}`);
  });
});

describe('its page', () => {
  test('shows code, size and place, and what became of it', async () => {
    const page = await (await app.get(`/offcuts/${cast.strips.id}`)).text();
    expect(page).toContain(cast.strips.code);
    expect(page).toContain('12 × 3″, 3 alike');
    expect(page).toContain('tray 1');
    expect(page).toContain('+3');
  });

  test('says what it was cut for', async () => {
    const { corner } = cast;
    const piece = { design: corner.design.id, offcut: corner.id };
    await takePiece(app.db, {
      piece,
      wanted: SQUARE_8,
      copies: 1,
      project: { title: 'Spring' },
      at: later(1),
    });
    const page = await (await app.get(`/offcuts/${corner.id}`)).text();
    expect(page).toMatch(/It was cut for <a href="\/projects\/1">Spring<\/a>/);
    expect(page).not.toContain('Put back');
  });

  test('says why it is not there any more', async () => {
    const path = `/offcuts/${cast.corner.id}`;
    await app.post(`${path}/counts`, { counted: '0' });
    expect(await (await app.get(path)).text()).toContain('None was left when it was counted.');
    await app.post(`${path}/counts`, { counted: '1' });
    await app.post(path, { _method: 'DELETE' });
    expect(await (await app.get(path)).text()).toContain(`action="${path}/returns"`);
  });

  test('counted again is as many as were counted', async () => {
    await app.post(`/offcuts/${cast.strips.id}/counts`, { counted: '5' });
    expect((await readOffcut(app.db, cast.strips.id))!.count).toBe(5);
    const wrong = await app.post(`/offcuts/${cast.strips.id}/counts`, { counted: 'five' });
    expect(wrong.status).toBe(422);
    expect(await wrong.text()).toContain('value="five"');
  });

  test('is put right', async () => {
    const path = `/offcuts/${cast.lying.id}`;
    const fields = { _method: 'PUT', width: '8 3/4', height: '4', place: 'tray 3', note: 'creased' };
    expect((await app.post(path, fields)).headers.get('Location')).toBe(path);
    expect(await readOffcut(app.db, cast.lying.id)).toMatchObject({
      width: inches(8.75),
      place: 'tray 3',
      note: 'creased',
      count: 1,
    });
    expect((await app.post(path, { ...fields, width: '13' })).status).toBe(422);
    expect((await app.post(path, { ...fields, width: '' })).status).toBe(422);
  });
});

test.each(['/offcuts/99', '/offcuts/none', '/offcuts/99/edit', '/offcuts/99/about'])(
  '%s is not here',
  async (path) => {
    expect((await app.get(path)).status).toBe(404);
  },
);

test.each([
  '/offcuts/99/counts',
  '/offcuts/99/returns',
  '/designs/99/purchases',
  '/designs/99/counts',
  '/pads/99/designs',
])('nothing is posted to %s', async (path) => {
  expect((await app.post(path, {})).status).toBe(404);
});
