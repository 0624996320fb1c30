/** Pages of the app as a browser shows and prints them, without a server: every request is answered by the app itself. */
import type { Page } from 'playwright-core';
import type { App } from './app.ts';
import { openBrowser } from './browser.ts';

const MARGIN = '12mm';

/** How many pages a path takes on Letter and on A4. */
export async function pagesPrinted(app: Pick<App, 'get'>, path: string): Promise<number[]> {
  const browser = await openBrowser();
  try {
    const page = await browser.newPage();
    await visit(page, app, path);
    return [await pagesOn(page, 'Letter'), await pagesOn(page, 'A4')];
  } finally {
    await browser.close();
  }
}

export async function visit(page: Page, app: Pick<App, 'get'>, path: string): Promise<void> {
  await page.route('**/*', async (route) => {
    const { pathname, search } = new URL(route.request().url());
    const answer = await app.get(pathname + search);
    await route.fulfill({
      body: Buffer.from(await answer.arrayBuffer()),
      headers: Object.fromEntries(answer.headers),
      status: answer.status,
    });
  });
  await page.goto(`http://creasebook.test${path}`);
}

export async function pagesOn(page: Page, format: 'Letter' | 'A4'): Promise<number> {
  const margin = { top: MARGIN, right: MARGIN, bottom: MARGIN, left: MARGIN };
  const pdf = await page.pdf({ format, margin });
  return pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)!.length;
}
