/** What axe, the checker of accessible pages, finds serious on a page as it stands, and what runs out at its side. Knows no page. */
import axe from 'axe-core';
import type { Page } from 'playwright-core';

/** The names of the rules broken; empty on a page that is fit for everybody. */
export async function graveFaults(page: Page): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axe.source);
  const { violations } = await page.evaluate(() =>
    (globalThis as unknown as { axe: Pick<typeof axe, 'run'> }).axe.run({
      resultTypes: ['violations'],
      preload: false,
      iframes: false,
    }),
  );
  return violations.filter(({ impact }) => impact === 'serious' || impact === 'critical').map(({ id }) => id);
}

const DESK = 1280;
const PHONE = 390;

/**
 * What is wrong with the page at the width of a desk and of a phone; leaves it at the phone's. Axe is asked again only
 * where the phone shows other things or shows them otherwise.
 */
export async function faultsAtBothWidths(page: Page): Promise<string[]> {
  const found: string[] = [];
  const seen = new Set<string>();
  for (const width of [DESK, PHONE]) {
    await page.setViewportSize({ width, height: 844 });
    const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    if (over > 0) found.push(`${over} too wide at ${width}`);
    const shown = await page.evaluate(whatShows);
    if (!seen.has(shown)) found.push(...(await graveFaults(page)).map((id) => `${id} at ${width}`));
    seen.add(shown);
  }
  return found;
}

/** Every element that shows, with what contrast and names depend on. Runs on the page. */
function whatShows(): string {
  return [...document.querySelectorAll('body *')]
    .map((one) => {
      if (!one.checkVisibility()) return '';
      const { color, backgroundColor, fontSize, fontWeight } = getComputedStyle(one);
      return [one.tagName, color, backgroundColor, fontSize, fontWeight].join();
    })
    .join('\n');
}
