/**
 * A batch on a phone at the table: from the demo's last project to its plan, the cut sheet with its ticks, the cut and
 * back, once with scripts, once without; nobody is kept out by it.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openBrowser, type RunningApp, startApp } from '#tests/support/browser.ts';
import { browserPath } from '#tests/support/find-browser.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

describe.skipIf(!browserPath).each([
  ['with scripts', true],
  ['without scripts', false],
])('a batch cut %s', (_, scripts) => {
  let app: RunningApp;
  let browser: Browser;
  let page: Page;
  const faults: string[] = [];

  beforeAll(async () => {
    [app, browser] = await Promise.all([startApp(), openBrowser()]);
    const context = await browser.newContext({
      javaScriptEnabled: scripts,
      viewport: { width: 390, height: 844 },
    });
    page = await context.newPage();
    page.setDefaultTimeout(10_000);
    page.on('pageerror', (error) => faults.push(error.message));
    page.on('console', (message) => message.type() === 'error' && faults.push(message.text()));
  }, 60_000);

  afterAll(async () => {
    await browser?.close();
    await app?.stop();
  });

  const main = () => page.locator('main').innerText();
  /** Clicks what leads to another page, and waits for it. */
  const leave = async (target: Locator): Promise<void> => {
    const left = page.waitForEvent('framenavigated');
    await target.click();
    await left;
    await page.waitForLoadState();
  };
  const press = (name: string | RegExp) => leave(page.getByRole('button', { name }).first());
  const follow = (name: string | RegExp) => leave(page.getByRole('link', { name }).first());
  const ticked = () => page.locator('.step.ticked').count();
  /** As wide as the phone, and fit for everybody. */
  const seemly = async (): Promise<void> => {
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    if (!scripts) return;
    await page.evaluate(AXE);
    const found = await page.evaluate(async () => {
      const { violations } = await (globalThis as never as { axe: { run: () => Promise<Found> } }).axe.run();
      return violations
        .filter(({ impact }) => impact === 'serious' || impact === 'critical')
        .map(({ id }) => id);
    });
    expect(found).toEqual([]);
  };
  interface Found {
    readonly violations: { readonly id: string; readonly impact: string }[];
  }

  test('asks for what the last project still needs, with a front for each', async () => {
    await page.goto(app.url);
    await press(/demo/i);
    await page.goto(`${app.url}/projects`);
    await follow(/Winter thank-yous/);
    await follow('Plan the whole batch');
    await page.locator('[name="blanks"]').fill('2');
    await press('+ Front panel');
    expect(await page.locator('[name="parts.0.name"]').inputValue()).toBe('Front panel');
    await page.locator('[name="parts.0.copies"]').fill('many');
    await press('Plan the cuts');
    expect(await page.locator('[id="parts.0.copies-note"]').innerText()).toContain('whole number');
    expect(await page.locator('[name="parts.0.copies"]').inputValue()).toBe('many');
    await seemly();
    await page.locator('[name="parts.0.copies"]').fill('2');
  });

  test('is given one plan, and keeps one of its pieces for another time', async () => {
    await press('Plan the cuts');
    await page.getByRole('link', { name: 'To the cut sheet' }).waitFor({ timeout: 20_000 });
    expect(await page.locator('h1').innerText()).toMatch(/everything fits\./);
    await seemly();
    const first = page.url();
    await leave(page.locator('.otherwise button', { hasText: /Keep|Open no/ }).first());
    await page.getByRole('link', { name: 'To the cut sheet' }).waitFor({ timeout: 20_000 });
    expect(page.url()).not.toBe(first);
    expect(await main()).toContain('Before:');
  });

  test('ticks the steps, and finds them ticked after a reload', async () => {
    await follow('To the cut sheet');
    expect(await main()).toContain('Blades: cut away from you');
    await seemly();
    const steps = await page.locator('.step').count();
    expect(steps).toBeGreaterThan(1);
    const tick = async (number: number): Promise<void> => {
      const box = page.locator(`#step-${number} .tick`);
      if (scripts) {
        await box.click();
        await page.locator(`#step-${number}.ticked`).waitFor();
      } else await leave(box);
    };
    await tick(0);
    await tick(1);
    await page.reload();
    expect(await ticked()).toBe(2);
    const box = page.locator('#step-1 .tick');
    if (scripts) {
      await box.click();
      await page.locator('#step-1:not(.ticked)').waitFor();
    } else await leave(box);
    await page.reload();
    expect(await ticked()).toBe(1);
  });

  test('writes the cut down, and pencils the codes', async () => {
    const place = page.locator('[name="place"]');
    if ((await place.count()) > 0) await place.fill('green folder');
    await press('It’s cut: write it down');
    expect(await main()).toContain('Cut and written down');
    await seemly();
    await follow('On with the project');
    expect(await main()).toMatch(/2 × Front panel|1 × Front panel/);
  });

  test('undoes it, and the shelf is as it was', async () => {
    await leave(page.locator('main').getByRole('button', { name: 'Undo this taking' }).last());
    expect(await main()).toContain('all of it is back on the shelf');
  });

  test('nothing went wrong behind the pages', () => {
    expect(faults.filter((fault) => !fault.includes('422'))).toEqual([]);
  });
});
