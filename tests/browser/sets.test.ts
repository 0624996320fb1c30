/** From a card to the post, its other parts and a bought envelope, in a browser on a phone: with scripts and without. */
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openBrowser, type RunningApp, startApp } from '#tests/support/browser.ts';
import { browserPath } from '#tests/support/find-browser.ts';

describe.skipIf(!browserPath).each([
  ['with scripts', true],
  ['without scripts', false],
])('a set %s', (_, scripts) => {
  let app: RunningApp;
  let browser: Browser;
  let page: Page;
  const faults: string[] = [];

  beforeAll(async () => {
    [app, browser] = await Promise.all([startApp(), openBrowser()]);
    const context = await browser.newContext({
      javaScriptEnabled: scripts,
      viewport: { width: 320, height: 720 },
    });
    page = await context.newPage();
    page.setDefaultTimeout(8000);
    page.on('pageerror', (error) => faults.push(error.message));
    page.on('console', (message) => message.type() === 'error' && faults.push(message.text()));
  }, 60_000);

  afterAll(async () => {
    await browser?.close();
    await app?.stop();
  });

  const go = (path: string) => page.goto(app.url + path);
  const leave = async (target: Locator): Promise<void> => {
    const left = page.waitForEvent('framenavigated');
    await target.click();
    await left;
    await page.waitForLoadState();
  };
  const press = (name: string) => leave(page.getByRole('button', { name }).first());
  const fill = async (fields: Record<string, string>) => {
    for (const [name, value] of Object.entries(fields))
      await page.locator(`[name="${name}"]`).first().fill(value);
  };

  test('bought envelopes are noted, and stand beside the recipe', async () => {
    await go('/ready-made/new');
    await fill({ name: 'A2', width: '4 3/8', height: '5 3/4', count: '12' });
    await press('Put them in the stash');
    await go('/envelopes?width=5+1/2&height=4+1/4&copies=3');
    await leave(page.getByRole('link', { name: '12 A2' }));
    expect(await page.locator('[name="used"]').inputValue()).toBe('3');
    await press('Take them out');
    expect(await page.locator('main').innerText()).toContain('9 left');
  });

  // Facts §5: over 3.5 oz a letter becomes a large envelope.
  test('the post is one tap behind the envelope, and follows what is weighed', async () => {
    await go('/envelopes?width=7&height=5');
    await page.locator('summary', { hasText: 'Can it be posted?' }).click();
    await page.locator('[name="mass"]').fill('4 oz');
    if (!scripts) await press('Ask again');
    const answer = page.locator('#post-answer .answer');
    await answer.filter({ hasText: 'large envelope' }).waitFor();
    expect(await answer.innerText()).toContain('United States: large envelope');
  });

  test('its parts go on to a project’s order', async () => {
    await go('/projects');
    await fill({ title: 'Five for the choir' });
    await press('Write it down');
    await go('/parts?width=7&height=5');
    await page.locator('[name="take.0"]').check();
    await press('Add to its order');
    expect(page.url()).toContain('/projects/1/plans/new');
    expect(await page.locator('[name="parts.0.name"]').inputValue()).toBe('Card base');
  });

  test.each([
    '/post?width=7&height=5&thick=1/16&mass=1',
    '/parts?width=7&height=5',
    '/parts/wrap?width=7&height=5',
    '/parts/notches?width=7&height=5',
    '/parts/box',
    '/holders?width=7&height=5&depth=2',
    '/holders/sets?width=7&height=5&sets=12',
    '/paper?weight=80+lb+cover',
    '/paper/card?width=7&height=5&base=80+lb+cover',
    '/ready-made/1',
    '/ready-made/new',
  ])('%s needs no scrolling sideways at 320 pixels', async (path) => {
    await go(path);
    const box = await page.locator('body').boundingBox();
    expect(box!.width).toBeLessThanOrEqual(320);
    if (scripts) expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(320);
  });

  test('nothing went wrong on the way', () => expect(faults).toEqual([]));
});
