/** The stash as a whole: the shelf searched, what runs low, the list to print. */
import { beforeEach, describe, expect, test } from 'vitest';
import { addCardSize } from '#stores/card-sizes.ts';
import { addDesign } from '#stores/designs.ts';
import { countSheets } from '#stores/movements.ts';
import { addOffcut } from '#stores/offcuts.ts';
import { addPad } from '#stores/pads.ts';
import { type App, openApp } from '#tests/support/app.ts';
import { CARD, type Cast, FERN, fillShelf, later, MEADOW, scrap } from '#tests/support/cast.ts';

let app: App;
beforeEach(async () => {
  app = await openApp();
});

const page = async (path: string, headers = {}): Promise<string> => (await app.get(path, headers)).text();

/** Codes of the tiles, in the order in which they stand. */
const shown = (html: string): string[] =>
  [...html.matchAll(/id="offcut-\d+".*?<a class="code"[^>]*>([^<]+)</gs)].map((found) => found[1]!);

test('an empty stash leads to the first pad', async () => {
  const html = await page('/stash');
  expect(html).toContain('Nothing lies on the shelf yet.');
  expect(html).toContain('href="/pads/new"');
  expect(await page('/stash/low')).toContain('Nothing runs low.');
  expect((await app.get('/stash/list')).status).toBe(200);
});

describe('a filled stash', () => {
  let cast: Cast;
  beforeEach(async () => {
    cast = await fillShelf(app.db);
  });

  test('tells what there is, pad by pad', async () => {
    const html = await page('/stash');
    expect(html).toMatch(
      /<strong>30 sheets<\/strong> in <a href="#pads">2 pads<\/a>, and <a href="#offcuts">5 offcuts/,
    );
    expect(html).toContain('Meadow walk');
    expect(shown(html)).toEqual([cast.lying.code, cast.strips.code, cast.corner.code]);
  });

  test('draws offcuts to one scale', async () => {
    const html = await page('/stash');
    const drawn = [...html.matchAll(/class="d-paper" viewBox="-1 -1 ([\d.]+) ([\d.]+)"/g)];
    const [lying, strips, corner] = drawn.map(([, w, h]) => [Number(w) - 2, Number(h) - 2] as const);
    expect(strips![0] / strips![1]).toBeCloseTo(4, 1);
    expect(lying![0] / strips![0]).toBeCloseTo(9 / 12, 1);
    expect(corner![1] / strips![1]).toBeCloseTo(8.5 / 3, 1);
  });

  test.each<[string, (cast: Cast) => string[]]>([
    ['width=8&height=8', ({ corner }) => [corner.code]],
    // 3 × 12 fits the strips turned, since ferns may lie any way.
    ['width=3&height=12', ({ strips }) => [strips.code]],
    // 4 × 9 does not fit the hares turned: they stand upright.
    ['width=4&height=9', () => []],
    ['width=9&height=4', ({ lying }) => [lying.code]],
    ['width=8.5', ({ lying, strips, corner }) => [lying.code, strips.code, corner.code]],
    ['width=215.9+mm&height=215.9+mm', ({ corner }) => [corner.code]],
    ['design=2', ({ lying }) => [lying.code]],
    ['design=hare', ({ lying }) => [lying.code]],
    ['design=Meadow+walk', ({ lying, strips, corner }) => [lying.code, strips.code, corner.code]],
    ['design=fern&sort=smallest', ({ strips, corner }) => [strips.code, corner.code]],
    ['sort=largest', ({ corner, lying, strips }) => [corner.code, lying.code, strips.code]],
    ['sort=design&from=1', ({ corner, lying }) => [corner.code, lying.code]],
    ['place=tray', ({ lying, strips, corner }) => [lying.code, strips.code, corner.code]],
    ['kind=cardstock', () => []],
    ['place=tray+2', ({ lying }) => [lying.code]],
    ['place=tray+1&height=3&design=1&kind=patterned', ({ strips, corner }) => [strips.code, corner.code]],
    [
      'width=&height=&design=&kind=&place=',
      ({ lying, strips, corner }) => [lying.code, strips.code, corner.code],
    ],
  ])('finds what is asked for: %s', async (query, codes) => {
    expect(shown(await page(`/stash?${query}`))).toEqual(codes(cast));
  });

  test('says so when nothing is like that', async () => {
    expect(await page('/stash?width=11&height=11')).toContain('Nothing on the shelf is like that.');
  });

  test('what has no place yet is found and put away, and the way leads back', async () => {
    const loose = await addOffcut(app.db, {
      design: cast.fern.id,
      offcut: scrap(2, 3, { place: '' }),
      count: 1,
      at: later(1),
    });
    const nowhere = `/stash?place=${encodeURIComponent('—')}`;
    const html = await page(nowhere);
    expect(shown(html)).toEqual([loose!.code]);
    const [, edit] = /href="(\/offcuts\/\d+\/edit[^"]*)">say where/.exec(html)!;
    expect(await page(edit!)).toContain(`name="back" value="${nowhere}"`);
    const fields = { _method: 'PUT', width: '2', height: '3', place: 'tray 9', note: '', back: nowhere };
    const answer = await app.post(`/offcuts/${loose!.id}`, fields);
    expect(answer.headers.get('Location')).toBe(nowhere);
    expect(shown(await page(nowhere))).toEqual([]);
  });

  test('what is gone is not shown', async () => {
    await app.post(`/offcuts/${cast.corner.id}`, { _method: 'DELETE' });
    expect(shown(await page('/stash?width=8&height=8'))).toEqual([]);
  });

  test('a search being typed gets the shelf alone, and its problems beside the fields', async () => {
    const found = await app.get('/stash?width=8&height=8', { 'HX-Request': 'true' });
    expect(await found.text()).toMatch(/^<div id="found">/);
    const typing = await app.get('/stash?width=8+x', { 'HX-Request': 'true' });
    expect(typing.status).toBe(422);
    expect(await typing.text()).toMatch(
      /<p id="width-note" class="problem"[^>]*hx-swap-oob="true">“8 x” isn’t a length/,
    );
  });

  test.each([
    'width=-1',
    'height=0',
    'design=x',
    'kind=gold',
    'width=8&width=9',
    'from=x',
    'sort=up',
    'place=nowhere+such',
  ])('a search that can’t be read is refused and kept: %s', async (query) => {
    const answer = await app.get(`/stash?${query}`);
    expect(answer.status).toBe(422);
    expect(shown(await answer.text())).toEqual([]);
  });

  test('the code on its back leads to it, however it was written', async () => {
    const { code, id } = cast.corner;
    for (const written of [code, code.toLowerCase(), ` ${code[0]} - ${code.slice(1)} `]) {
      const answer = await app.get(`/stash?code=${encodeURIComponent(written)}`);
      expect(answer.headers.get('Location')).toBe(`/offcuts/${id}`);
    }
    const none = await app.get('/stash?code=ZZ<b>');
    expect(none.status).toBe(404);
    expect(await none.text()).toMatch(
      /id="code-note" class="problem"[^>]*>No offcut ever had the code ZZ&lt;b&gt;/,
    );
  });

  test('a code is typed with letters, on a phone too', async () => {
    const html = await page('/stash');
    expect(html).toMatch(/<input id="code"/);
    expect(html).not.toMatch(/<input id="code"[^>]*inputmode="numeric"/);
  });

  test('a long shelf is shown a board at a time, counted', async () => {
    for (let one = 0; one < 40; one++)
      await addOffcut(app.db, {
        design: cast.fern.id,
        offcut: scrap(2, 3 + one / 8),
        count: 1,
        at: later(one),
      });
    const first = await page('/stash?design=1');
    expect(shown(first)).toHaveLength(24);
    expect(first).toContain('1–24 of 42 kinds of offcut');
    expect(first).toContain('href="/stash?design=1&amp;from=24#offcuts" rel="next"');
    const rest = await page('/stash?design=1&from=24');
    expect(shown(rest)).toHaveLength(18);
    expect(rest).toContain('25–42 of 42');
    expect(rest).not.toContain('rel="next"');
  });

  test('what is alike stands together, each with its code and place', async () => {
    const put = (place: string, count = 1) =>
      addOffcut(app.db, { design: cast.fern.id, offcut: scrap(2, 3, { place }), count, at: later(1) });
    const [one, two] = [(await put('tray 1'))!, (await put('tray 5', 2))!];
    const pictures = await page('/stash?width=2&height=3&sort=newest&design=fern');
    expect(pictures.match(/class="tile"/g)).toHaveLength(3);
    expect(pictures).toContain('× 3, all alike');
    const list = await page('/stash?view=list&design=fern&sort=newest');
    const [row] = list.match(/<tr><td class="size">2 × 3″.*?<\/tr>/s)!;
    expect(row).toContain('× 3');
    for (const { code } of [one, two]) expect(row).toContain(code);
    expect(await page('/stash?view=list&place=tray+5')).not.toContain(one.code);
  });

  test('in the list place, count and name are changed where they stand', async () => {
    const list = await page('/stash?view=list&width=8&height=8');
    const edit = `/in-place/offcut-place/${cast.corner.id}`;
    expect(list).toContain(`hx-get="${edit}/edit?line=yes"`);
    const script = { 'HX-Request': 'true' };
    const field = await page(`${edit}/edit?line=yes`, script);
    expect(field).toContain(`hx-post="${edit}?line=yes"`);
    const saved = await app.post(`${edit}?line=yes`, { _method: 'PUT', value: 'tray 7' }, script);
    expect(await saved.text()).toMatch(/^<span class="in-place"><a class="changes".*?>tray 7</);
    expect(await page('/stash?view=list&place=tray+7')).toContain(cast.corner.code);
  });

  test('what runs low comes worst first, and a pad that has no designs yet is not missed', async () => {
    await addPad(app.db, { ...MEADOW, name: 'Still wrapped' });
    const gone = await addPad(app.db, { ...MEADOW, name: 'Nearly gone' });
    await addDesign(app.db, { pad: gone.id, design: FERN, sheets: 1, at: later(1) });
    await countSheets(app.db, cast.white.id, { sheets: 9, at: later(1) });
    const html = await page('/stash/low');
    const names = [...html.matchAll(/<h2><a href="\/pads\/\d+">([^<]+)/g)].map((found) => found[1]);
    expect(names).toEqual(['Nearly gone', 'White card']);
    expect(await page('/stash')).toContain('2 pads and 1 design run low');
  });

  test('the list to print goes place by place, with codes and sizes', async () => {
    const html = await page('/stash/list');
    const places = [...html.matchAll(/<h2>([^<]+)<\/h2>/g)].map((found) => found[1]);
    expect(places).toEqual(['tray 1', 'tray 2', 'Sheets']);
    expect(html).toContain('12 × 3″');
    expect(html).toContain('Fern 5, Hare 3, Hem 2');
    expect(await page('/stash/sheets')).toContain('Fern 5, Hare 3, Hem 2');
  });
});

test('what waits says what each offcut could become, one tap away, and which designs were never cut', async () => {
  const { corner, strips } = await fillShelf(app.db);
  expect(await page('/stash')).toContain('href="/stash/waiting"');
  const before = await page('/stash/waiting');
  expect(before).toContain('Say which cards you draw');
  await addCardSize(app.db, { name: 'Desk note', ...CARD });
  const html = await page('/stash/waiting');
  expect(html.indexOf(corner.code)).toBeLessThan(html.indexOf(strips.code));
  const start = /<li><a href="([^"]+)">1 Desk note envelope<\/a>/.exec(html)![1]!.replaceAll('&amp;', '&');
  expect(start).toContain(`design=${corner.design.id}`);
  expect(await page(start)).toContain(corner.code);
  expect(html).toContain('<li>2 Desk notes, flat</li>');
  expect(html).toMatch(/Designs never cut.*Hare/s);
});
