/** Units, tools and drawn cards through their forms, good and bad. */
import { beforeEach, describe, expect, test } from 'vitest';
import { inches, millimetres } from '#shared/length.ts';
import { listCardSizes } from '#stores/card-sizes.ts';
import { chosenNotcher } from '#stores/notchers.ts';
import { editSettings, readSettings } from '#stores/settings.ts';
import { type App, openApp } from '#tests/support/app.ts';

let app: App;
beforeEach(async () => {
  app = await openApp();
});

const tool = {
  name: 'Bench notcher',
  kind: 'notcher',
  graduation: '1/16',
  largestSheet: '12',
  turning: 'clockwise',
  inset: '',
  zeroOffset: '',
};

describe('units', () => {
  test('millimetres are shown everywhere once chosen, and inches may still be typed', async () => {
    const settings = {
      units: 'mm',
      keepAtLeast: '20 mm',
      longestCut: '12 in',
      wantedFit: 'snug',
      post: 'uk',
    };
    expect((await app.post('/tools/settings', settings)).status).toBe(303);
    const read = await readSettings(app.db);
    expect(read.units).toEqual({ unit: 'mm' });
    expect(read.keepAtLeast).toBe(millimetres(20));
    expect(read.longestCut).toBe(inches(12));
    expect(read.post).toBe('uk');
    expect(await (await app.get('/envelopes?width=140&height=105')).text()).toMatch(/\d mm/);
  });
});

describe('notchers', () => {
  test('a tool is added, chosen and pinned', async () => {
    const added = await app.post('/tools/notchers', { ...tool, inset: '0.45', zeroOffset: '-1/64' });
    const place = added.headers.get('Location')!;
    await app.post(`${place}/choice`, {});
    const { notcher, inset } = await chosenNotcher(app.db);
    expect(notcher.inset).toBe(inches(0.45));
    expect(notcher.zeroOffset).toBe(inches(-1 / 64));
    expect(inset.from).toBe('pinned');
  });

  test('its values are told finer than its ruler where they lie between two marks', async () => {
    const usual = await (await app.get('/tools/notchers/1')).text();
    expect(usual).toContain('<dd>⁷⁄₁₆″</dd>');
    await editSettings(app.db, { units: { unit: 'in', step: 8 } });
    expect(await (await app.get('/tools/notchers/1')).text()).toContain('<dd>⁷⁄₁₆″</dd>');
    await app.post('/tools/notchers/1', { ...tool, inset: '0.471', zeroOffset: '-0.02' });
    const pinned = await (await app.get('/tools/notchers/1')).text();
    expect(pinned).toContain('<dd>0.471″</dd>');
    expect(pinned).toContain('<dd>−0.020″</dd>');
  });

  test('every problem stands beside its field, and nothing is written', async () => {
    const answer = await app.post('/tools/notchers', {
      ...tool,
      name: ' ',
      graduation: '0',
      largestSheet: 'wide',
      zeroOffset: '5',
    });
    const page = await answer.text();
    expect(answer.status).toBe(422);
    expect(page).toContain('Give the tool a name');
    expect(page).toContain('more than zero');
    expect(page).toContain('“wide” isn’t a length');
    expect(page).toContain('A correction is at most 1″');
    expect(page).toContain('value="wide"');
  });
});

describe('drawn cards', () => {
  test('a card is drawn, changed and removed', async () => {
    await app.post('/tools/cards', { name: 'Desk note', width: '8 1/2', height: '3.5', bulk: '' });
    const [card] = await listCardSizes(app.db);
    expect(card).toMatchObject({ width: inches(8.5), height: inches(3.5), bulk: 0 });
    await app.post(`/tools/cards/${card!.id}`, {
      name: 'Longer note',
      width: '9',
      height: '3.5',
      bulk: '1/16',
    });
    expect((await listCardSizes(app.db))[0]!.name).toBe('Longer note');
    await app.post('/put-away', { kind: 'cards', id: `${card!.id}` });
    expect(await listCardSizes(app.db)).toEqual([]);
  });

  test.each([
    ['width', '-3'],
    ['width', '0'],
    ['width', '4 9/8'],
    ['width', '1,250'],
    ['height', '999999'],
    ['height', 'NaN'],
    ['bulk', '1e3'],
    ['bulk', '4'],
  ])('%s “%s” is refused and kept as typed', async (field, typed) => {
    const card = { name: 'Odd', width: '5', height: '4', bulk: '1/32', [field]: typed };
    const answer = await app.post('/tools/cards', card);
    const page = await answer.text();
    expect(answer.status).toBe(422);
    expect(page).toMatch(new RegExp(`id="${field}-note" class="problem"`));
    expect(page).toContain(`value="${typed}"`);
    expect(await listCardSizes(app.db)).toEqual([]);
  });
});
