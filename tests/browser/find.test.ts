/** The search box in a browser: reached by its key, answering while she types, and on a page of its own without script. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { graveFaults } from '#tests/support/axe.ts';
import { browserPath } from '#tests/support/find-browser.ts';
import { startWalk, type Walk } from '#tests/support/walk.ts';

describe.skipIf(!browserPath).each([true, false])('with script %s', (scripts) => {
  let walk: Walk;

  beforeAll(async () => {
    walk = await startWalk({ scripts });
    await walk.go('/tools/cards/new');
    await walk.fill({ name: 'Bookmark', width: '5 3/8', height: '2', bulk: '0' });
    await walk.press('Save');
  });
  afterAll(() => walk.end());

  test('5 3/8 typed into the box finds the card that measures it', async () => {
    const { page } = walk;
    await walk.go('/stash');
    if (scripts) await page.keyboard.press('/');
    else await page.locator('#find-box').focus();
    await page.keyboard.type('5 3/8');
    if (!scripts) {
      await page.keyboard.press('Enter');
      await page.waitForURL(/\/find\?q=5\+3%2F8/);
    }
    await page.locator('#finds').getByText('card 5⅜ × 2″').waitFor();
    expect(await page.locator('#finds [role=status]').innerText()).toMatch(
      /^Found: 1 card\. Lengths within ¹⁄₁₆″/,
    );
    if (scripts) {
      await page.keyboard.press('Escape');
      await page.locator('#finds').getByRole('link').first().waitFor({ state: 'detached' });
    }
    expect(walk.faults).toEqual([]);
  });

  test.runIf(scripts)('on its own page the address follows what she types and chooses', async () => {
    const { page } = walk;
    await walk.go('/find?q=nothing');
    await page.locator('#find-box').fill('book');
    await page.locator('#finds mark').waitFor();
    await page.waitForURL(/q=book/);
    await page.getByText('Narrow it').click();
    await page.getByLabel('Longer side').selectOption('mini');
    await page.locator('#finds').getByText('Look everywhere').waitFor();
    await page.waitForURL(/size=mini/);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThan(1);
    expect(await graveFaults(page)).toEqual([]);
    expect(walk.faults).toEqual([]);
  });
});
