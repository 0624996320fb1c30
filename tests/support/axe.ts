/** What axe, the checker of accessible pages, finds serious on a page as it stands. Knows no page. */
import axe from 'axe-core';
import type { Page } from 'playwright-core';

/** The names of the rules broken; empty on a page that is fit for everybody. */
export async function graveFaults(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate(() =>
    (globalThis as unknown as { axe: Pick<typeof axe, 'run'> }).axe.run({
      resultTypes: ['violations'],
      preload: false,
      iframes: false,
    }),
  );
  return violations.filter(({ impact }) => impact === 'serious' || impact === 'critical').map(({ id }) => id);
}
