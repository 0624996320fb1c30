/** Every kind of page for eyes of every kind: by day, in the evening, in forced colours, on narrow screens and in large letters. */
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { seedDemo } from '#seed/demo.ts';
import { closeDatabase, openDatabase } from '#stores/database.ts';
import { graveFaults } from '#tests/support/axe.ts';
import { type RunningApp, sharedBrowser, startApp } from '#tests/support/browser.ts';
import { browserPath } from '#tests/support/find-browser.ts';

const PAGES = [
  '/',
  '/envelopes?card=5+1%2F2+x+4+1%2F4',
  '/stash',
  '/projects/5',
  '/projects/1/make?envelope=1&step=1',
  '/parts/base?width=5+1%2F2&height=4+1%2F4',
  '/tools/fits',
  '/style',
];
const WIDTHS = [1280, 390, 320];
const LIGHTS = [
  { name: 'by day', colorScheme: 'light', forcedColors: 'none' },
  { name: 'in the evening', colorScheme: 'dark', forcedColors: 'none' },
  { name: 'in forced colours', colorScheme: 'dark', forcedColors: 'active' },
] as const;

describe.skipIf(!browserPath)('in a browser', () => {
  let app: RunningApp;
  let context: BrowserContext;
  let page: Page;
  beforeAll(async () => {
    app = await startApp();
    const db = openDatabase(join(app.folder, 'creasebook.db'));
    await seedDemo(db, new Date());
    await closeDatabase(db);
    context = await (await sharedBrowser()).newContext({ bypassCSP: true, reducedMotion: 'reduce' });
    page = await context.newPage();
  });
  afterAll(async () => {
    await context?.close();
    await app?.stop();
  });

  const sideways = () => page.evaluate(() => document.documentElement.scrollWidth - innerWidth);

  test.each(PAGES)('%s is fit for all eyes', async (address) => {
    const found: string[] = [];
    await page.setViewportSize({ width: 1280, height: 844 });
    await page.goto(app.url + address);
    for (const width of WIDTHS) {
      await page.setViewportSize({ width, height: 844 });
      if ((await sideways()) > 0) found.push(`too wide at ${width}`);
      for (const { name, ...light } of width === 320 ? LIGHTS.slice(0, 1) : LIGHTS) {
        await page.emulateMedia(light);
        found.push(...(await graveFaults(page)).map((fault) => `${fault} ${name} at ${width}`));
      }
    }
    await page.setViewportSize({ width: 390, height: 844 });
    await page.addStyleTag({ content: 'html { font-size: 225% !important; }' });
    if ((await sideways()) > 0) found.push('too wide in letters twice as large');
    expect(found).toEqual([]);
  });

  test('a refused form takes the focus to its problems, and they lead to the fields', async () => {
    await page.goto(`${app.url}/pads/new`);
    await page.getByRole('button', { name: 'Add' }).first().click();
    await page.locator('.problems').waitFor();
    const focused = () =>
      page.evaluate(() => document.activeElement?.className || document.activeElement?.id);
    expect(await focused()).toBe('problems');
    const first = page.locator('.problems a').first();
    const field = (await first.getAttribute('href'))!.slice(1);
    await first.press('Enter');
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => location.hash)).toBe(`#${field}`);
  });

  test('on a phone the sheet of each step lies whole above Back and Next', async () => {
    await page.setViewportSize({ width: 390, height: 844 });
    await page.emulateMedia({ colorScheme: 'light', forcedColors: 'none' });
    await page.goto(`${app.url}/projects/1/make?envelope=1&step=1`);
    const hidden: string[] = [];
    for (let step = 2; step <= 20; step++) {
      await page.getByRole('link', { name: 'Next', exact: true }).click();
      await page.getByText(`Step ${step} of 20`).first().waitFor();
      const sheet = (await page.locator('.making-picture svg').boundingBox())!;
      const links = (await page.locator('.step-links').boundingBox())!;
      const under = Math.round(sheet.y + sheet.height - links.y);
      if (under > 0 || sheet.y < 0) hidden.push(`step ${step}: ${under} px`);
    }
    expect(hidden).toEqual([]);
  });

  test('what was saved is said, and heard first', async () => {
    await page.goto(`${app.url}/pads/1/edit`);
    await page.getByRole('button', { name: 'Keep it so' }).click();
    const saved = page.getByText('Saved.', { exact: true });
    await saved.waitFor();
    expect(await saved.evaluate((one) => one === document.activeElement)).toBe(true);
  });
});
