/** Ready-made envelopes through their pages: in the stash, beside the recipes, and every refusal beside its field. */
import { beforeEach, describe, expect, test } from 'vitest';
import { createProject } from '#stores/projects.ts';
import { addReadyMade, listReadyMade, listReadyMadeMovements } from '#stores/ready-made.ts';
import { type App, openApp } from '#tests/support/app.ts';
import { FIRST, fillShelf, size, THANKS } from '#tests/support/cast.ts';

let app: App;
beforeEach(async () => {
  app = await openApp();
});

const A2 = { name: 'A2', width: '4 3/8', height: '5 3/4', count: '12', note: 'kraft' };
const add = async (): Promise<string> => {
  const envelope = { name: 'A2', ...size(4.375, 5.75), note: '' };
  return `/ready-made/${(await addReadyMade(app.db, { envelope, count: 12, at: FIRST })).id}`;
};
const page = async (path: string): Promise<string> => (await app.get(path)).text();
const movements = () => listReadyMadeMovements(app.db, 1);

describe('in the stash', () => {
  test('added from a standard size, listed, put right', async () => {
    expect(await page('/ready-made/new?name=A2&width=4+3/8&height=5+3/4')).toContain('value="4 3/8"');
    const added = await app.post('/ready-made', A2);
    expect(added.headers.get('Location')).toBe('/ready-made/1');
    expect(await listReadyMade(app.db)).toMatchObject([{ name: 'A2', ...size(4.375, 5.75), count: 12 }]);
    await fillShelf(app.db);
    expect(await page('/stash')).toMatch(/href="\/ready-made\/1">A2<\/a>/);
    const put = { _method: 'PUT', name: 'A2, brown', width: '4 3/8', height: '5 3/4', note: '' };
    expect((await app.post('/ready-made/1', put)).status).toBe(303);
    expect(await page('/ready-made/1')).toContain('<h1>A2, brown</h1>');
  });

  test('stand in an empty stash too', async () => {
    await add();
    expect(await page('/stash')).toContain('/ready-made/1');
  });

  test('added once, however often the form is sent', async () => {
    const once = 'token-of-this-form';
    await app.post('/ready-made', { ...A2, once });
    await app.post('/ready-made', { ...A2, once });
    expect(await listReadyMade(app.db)).toHaveLength(1);
  });

  test('bought, counted, used for a project', async () => {
    const place = await add();
    await createProject(app.db, THANKS, FIRST);
    await app.post(`${place}/purchases`, { bought: '8' });
    await app.post(`${place}/counts`, { counted: '19' });
    await app.post(`${place}/uses`, { used: '3', project: '1' });
    const html = await page(place);
    expect(html).toContain('<strong>16</strong> left');
    expect(html).toContain('8 bought');
    expect(html).toContain('counted: 1 fewer than noted');
    expect(html).toMatch(/3 used.*for <a href="\/projects\/1">Thank you, neighbours/s);
    expect(await page('/projects')).toContain('3 sets are finished');
    expect(await page('/projects/1')).toMatch(/taken for it: 3 <a href="\/ready-made\/1">A2/);
  });
});

describe('is refused, with nothing written', () => {
  test.each([
    ['name', ' ', 'Give it a name'],
    ['width', '0', 'more than zero'],
    ['height', 'tall', 'isn’t a length'],
    ['count', '-1', 'whole number from 0'],
    ['count', '1.5', 'whole number from 0'],
  ])('%s “%s”', async (field, typed, message) => {
    const answer = await app.post('/ready-made', { ...A2, [field]: typed });
    const html = await answer.text();
    expect(answer.status).toBe(422);
    expect(html).toContain(message);
    expect(html).toMatch(new RegExp(`id="${field}-note" class="problem"`));
    expect(html).toContain(`value="${typed}"`);
    expect(await listReadyMade(app.db)).toEqual([]);
  });

  test.each([
    ['uses', 'used', '13', 'Only 12 are left.'],
    ['uses', 'used', '0', 'whole number from 1'],
    ['purchases', 'bought', '', 'whole number from 1'],
    ['counts', 'counted', 'many', 'whole number from 0'],
  ])('%s: %s “%s”', async (path, field, typed, message) => {
    const place = await add();
    const answer = await app.post(`${place}/${path}`, { [field]: typed });
    const html = await answer.text();
    expect(answer.status).toBe(422);
    expect(html).toContain(message);
    expect(html).toMatch(new RegExp(`id="${field}-note" class="problem"`));
    expect(html).toContain(`value="${typed}"`);
    expect(await movements()).toHaveLength(1);
  });

  test('an envelope or a project that isn’t there', async () => {
    const place = await add();
    expect((await app.get('/ready-made/9')).status).toBe(404);
    expect((await app.get('/ready-made/x/edit')).status).toBe(404);
    expect((await app.post('/ready-made/9/uses', { used: '1' })).status).toBe(404);
    expect((await app.post('/ready-made/9/counts', { counted: '1' })).status).toBe(404);
    expect((await app.post('/ready-made/9/purchases', { bought: '1' })).status).toBe(404);
    expect((await app.post(`${place}/uses`, { used: '1', project: '9' })).status).toBe(404);
    expect(await movements()).toHaveLength(1);
  });
});

describe('beside the recipes', () => {
  // Envelope makers' size charts: a half-letter card goes into an A2 with ⅛ and ¼ to spare. The grade is ours.
  test('those that the card goes into, with how it sits', async () => {
    await add();
    expect(await page('/envelopes?width=5+1/2&height=4+1/4&show=paper')).toMatch(
      /<a href="\/ready-made\/1\?used=1">12 A2<\/a>.*the card <span class="fit">goes in easily<\/span>/s,
    );
    expect(await page('/ready-made/1?used=3')).toContain('name="used" class="count" value="3"');
    const none = await page('/envelopes?width=7&height=5&show=paper');
    expect(none).toContain('Bought envelopes left out: A2 (the card won’t go in).');
    expect(none).not.toContain('Bought, in your stash');
  });
});

describe('standard cards', () => {
  // ISO 216:2007 and ISO 269:1985; envelope makers' size charts.
  test('are a tap away in both systems, with their envelopes', async () => {
    const html = await page('/envelopes');
    expect(html).toMatch(/ISO A6<\/a>.*105 × 148 mm.*ISO C6 \(114 × 162 mm\)/s);
    expect(html).toMatch(/half-letter<\/a>.*4¼ × 5½″.*A2 \(4⅜ × 5¾″\)/s);
    const link = /href="(\/envelopes\?[^"]+)">ISO A6/.exec(html)![1]!.replaceAll('&amp;', '&');
    expect((await app.get(link)).status).toBe(200);
  });
});
