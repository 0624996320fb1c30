/**
 * The new user's walk, from an empty book to a notcher that has learned, as she would click through it: once with
 * scripts, once without.
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { browserPath } from '#tests/support/find-browser.ts';
import { startWalk, type Walk } from '#tests/support/walk.ts';

describe.skipIf(!browserPath).each([
  ['with scripts', true],
  ['without scripts', false],
])('a new user’s walk %s', (_, scripts) => {
  let walk: Walk;

  beforeAll(async () => {
    walk = await startWalk({ scripts });
  });

  afterAll(() => walk?.end());

  test('starts empty and offers the demo', async () => {
    await walk.go('/');
    expect(await walk.main()).toContain('Nothing is written here yet');
    await expect(walk.page.getByRole('button', { name: /demo/ }).count()).resolves.toBe(1);
  });

  test('sets inches to sixteenths', async () => {
    await walk.go('/tools');
    await walk.page.locator('[name="units"]').selectOption('16');
    await walk.press('Save');
    expect(await walk.page.locator('[name="units"]').inputValue()).toBe('16');
  });

  test('puts a pad with a design and two offcuts on the shelf', async () => {
    await walk.go('/pads/new');
    await walk.fill({ name: 'Hazel walk', width: '12', height: '12' });
    await walk.press('Add it');
    await walk.fill({ name: 'Catkin', sheets: '0' });
    await walk.page.locator('[name="direction"]').selectOption('upright');
    await walk.press('Add this design');
    await walk.go('/offcuts/new');
    await walk.fill({ design: 'catkin', width: '8', height: '8 1/2', place: 'blue folder' });
    await walk.press('Put it on the shelf');
    await walk.fill({ width: '12', height: '10', place: 'blue folder' });
    await walk.press('Put it on the shelf');
    await walk.go('/stash');
    expect(await walk.main()).toMatch(/2 offcuts/);
  });

  test('types a card and sees recipe, drawings and the look of the print', async () => {
    await walk.go('/');
    await walk.fill({ card: '5 7/8 x 3' });
    await walk.press('Find its envelope');
    expect(await walk.page.locator('h1').innerText()).toMatch(
      /^Goes in easily\. Take [A-Z]+, blue folder\.$/,
    );
    // Plane geometry, an inset of 7/16 in: (6⅛ + 3¼)/√2 + ⅞ = 7.504, and 3¼/√2 + 7/16 = 2.736, to the next eighth.
    const drawn = await walk.page.locator('.flat svg').first().locator('text').allTextContents();
    expect(drawn).toEqual(expect.arrayContaining(['7½″', '2¾″']));
    expect(await walk.page.locator('.folded svg').count()).toBe(2);
    await walk.page.locator('#to-look').click();
    await walk.page.locator('#looks').waitFor();
    expect(await walk.page.locator('#looks li').count()).toBe(4);
    expect(await walk.page.locator('.folded').isVisible()).toBe(true);
  });

  test.runIf(scripts)('sees it follow as she types, and no complaint of what is half typed', async () => {
    const { page } = walk;
    const lead = (size: string) =>
      page.waitForFunction((text) => document.querySelector('.lead')?.textContent?.includes(text), size);
    const note = page.locator('#card-note');
    await page.locator('#card').fill('5 7/8 x 3 1/2');
    await lead('5⅞ × 3½″ card');
    await page.locator('#card').fill('5 7/8 x');
    await page.locator('#card-note.unfinished').waitFor();
    await page.keyboard.press('Tab');
    await page.waitForLoadState('networkidle');
    expect(await note.getAttribute('class')).toBe('hint unfinished');
    await page.locator('#card').fill('much');
    await page.waitForFunction(() =>
      document.querySelector('#card-note')?.textContent?.includes('one side only'),
    );
    expect(await page.locator('#card').inputValue()).toBe('much');
    await page.locator('#card').fill('5 7/8 x 3');
    await lead('5⅞ × 3″ card');
    expect(await note.getAttribute('class')).toBe('hint');
  });

  test('picks a look and takes the offcut that leaves the least behind', async () => {
    await walk.leave(walk.page.locator('#looks a').nth(1));
    expect(await walk.page.locator('#looks a[aria-current]').count()).toBe(1);
    expect(await walk.page.locator('#paper li').innerText()).toContain('leaves 8 × 1″');
    await walk.leave(walk.page.locator('#paper').getByRole('button', { name: 'Take it' }));
    await walk.page.waitForURL(/\/projects\/\d+/);
    expect(await walk.main()).toContain('Catkin');
  });

  test('makes it step by step, the first of the batch as the trial', async () => {
    await walk.leave(walk.page.locator('a.next-thing'));
    await walk.follow('Use the first of the batch');
    const seen: string[] = [];
    for (let step = 0; step < 40; step += 1) {
      seen.push(await walk.page.locator('h1').innerText());
      const next = walk.page.locator('a[rel="next"]');
      if ((await next.count()) === 0) break;
      await walk.leave(next);
    }
    expect(seen.join(' ')).toMatch(/2¾/);
    expect(seen.length).toBeGreaterThan(10);
    await walk.press(/easily|goes in|Yes/i);
  });

  test('notes the pocket with its sides swapped, is asked, and has it put right', async () => {
    if (!/outcomes/.test(walk.page.url()))
      await walk.page.goto(walk.page.url().replace(/(\/projects\/\d+).*/, '$1/outcomes/new?envelope=1'));
    await walk.fill({
      pocketWidth: '3 3/16',
      pocketHeight: '6',
      wrong: 'a corner of the glue came loose',
    });
    await walk.press('Write it down');
    expect(await walk.main()).toContain('Did you mean 6″ across and 3³⁄₁₆″ up?');
    expect(await walk.page.locator('#pocketWidth').inputValue()).toBe('3 3/16');
    expect(await walk.page.locator('#wrong').inputValue()).toBe('a corner of the glue came loose');
    await walk.press('Yes, swap the two and write it down');
    await walk.page.waitForURL(/\/projects\/\d+\/outcomes\/1/);
    expect(await walk.main()).toContain('pocket measured 6 × 3³⁄₁₆″');
    await walk.page.goto(walk.page.url().replace(/(\/projects\/\d+).*/, '$1'));
    const project = await walk.main();
    expect(project).toContain('7½″');
    expect(project).toContain('3³⁄₁₆');
    expect(project).toContain('a corner of the glue came loose');
  });

  test('finds her notcher sharpened, and the next recipe uses it', async () => {
    await walk.go('/tools/notchers/1');
    expect(await walk.main()).toContain('learned from 1 pocket');
    // Plane geometry: m = S/2 − (w + h)/(2√2) = 3¾ − 9 3/16/(2√2) = 0.502 in, where 7/16 was assumed.
    expect(await walk.page.locator('.measures dd').first().innerText()).toBe('0.502″');
    await walk.go('/envelopes?width=5+7/8&height=3');
    // S = (6⅛ + 3¼)/√2 + 2 · 0.502 = 7.633, rounded up to the next eighth.
    expect(await walk.page.locator('.flat svg text').allTextContents()).toContain('7¾″');
  });

  test('nothing went wrong behind the pages', () => {
    expect(walk.faults.filter((fault) => !fault.includes('422'))).toEqual([]);
  });
});
