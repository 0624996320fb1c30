/** Paper through its pages: weights against the published factors, a card by its layers, and every refusal. */
import { beforeEach, describe, expect, test } from 'vitest';
import { editSettings } from '#stores/settings.ts';
import { type App, openApp } from '#tests/support/app.ts';

let app: App;
beforeEach(async () => {
  app = await openApp();
});

const ask = (path: string, fields: Record<string, string> = {}) =>
  app.get(`${path}?${new URLSearchParams(fields)}`);
const page = async (path: string, fields: Record<string, string> = {}) => (await ask(path, fields)).text();

const KEEPSAKE = { width: '5 in', height: '7 in', base: '80 lb cover' };

describe('a weight', () => {
  // By the definition of basis weight: 80 lb cover is 216.33 g/m², 20 lb bond 75.19.
  test('in grams and in every grade', async () => {
    const html = await page('/paper', { weight: '80 lb cover' });
    expect(html).toContain('<strong>216.3 g/m²</strong>, 80 lb cover');
    expect(html).toMatch(/cover<\/th><td class="number">80\.0</);
    expect(html).toMatch(/text, book, offset<\/th><td class="number">146\.2</);
    expect(await page('/paper', { weight: '20 lb bond' })).toContain('<strong>75.2 g/m²</strong>');
  });

  // A paper mill's worked example: 60 g/m² at bulk 1.5 → 90 µm, at 2.0 → 120 µm.
  test('with its thickness as a range', async () => {
    await editSettings(app.db, { units: { unit: 'mm' } });
    expect(await page('/paper', { weight: '60 g/m²' })).toMatch(/bulky, soft<\/th><td>0\.09 to 0\.12 mm/);
  });

  // By the definition of basis weight a 12 × 12 in sheet of 65 lb cover weighs 16.33 g; 500 Letter sheets of 20 lb bond 5 lb, so 80 oz.
  test('and what is cut from it', async () => {
    const sheets = { weight: '20 lb bond', width: '8 1/2', height: '11', copies: '500' };
    expect(await page('/paper', sheets)).toContain('weigh <strong>80 oz</strong>');
    await editSettings(app.db, { units: { unit: 'mm' } });
    const sheet = { weight: '65 lb cover', width: '12 in', height: '12 in' };
    expect(await page('/paper', sheet)).toContain('weighs <strong>16.3 g</strong>');
  });

  test.each([
    ['weight', 'heavy', 'isn’t a paper weight'],
    ['weight', '80 lb', 'Say which grade'],
    ['weight', '5000 g/m²', 'Paper lies between'],
    ['width', '-1', 'can’t be negative'],
    ['copies', '0', 'whole number from 1'],
  ])('%s “%s” has its problem beside it', async (field, typed, message) => {
    const answer = await ask('/paper', { weight: '80 lb cover', [field]: typed });
    const html = await answer.text();
    expect(answer.status).toBe(422);
    expect(html).toMatch(new RegExp(`id="${field}-note" class="problem"[^>]*>[^<]*${message}`));
    expect(html).toContain(`value="${typed}"`);
  });
});

describe('a card by its layers', () => {
  // By the definition of basis weight a 5 × 7 folded card of 80 lb cover (10 × 7 flat) weighs 9.77 g.
  test('weighs what its parts weigh, and leads to its envelope and the post', async () => {
    await editSettings(app.db, { units: { unit: 'mm' } });
    expect(await page('/paper/card', KEEPSAKE)).toContain('<strong>9.8 g</strong>');
    const html = await page('/paper/card', { ...KEEPSAKE, layer1: '80 lb cover', extra: '2 g' });
    expect(html).toContain(`<strong>${(9.77 * 1.5 + 2).toFixed(1)} g</strong>`);
    const link = /href="(\/envelopes\?[^"]+)"/.exec(html)![1]!.replaceAll('&amp;', '&');
    expect(await (await app.get(`${link}&show=post`)).text()).toContain('Reckoned with your card of 16.7 g');
  });

  test('says when it is uneven, and how its grain lies', async () => {
    const html = await page('/paper/card', { ...KEEPSAKE, raisedBy: '1/4', grain: 'across the fold' });
    expect(html).toContain('to the post it is uneven');
    expect(html).toContain('may crack');
  });

  test.each([
    ['width', '0', 'more than zero'],
    ['base', '', 'isn’t a paper weight'],
    ['layer2', '65 lb', 'Say which grade'],
    ['inside', '<b>', 'isn’t a paper weight'],
    ['raisedBy', '4', 'That is more than'],
    ['extra', 'some', 'like 17 g or 0.6 oz'],
  ])('%s “%s” has its problem beside it', async (field, typed, message) => {
    const answer = await ask('/paper/card', { ...KEEPSAKE, [field]: typed });
    const html = await answer.text();
    expect(answer.status).toBe(422);
    expect(html).toMatch(new RegExp(`id="${field}-note" class="problem"[^>]*>[^<]*${message}`));
  });
});

test('both ask first', async () => {
  expect((await app.get('/paper')).status).toBe(200);
  expect((await app.get('/paper/card')).status).toBe(200);
});

describe('a card that was measured', () => {
  const measure = (measured: string) => app.post('/paper/card', { ...KEEPSAKE, measured });

  test('is kept beside what was reckoned, and counted on the page of her tools', async () => {
    const before = /<strong>([^<]+)<\/strong> thick/.exec(await page('/paper/card', KEEPSAKE))![1]!;
    for (const thick of ['0.036', '1/32', '0.06']) expect((await measure(thick)).status).toBe(303);
    const html = await page('/paper/card', KEEPSAKE);
    expect(html).toContain(`reckoned ${before}`);
    expect(html).toContain('3 cards measured');
    expect(await page('/tools')).toMatch(/came out about ¹⁄₆₄″ thicker than reckoned, over 3 cards/);
    expect(html).toContain(`<strong>${before}</strong> thick`);

    await app.post('/paper/correction', {});
    expect(await page('/tools')).toContain('Every card is reckoned ¹⁄₆₄″ thicker, as you asked.');
    expect(await page('/paper/card', KEEPSAKE)).not.toContain(`<strong>${before}</strong> thick`);
    await measure('0.09');
    expect(await page('/paper/card', KEEPSAKE)).toContain(`0.090″, reckoned ${before}`);

    await app.post('/paper/correction', { _method: 'DELETE' });
    expect(await page('/paper/card', KEEPSAKE)).toContain(`<strong>${before}</strong> thick`);
  });

  test('is taken back where it was a mistake, and never kept where it cannot be read', async () => {
    const refused = await measure('thick');
    expect(refused.status).toBe(422);
    expect(await refused.text()).toMatch(/id="measured-note" class="problem"/);
    expect(await page('/tools')).not.toContain('than reckoned');
    await measure('0.09');
    expect(await page('/tools')).not.toContain('Reckon with that');
    await app.post('/paper/bulks/1', { _method: 'DELETE' });
    expect(await page('/tools')).not.toContain('than reckoned');
  });
});
