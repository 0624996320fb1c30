/** The post through its pages: any size asked, the maker's own post first, beside an envelope and in a project. */
import { beforeEach, describe, expect, test } from 'vitest';
import { editSettings } from '#stores/settings.ts';
import { type App, openApp } from '#tests/support/app.ts';
import { fillShelf } from '#tests/support/cast.ts';
import { takeThree } from '#tests/support/projects.ts';
import { rowCounts } from '#tests/support/shelf.ts';

let app: App;
beforeEach(async () => {
  app = await openApp();
});

const A7 = { width: '5 1/4', height: '7 1/4', thick: '1/16', mass: '1 oz' };

const ask = (fields: Record<string, string>, headers = {}) =>
  app.get(`/post?${new URLSearchParams(fields)}`, headers);
const page = async (fields: Record<string, string>) => (await ask(fields)).text();

describe('any size', () => {
  test('asks for one first', async () => {
    const answer = await app.get('/post');
    expect(answer.status).toBe(200);
    expect(await answer.text()).toContain('Type a size, closed and full.');
  });

  // USPS DMM 101.1: an A7 is a letter, and nonmachinable with the address along its short side (0.724).
  test('says the class large, why, and what would change it', async () => {
    expect(await page(A7)).toContain('United States: <strong>letter</strong>');
    const upright = await page({ ...A7, address: 'up' });
    expect(upright).toContain('United States: <strong>nonmachinable letter</strong>');
    expect(upright).toContain('0.724 times as long along the address as across');
    expect(upright).toContain('letter: turn the address to run along the longer side.');
  });

  // USPS DMM 101.1 and 101.2, Ofcom: C5, 6.378 in high, is a large envelope in the US and a Letter in the UK.
  test('keeps the other posts one tap behind, with rules, source and advice', async () => {
    const html = await page({ ...A7, width: '162 mm', height: '229 mm' });
    expect(html).toContain('United States: <strong>large envelope</strong>');
    expect(html.indexOf('The other posts')).toBeLessThan(
      html.indexOf('United Kingdom: <strong>Letter</strong>'),
    );
    expect(html).toContain('November 2026');
    expect(html).toContain('Check with the post office');
    expect(html).not.toMatch(/[$£€]/);
  });

  test('puts her own post first once it is set', async () => {
    await editSettings(app.db, { post: 'germany', units: { unit: 'mm' } });
    const html = await page({ width: '110', height: '220', thick: '1', mass: '18' });
    expect(html).toMatch(/class="answer">Germany: <strong>Standardbrief/);
  });

  test('takes lumps, clasps and a dark front into account', async () => {
    expect(await page({ ...A7, lumps: 'on' })).toContain('nonmachinable letter');
    expect(await page({ ...A7, front: 'dark' })).toContain('A dark front hides the address');
    expect(await page(A7)).not.toContain('hides the address');
  });

  // USPS DMM 202.2.1: ½ in in from the sides, ⅝ to 2¾ in up; 4¾ × ⅝ in clear.
  test('draws where the address goes', async () => {
    const html = await page(A7);
    expect(html).toContain('from ⅝″ to 2¾″ up from the bottom');
    expect(html).toContain('Keep 4¾ × ⅝″ clear');
    expect(await page({ ...A7, width: '1', height: '1', bare: 'on' })).toContain('too small for an address');
  });

  test('answers with a fragment as she types', async () => {
    const html = await (await ask(A7, { 'HX-Request': 'true' })).text();
    expect(html).toMatch(/^<div id="post-answer"/);
    expect(html).toContain('id="mass-note"');
    expect(html).not.toContain('<html');
  });

  test('keeps quiet about what is not typed yet, but not about what is wrong', async () => {
    const begun = await ask({ ...A7, height: '', mass: '' }, { 'HX-Request': 'true' });
    expect(begun.status).toBe(200);
    expect(await begun.text()).not.toContain('class="problem"');
    const wrong = await ask({ ...A7, height: '', mass: 'x' }, { 'HX-Request': 'true' });
    expect(wrong.status).toBe(422);
    expect(await wrong.text()).toMatch(/id="mass-note" class="problem"/);
  });

  test.each([
    ['width', '', 'Type a length'],
    ['height', '0', 'more than zero'],
    ['thick', '1/0', 'isn’t a length'],
    ['thick', '13', 'That is more than 12″'],
    ['mass', '', 'like 17 g or 0.6 oz'],
    ['mass', 'heavy <b>', 'like 17 g or 0.6 oz'],
    ['mass', '0', 'more than zero'],
    ['mass', '21000 g', 'more than 20 kg'],
    ['address', 'sideways', 'Choose one of'],
  ])('%s “%s” has its problem beside it', async (field, typed, message) => {
    const answer = await ask({ ...A7, [field]: typed });
    expect(answer.status).toBe(422);
    const html = await answer.text();
    expect(html).toContain(message);
    expect(html).toMatch(new RegExp(`id="${field}-note" class="problem"`));
    if (field !== 'address') expect(html).toContain(`value="${typed.replace('<b>', '&lt;b&gt;')}"`);
  });
});

describe('beside an envelope', () => {
  test('is one tap behind, reckoned with the chosen paper', async () => {
    const { fern } = await fillShelf(app.db);
    const html = await (await app.get(`/envelopes?width=7&height=5&design=${fern.id}&show=post`)).text();
    expect(html).toContain('Can it be posted? United States: letter');
    expect(html).toContain('80 lb cover (216 g/m²) with one layer on it, in paper of 180 g/m²');
    expect(html).toMatch(/<option value="patterned" selected/);
  });

  test('stands as one line in a project', async () => {
    const cast = await fillShelf(app.db);
    const { project } = await takeThree(app.db, cast);
    const before = await rowCounts(app.db);
    const html = await (await app.get(`/projects/${project}`)).text();
    const link = /href="(\/post\?[^"]+)">By post<\/a> \(United States\)/.exec(html)![1]!;
    const answer = await app.get(link.replaceAll('&amp;', '&'));
    expect(answer.status).toBe(200);
    expect(await rowCounts(app.db)).toEqual(before);
  });
});
