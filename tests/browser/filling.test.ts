/**
 * "What can I get out of this one?" on a phone: from an offcut of the demo to what comes out of it, filled otherwise, and
 * a size that is none; once with scripts, once without.
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { graveFaults } from '#tests/support/axe.ts';
import { browserPath } from '#tests/support/find-browser.ts';
import { startWalk, type Walk } from '#tests/support/walk.ts';

describe.skipIf(!browserPath).each([
  ['with scripts', true],
  ['without scripts', false],
])('one piece filled %s', (_, scripts) => {
  let walk: Walk;

  beforeAll(async () => {
    walk = await startWalk({ scripts });
    await walk.page.goto(walk.url);
    await walk.press(/demo/i);
  });

  afterAll(() => walk?.end());

  const answer = () => walk.page.locator('.filling .answer').innerText();
  /** As wide as the phone, and fit for everybody. */
  const seemly = async (): Promise<void> => {
    expect(await walk.page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    if (scripts) expect(await graveFaults(walk.page)).toEqual([]);
  };

  test('is answered at once with envelopes for her cards, drawn on the sheet', async () => {
    await walk.go('/designs/1');
    await walk.follow('What can I get out of one sheet?');
    expect(await answer()).toMatch(/envelopes?\b.*waste\.$/);
    await walk.page.locator('#filled-title').waitFor({ state: 'attached' });
    await seemly();
  });

  // 12 × 12 in is 24 times 3 × 2 in, without waste.
  test('is filled with a part of her own, and keeps a size that is none', async () => {
    const ticked = walk.page.locator('.own [type="checkbox"]:checked');
    while ((await ticked.count()) > 0) await ticked.first().uncheck();
    await walk.page.locator('summary', { hasText: 'Something else' }).click();
    await walk.page.getByRole('radio', { name: 'as many pieces as I can' }).check();
    await walk.fill({ 'parts.0.name': 'Tag', 'parts.0.width': 'wee', 'parts.0.height': '2' });
    await walk.press('See what comes out');
    expect(await walk.page.locator('[id="parts.0.width-note"]').innerText()).toContain('“wee”');
    await seemly();
    await walk.fill({ 'parts.0.width': '3' });
    await walk.press('See what comes out');
    expect(await answer()).toBe('24 Tags; nothing is waste.');
    expect(await walk.main()).toContain('No way of cutting gives more.');
    expect(await walk.page.locator('[name="parts.0.name"]').inputValue()).toBe('Tag');
    await seemly();
  });

  test('leads on to the envelope that comes out of it', async () => {
    await walk.go('/filling?design=1');
    await walk.follow('Start from it');
    expect(walk.page.url()).toContain('/envelopes?');
    expect(await walk.page.locator('main').innerText()).toMatch(/envelope/i);
  });

  test('nothing went wrong behind the pages', () => {
    expect(walk.faults.filter((fault) => !fault.includes('422'))).toEqual([]);
  });
});
