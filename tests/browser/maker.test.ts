/**
 * A maker's week in an empty book: an odd card, paper with a border, a pad that is not what it is sold by, a batch of
 * eight with liners and bases cut and made, and a pocket noted with its sides swapped. Once with scripts, once without.
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { graveFaults } from '#tests/support/axe.ts';
import { browserPath } from '#tests/support/find-browser.ts';
import { startWalk, type Walk } from '#tests/support/walk.ts';

describe.skipIf(!browserPath).each([
  ['with scripts', true],
  ['without scripts', false],
])('a maker’s walk, %s', (_, scripts) => {
  let walk: Walk;

  beforeAll(async () => {
    walk = await startWalk({ scripts });
  }, 60_000);

  afterAll(() => walk?.end());

  const seemly = async (): Promise<void> => {
    expect(await walk.page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    if (scripts) expect(await graveFaults(walk.page)).toEqual([]);
  };
  /** The field of the batch's part of that name. */
  const ofPart = async (name: string, field: string): Promise<string> => {
    const names = walk.page.locator('[name^="parts."][name$=".name"]');
    for (let part = 0; part < (await names.count()); part += 1)
      if ((await names.nth(part).inputValue()) === name) return `parts.${part}.${field}`;
    throw new Error(`invalid part: ${name}`);
  };

  test('puts paper with a border on the shelf, and A4 that measures 209.5 mm', async () => {
    await walk.go('/pads/new');
    await walk.fill({ name: 'Harbour', width: '12', height: '12' });
    await walk.press('Add it');
    await walk.fill({ name: 'Bollards', sheets: '24' });
    await walk.page.locator('[name="direction"]').selectOption('one edge');
    await walk.fill({ border: '1 1/2' });
    await walk.press('Add this design');
    await walk.go('/pads/new');
    await walk.fill({ name: 'Chalk' });
    await walk.page.getByLabel('A4, 210 × 297 mm').check();
    await walk.page.getByText('My sheets measure differently').click();
    await walk.fill({ measuredWidth: '209.5 mm' });
    await walk.page.locator('[name="kind"]').selectOption('cardstock');
    await walk.press('Add it');
    await walk.fill({ name: 'Cliff', sheets: '9' });
    await walk.press('Add this design');
    await walk.go('/stash');
    const shelf = await walk.main();
    expect(shelf).toMatch(/Chalk[\s\S]*9\s+sheets/);
    expect(shelf).toMatch(/Harbour[\s\S]*24\s+sheets/);
  });

  test('types an odd card as both its sides, and is told how it fits', async () => {
    await walk.go('/');
    await walk.fill({ card: '136 x 104.5 mm' });
    await walk.press('Find its envelope');
    expect(await walk.page.locator('h1').innerText()).toMatch(
      /^Goes in easily\. Open a sheet of (Cliff|Bollards)\./,
    );
    await seemly();
    await walk.fill({ copies: '8' });
    if (!scripts) await walk.press('Find its envelope');
    await walk.page.getByRole('button', { name: /plan the whole batch/ }).waitFor();
    await walk.press(/plan the whole batch/);
  });

  test('plans eight envelopes with liners from the border paper, and bases from the pad', async () => {
    await walk.fill({ blanks: '8' });
    await walk.page.locator('[name="paper"]').selectOption('kind-patterned');
    await walk.press('+ Envelope liner');
    await walk.press('+ Card base');
    for (const [part, kind] of [
      ['Liner', 'kind-patterned'],
      ['Card base', 'kind-cardstock'],
    ] as const) {
      await walk.fill({ [await ofPart(part, 'copies')]: '8' });
      await walk.page.locator(`[name="${await ofPart(part, 'paper')}"]`).selectOption(kind);
    }
    await seemly();
    await walk.press('Plan the cuts');
    await walk.page.getByRole('link', { name: 'To the cut sheet' }).waitFor({ timeout: 20_000 });
    expect(await walk.page.locator('h1').innerText()).toMatch(/4 .*Cliff.*everything fits\./);
  });

  test('sees on the cut sheet which side to check, and at the fence only what is wanted', async () => {
    await walk.follow('To the cut sheet');
    const sheet = await walk.main();
    expect(sheet).toContain('Check one sheet of Chalk: 209.5 mm across (the pad says 210 mm)');
    const words = await walk.page.locator('.step-words').allInnerTexts();
    expect(words.length).toBeGreaterThan(3);
    for (const one of words) expect(one).toMatch(/Keep (\d+ × )?(Envelope|Liner|Card base|block)/);
    expect(words.join(' ')).toMatch(/Falls off: (leftover|waste)/);
    expect(await walk.page.locator('.plan-pieces > li').count()).toBeLessThanOrEqual(4);
    await seemly();
  });

  test('cuts it, and the shelf is true', async () => {
    await walk.follow('to the end');
    const place = walk.page.locator('[name="place"]');
    if ((await place.count()) > 0) await place.fill('chart drawer');
    await walk.press('It’s cut: write it down');
    expect(await walk.main()).toContain('Cut and written down');
    await walk.go('/pads/2');
    expect(await walk.main()).toMatch(/5 sheets/);
    await walk.go('/projects/1');
  });

  test('makes the first to its last step', async () => {
    await walk.leave(walk.page.locator('a.next-thing'));
    const trial = walk.page.getByRole('link', { name: 'Use the first of the batch' });
    if ((await trial.count()) > 0) await walk.leave(trial);
    for (let next = walk.page.locator('a[rel="next"]'); (await next.count()) > 0; ) await walk.leave(next);
    await walk.press(/easily|goes in|Yes/i);
  });

  test('notes the pocket with its sides swapped, is asked, and has it put right', async () => {
    await walk.go('/projects/1/outcomes/new?envelope=1');
    await walk.fill({ pocketWidth: '111 mm', pocketHeight: '142 mm', wrong: 'the liner crept down' });
    await walk.press('Write it down');
    expect(await walk.main()).toMatch(/Did you mean .* across and .* up\?/);
    expect(await walk.page.locator('#pocketWidth').inputValue()).toBe('111 mm');
    await seemly();
    await walk.press('Yes, swap the two and write it down');
    await walk.page.waitForURL(/\/projects\/1\/outcomes\/1/);
    expect(await walk.main()).toContain('pocket measured');
    await walk.go('/projects/1');
    expect(await walk.main()).toContain('the liner crept down');
  });

  test('and the envelope page answers as before, with the notcher sharpened', async () => {
    await walk.go('/tools/notchers/1');
    expect(await walk.main()).toContain('learned from 1 pocket');
    await walk.go('/envelopes?card=136+x+104.5+mm');
    expect(await walk.page.locator('h1').innerText()).toMatch(/^Goes in easily\./);
  });

  test('nothing went wrong behind the pages', () => {
    expect(walk.faults.filter((fault) => !fault.includes('422'))).toEqual([]);
  });
});
