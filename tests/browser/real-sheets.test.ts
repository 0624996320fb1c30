/** An A4 pad that is really 209.5 mm wide, from its form by taps to a cut sheet that says which side to check. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { graveFaults } from '#tests/support/axe.ts';
import { browserPath } from '#tests/support/find-browser.ts';
import { startWalk, type Walk } from '#tests/support/walk.ts';

describe.skipIf(!browserPath).each([
  ['with scripts', true],
  ['without scripts', false],
])('a pad that is not what it is sold by, %s', (_, scripts) => {
  let walk: Walk;

  beforeAll(async () => {
    walk = await startWalk({ scripts });
  });

  afterAll(() => walk?.end());

  const seemly = async (): Promise<void> => {
    expect(await walk.page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    if (scripts) expect(await graveFaults(walk.page)).toEqual([]);
  };

  test('is A4 by one tap, and says by how much it differs', async () => {
    await walk.go('/pads/new');
    await walk.fill({ name: 'Chalk' });
    await walk.page.getByLabel('A4, 210 × 297 mm').check();
    expect(await walk.page.locator('[name="width"]').isVisible()).toBe(false);
    await walk.page.getByText('My sheets measure differently').click();
    await walk.fill({ measuredWidth: '20.95 mm', stripDepth: '12 mm' });
    await walk.page.locator('[name="stripEdge"]').selectOption('top');
    await seemly();
    await walk.press('Add it');
    expect(await walk.page.locator('#measuredWidth-note').innerText()).toContain('far off the 210 mm');
    expect(await walk.page.locator('[name="stripDepth"]').inputValue()).toBe('12 mm');
    expect(await walk.page.getByLabel('A4, 210 × 297 mm').isChecked()).toBe(true);
    await walk.fill({ measuredWidth: '209.5 mm' });
    await walk.press('Add it');
    await walk.fill({ name: 'Slate', sheets: '4' });
    await walk.leave(walk.page.locator('form.sheet button[type="submit"]').first());
    await walk.go('/pads/1');
    expect(await walk.main()).toContain('209.5 × 285 mm is left');
    await seemly();
  });

  test('is planned as it is: two parts of 105 mm take a sheet each', async () => {
    await walk.go('/projects');
    await walk.fill({ title: 'Table numbers' });
    await walk.leave(walk.page.locator('form.idea button'));
    await walk.go('/projects/1/plans/new');
    await walk.leave(walk.page.locator('button[value="add"]'));
    const part = { name: 'number', width: '105 mm', height: '285 mm', copies: '2' };
    await walk.fill(Object.fromEntries(Object.entries(part).map(([name, to]) => [`parts.0.${name}`, to])));
    await walk.press('Plan the cuts');
    await walk.page.getByRole('link', { name: 'To the cut sheet' }).waitFor();
    expect(await walk.page.locator('h1').innerText()).toMatch(/2 sheets of Slate/);
  });

  test('and the cut sheet names the side to check, and takes the strip off first', async () => {
    await walk.follow('To the cut sheet');
    const sheet = await walk.main();
    expect(sheet).toContain('Check one sheet of Chalk: 209.5 mm across (the pad says 210 mm)');
    expect(sheet).toContain('Check one sheet of Chalk: 297 mm from top to bottom, the parts need all of it');
    expect(sheet).toMatch(/Set 285 mm: 2 sheets of Chalk, bottom edge to the fence/);
    expect(sheet.indexOf('Set 285 mm')).toBeLessThan(sheet.indexOf('Set 105 mm'));
    await seemly();
  });

  test('nothing went wrong behind the pages', () => {
    expect(walk.faults.filter((fault) => !fault.includes('422'))).toEqual([]);
  });
});
