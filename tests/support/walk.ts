/** Walks through the running app in a browser as its reader would, page by page. Knows no page in particular. */
import type { Locator, Page } from 'playwright-core';
import { sharedBrowser, startApp } from './browser.ts';

export interface Walk {
  readonly url: string;
  /** Where its book lies. */
  readonly folder: string;
  readonly page: Page;
  /** What the browser complained of so far. */
  readonly faults: string[];
  readonly go: (path: string) => Promise<unknown>;
  /** Clicks what leads to another page, and waits for it. */
  readonly leave: (target: Locator) => Promise<void>;
  readonly press: (name: string | RegExp) => Promise<void>;
  readonly follow: (name: string | RegExp) => Promise<void>;
  readonly fill: (fields: Record<string, string>) => Promise<void>;
  /** All that stands on the page. */
  readonly main: () => Promise<string>;
  readonly end: () => Promise<void>;
}

/** Ends what would wait for ever; a busy machine stays far below it. */
const MOST_WAIT = 40_000;

/** An empty book of its own and a phone to read it on. */
export async function startWalk({
  scripts = true,
  viewport = { width: 390, height: 844 },
}: {
  scripts?: boolean;
  viewport?: { width: number; height: number };
} = {}): Promise<Walk> {
  const [app, browser] = await Promise.all([startApp(), sharedBrowser()]);
  const context = await browser.newContext({ javaScriptEnabled: scripts, viewport });
  const page = await context.newPage();
  page.setDefaultTimeout(MOST_WAIT);
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => message.type() === 'error' && faults.push(message.text()));
  const leave = async (target: Locator): Promise<void> => {
    await Promise.all([page.waitForEvent('framenavigated'), target.click()]);
    await page.waitForLoadState();
  };
  return {
    url: app.url,
    folder: app.folder,
    page,
    faults,
    go: (path) => page.goto(app.url + path),
    leave,
    press: (name) => leave(page.getByRole('button', { name }).first()),
    follow: (name) => leave(page.getByRole('link', { name }).first()),
    fill: async (fields) => {
      for (const [name, value] of Object.entries(fields))
        await page.locator(`[name="${name}"]`).first().fill(value);
    },
    main: () => page.locator('main').innerText(),
    end: async () => {
      await context.close();
      await app.stop();
    },
  };
}
