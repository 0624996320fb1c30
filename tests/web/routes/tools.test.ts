/** Units, tools and drawn cards through their forms, good and bad. */
import { beforeEach, describe, expect, test } from 'vitest';
import { inches, length, millimetres } from '#shared/length.ts';
import { listCardSizes } from '#stores/card-sizes.ts';
import { addTrial, recordOutcome } from '#stores/envelopes.ts';
import { chosenNotcher } from '#stores/notchers.ts';
import { createProject } from '#stores/projects.ts';
import { editSettings, readSettings } from '#stores/settings.ts';
import { type App, openApp } from '#tests/support/app.ts';
import { CARD, FIRST, later, size, THANKS } from '#tests/support/cast.ts';

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

describe('how a card sits', () => {
  const felt = async (words: readonly (readonly ['tight' | 'easy', number])[]): Promise<void> => {
    const { id } = await createProject(app.db, THANKS, later(0));
    for (const [index, [word, room]] of words.entries()) {
      const trial = (await addTrial(app.db, id, later(0)))!;
      const pocket = {
        width: length(CARD.width + CARD.bulk + inches(room)),
        height: length(CARD.height + CARD.bulk + inches(room)),
      };
      await recordOutcome(app.db, trial.id, { felt: word, pocket }, later(index - 100));
    }
  };
  const page = async (path: string) => (await app.get(path)).text();
  const EASY_CARD = '/envelopes?card=5+1%2F2+x+4+1%2F4';

  test('is told in one sentence, and what she felt moves the envelopes she is shown', async () => {
    expect(await page('/tools')).toContain('As is usual, a card is tight under about ¹⁄₁₆″ to spare');
    const before = await page(EASY_CARD);
    await felt(
      Array.from({ length: 14 }, (_, one) => (one % 2 ? (['tight', 0.125] as const) : ['easy', 0.34375])),
    );
    expect(await page('/tools')).toContain('For you a card is tight under about ⁵⁄₃₂″ to spare');
    expect(await page(EASY_CARD)).not.toBe(before);
    const fits = await page('/tools/fits');
    expect(fits).toContain('How cards sat, by the room they had');
    expect(fits).toContain('14 of 14 sat as these limits say');
  });

  test('is pinned, kept in order, and learned afresh', async () => {
    const refused = await app.post('/tools/fits', { snug: '1/4', easy: '1/8', loose: '' });
    expect(refused.status).toBe(422);
    expect(await refused.text()).toContain('Easy can’t begin before snug.');
    await app.post('/tools/fits', { snug: '', easy: '1/8', loose: '' });
    expect(await page('/tools')).toContain('easy from ⅛″ and loose over ⅜″');
    await app.post('/tools/fits/reset', {});
    expect((await readSettings(app.db)).fits).toEqual({
      pins: { snug: null, easy: null, loose: null },
      since: FIRST,
    });
    expect(await page('/tools')).toContain('As is usual');
  });
});

describe('a tool that changed', () => {
  test('is told of with its picture, and learned from what came since', async () => {
    const { id } = await createProject(app.db, { ...THANKS, notcher: 1 }, later(0));
    for (const one of [0, 1, 2, 3, 4, 5, 6, 7]) {
      const trial = (await addTrial(app.db, id, later(0)))!;
      const less = one < 4 ? 0 : 0.25;
      const pocket = size(6.09375 - less, 3.28125 - less);
      const asMade = { square: inches(7.5), start: inches(2.75) };
      await recordOutcome(app.db, trial.id, { pocket, asMade }, later(one - 100));
    }
    const told = await (await app.get('/tools/notchers/1')).text();
    expect(told).toContain('the tool seems to set differently');
    expect(told).toContain('Inset, pocket by pocket');
    await app.post('/tools/notchers/1/reset', { after: later(3 - 100) });
    const { inset, notcher } = await chosenNotcher(app.db);
    expect(inset).toEqual({ from: 'learned', pockets: 4 });
    expect(notcher.inset).toBeGreaterThan(inches(0.5));
    await app.post('/tools/notchers/1/reset', { after: 'once upon a time' });
    expect((await chosenNotcher(app.db)).inset).toEqual({ from: 'default' });
  });
});
