/** The stash as somebody at a table uses it: by keyboard, by thumb, and with script off. Knows the pages only. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { faultsAtBothWidths } from '#tests/support/axe.ts';
import { type RunningApp, sharedBrowser, startApp } from '#tests/support/browser.ts';
import { browserPath } from '#tests/support/find-browser.ts';

describe.skipIf(!browserPath)('the stash in a browser', () => {
  let app: RunningApp;
  let browser: Browser;
  beforeAll(async () => {
    [app, browser] = await Promise.all([startApp(), sharedBrowser()]);
  });
  afterEach(async () => {
    for (const context of browser.contexts()) await context.close();
  });
  afterAll(() => app?.stop());

  const open = async (path: string, options = {}): Promise<Page> => {
    const page = await (
      await browser.newContext({ viewport: { width: 1280, height: 900 }, ...options })
    ).newPage();
    await page.goto(app.url + path);
    return page;
  };
  const press = async (page: Page, ...keys: string[]): Promise<void> => {
    for (const key of keys) await page.keyboard.press(key);
  };
  /** Types into the field that has the focus and those that follow it. */
  const fill = async (page: Page, ...texts: string[]): Promise<void> => {
    await page.locator(':is(input, select):focus').waitFor();
    for (const [one, text] of texts.entries()) {
      if (one > 0) await press(page, 'Tab');
      if (text !== '') await page.keyboard.type(text);
    }
  };
  const enter = async (page: Page): Promise<void> => {
    const before = page.url();
    await press(page, 'Enter');
    await page.waitForURL((url) => url.href !== before);
    await page.waitForLoadState();
  };

  test('by keyboard alone a pad, two designs and three offcuts come onto the shelf', async () => {
    const page = await open('/pads/new');
    await fill(page, 'Garden wall', '', '', '12', '12', '', '160 g/m²', '');
    await enter(page);
    await fill(page, 'Ivy', '8');
    await enter(page);
    expect(await page.getByRole('status').textContent()).toContain('Ivy, 8 sheets');
    await fill(page, 'Brick', '');
    await enter(page);
    await page.getByRole('link', { name: 'Add offcuts of Brick' }).press('Enter');
    await page.waitForURL(/offcuts\/new/);
    const codes: string[] = [];
    for (const [width, height] of [
      ['12', '3 1/2'],
      ['5', '7'],
      ['4 3/8', '4 3/8'],
    ]) {
      await fill(page, width!, height!);
      await enter(page);
      codes.push((await page.locator('.pencil').textContent())!);
    }
    expect(new Set(codes).size).toBe(3);
    await page.goto(`${app.url}/stash`);
    expect(await page.locator('.answer').textContent()).toBe('16 sheets in 1 pad, and 3 offcuts.');
    expect(await page.locator('.tile').count()).toBe(3);
    expect(await page.locator('.tile .code').allTextContents()).toEqual(codes.reverse());
  });

  test('the look follows the colours as they are chosen', async () => {
    const page = await open('/pads/1/designs/new');
    expect(await page.locator('#look circle').count()).toBe(0);
    await page.locator('.motifs label', { hasText: 'dots' }).click();
    await page.locator('#look circle').first().waitFor({ state: 'attached' });
  });

  test('the shelf follows the size as it is typed, and says what it can’t read', async () => {
    const page = await open('/stash');
    await page.getByLabel('At least').fill('4');
    await page.getByLabel('by', { exact: true }).fill('4');
    await page.waitForFunction(() => document.querySelectorAll('.tile').length === 2);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('height');
    await page.getByLabel('At least').fill('4 of');
    await page.locator('#width-note.problem').waitFor();
    await page.getByLabel('At least').fill('4');
    await page.locator('#width-note.hint').waitFor();
    expect(page.url()).toContain('width=4');
  });

  test('gone and put back are one tap each, where the offcut stands', async () => {
    const page = await open('/stash');
    const tile = page.locator('.tile', { hasText: '5 × 7″' });
    await tile.getByRole('button', { name: 'Gone' }).click();
    await tile.getByText('Gone.').waitFor();
    expect(await page.evaluate(() => document.activeElement?.textContent)).toContain('Put back');
    await press(page, 'Enter');
    await tile.getByRole('button', { name: 'Gone' }).waitFor();
    expect(await tile.getByText('Put back').count()).toBe(0);
  });

  test('with script off everything is still there', async () => {
    const page = await open('/stash?width=5&height=7', { javaScriptEnabled: false });
    await page.getByRole('button', { name: 'Gone' }).click();
    expect(page.url()).toMatch(/\/stash\?width=5&height=7&gone=\d+#offcuts$/);
    expect(await page.locator('.tile').count()).toBe(0);
    await page.getByRole('button', { name: 'Put back' }).click();
    expect(await page.locator('.tile').count()).toBe(1);
    await page.getByLabel('At least').fill('abc');
    await page.getByRole('button', { name: 'Search' }).click();
    expect(await page.locator('#width-note').textContent()).toContain('“abc” isn’t a length');
    expect(await page.getByLabel('At least').inputValue()).toBe('abc');
  });

  test('a name is offered as it is typed, and a place is changed where it stands in the list', async () => {
    const page = await open('/offcuts/new');
    await page.getByLabel('Cut from').pressSequentially('iv');
    await page
      .locator('#design-likely option[value="Garden wall · Ivy"]:only-child')
      .waitFor({ state: 'attached' });
    await page.goto(`${app.url}/stash?view=list&design=brick`);
    const row = page.locator('.rows tr', { hasText: '5 × 7″' });
    await row.getByRole('link', { name: 'change place' }).click();
    await page.keyboard.type('tin box');
    await press(page, 'Enter');
    await row.getByText('tin box').waitFor();
    expect(await page.evaluate(() => document.activeElement?.textContent)).toContain('tin box');
  });

  const PAGES = [
    '/stash',
    '/stash/low',
    '/stash?view=list',
    '/stash/list',
    '/stash/sheets',
    '/pads',
    '/stash?width=x',
    '/pads/new',
    '/pads/1',
    '/pads/1/edit',
    '/pads/1/designs/new?after=1',
    '/designs/2',
    '/designs/2/edit',
    '/offcuts/new?after=1',
    '/offcuts/1',
    '/offcuts/1/edit',
    '/offcuts/999',
  ];

  test('on a phone and on a desk no page overflows and axe finds nothing serious', async () => {
    const page = await open('/stash');
    const found: string[] = [];
    for (const path of PAGES) {
      await page.goto(app.url + path);
      found.push(...(await faultsAtBothWidths(page)).map((fault) => `${path}: ${fault}`));
    }
    expect(found).toEqual([]);
  });
});
