/** For each fold the way from the card in hand to the template: recipe, shelf, order, plan, cut sheet, true-size file. */
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openBrowser, type RunningApp, startApp } from '#tests/support/browser.ts';
import { browserPath } from '#tests/support/find-browser.ts';

const FOLDS = [
  ['diagonal', 'Square '],
  ['side-seam', 'One strip, '],
  ['two-piece', 'Two pieces, '],
] as const;

describe.skipIf(!browserPath)('from card to template', () => {
  let app: RunningApp;
  let browser: Browser;
  let page: Page;

  beforeAll(async () => {
    [app, browser] = await Promise.all([startApp(), openBrowser()]);
    page = await (await browser.newContext({ viewport: { width: 390, height: 844 } })).newPage();
    page.setDefaultTimeout(15_000);
    await page.goto(app.url);
    await leave(page.getByRole('button', { name: /demo/ }));
  }, 60_000);

  afterAll(async () => {
    await browser?.close();
    await app?.stop();
  });

  /** Clicks what leads to another page, and waits for it. */
  const leave = async (target: Locator): Promise<void> => {
    const left = page.waitForEvent('framenavigated');
    await target.click();
    await left;
    await page.waitForLoadState();
  };

  test.each(FOLDS)('%s', { timeout: 60_000 }, async (fold, sentence) => {
    await page.goto(`${app.url}/envelopes?width=6+1/4&height=3+1/4&copies=2&fold=${fold}`);
    expect(await page.locator('h1').innerText()).toMatch(new RegExp(`^${sentence}`));
    expect(await page.locator('#shelf .pieces svg').count()).toBeGreaterThan(0);
    await leave(page.getByRole('button', { name: /plan the whole batch/ }));
    const project = page.url().replace(/\/plans.*/, '');
    await leave(page.getByRole('button', { name: 'Plan the cuts' }));
    await page.waitForFunction(() => /fits/.test(document.querySelector('h1')?.textContent ?? ''));
    expect(await page.locator('h1').innerText()).toContain('everything fits');
    await leave(page.getByRole('link', { name: 'To the cut sheet' }));
    expect(await page.locator('main').innerText()).toMatch(/Set \d|whole/);
    await page.goto(project);
    for (const name of ['Letter', 'SVG']) {
      const href = await page.getByRole('link', { name, exact: true }).first().getAttribute('href');
      const file = await page.request.get(app.url + href);
      expect(file.status()).toBe(200);
      expect((await file.body()).subarray(0, 4).toString()).toBe(name === 'SVG' ? '<?xm' : '%PDF');
    }
  });
});
