/** For each fold the way from the card in hand to the template: recipe, shelf, order, plan, cut sheet, true-size file. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { browserPath } from '#tests/support/find-browser.ts';
import { startWalk, type Walk } from '#tests/support/walk.ts';

const FOLDS = [
  ['diagonal', 'The square on the tool'],
  ['side-seam', 'One strip '],
  ['two-piece', 'Both pieces '],
] as const;

describe.skipIf(!browserPath)('from card to template', () => {
  let walk: Walk;

  beforeAll(async () => {
    walk = await startWalk();
    await walk.go('/');
    await walk.press(/demo/);
  });

  afterAll(() => walk?.end());

  test.each(FOLDS)('%s', async (fold, caption) => {
    await walk.page.goto(`${walk.url}/envelopes?width=5+7/8&height=3&copies=2&fold=${fold}`);
    expect(await walk.page.locator('h1').innerText()).toMatch(/^Goes in easily\. (Take|Open|Plan) /);
    expect(await walk.page.locator('.flat figcaption').innerText()).toContain(caption);
    expect(await walk.page.locator('#paper .pieces svg').count()).toBe(1);
    await walk.leave(walk.page.getByRole('button', { name: /plan the whole batch/ }));
    const project = walk.page.url().replace(/\/plans.*/, '');
    await walk.leave(walk.page.getByRole('button', { name: 'Plan the cuts' }));
    await walk.page.waitForFunction(() => /fits/.test(document.querySelector('h1')?.textContent ?? ''));
    expect(await walk.page.locator('h1').innerText()).toContain('everything fits');
    await walk.leave(walk.page.getByRole('link', { name: 'To the cut sheet' }));
    expect(await walk.page.locator('main').innerText()).toMatch(/Set \d|whole/);
    await walk.page.goto(project);
    await walk.page.getByText('The recipe, drawn with every measure').click();
    for (const name of ['Letter', 'SVG']) {
      const href = await walk.page.getByRole('link', { name, exact: true }).first().getAttribute('href');
      const file = await walk.page.request.get(walk.url + href);
      expect(file.status()).toBe(200);
      expect((await file.body()).subarray(0, 4).toString()).toBe(name === 'SVG' ? '<?xm' : '%PDF');
    }
  });
});
