/** From a card to the post, its other parts and a bought envelope, in a browser on a phone: with scripts and without. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { browserPath } from '#tests/support/find-browser.ts';
import { startWalk, type Walk } from '#tests/support/walk.ts';

describe.skipIf(!browserPath).each([
  ['with scripts', true],
  ['without scripts', false],
])('a set %s', (_, scripts) => {
  let walk: Walk;

  beforeAll(async () => {
    walk = await startWalk({ scripts, viewport: { width: 320, height: 720 } });
  });

  afterAll(() => walk?.end());

  test('bought envelopes are noted, and stand beside the recipe', async () => {
    await walk.go('/ready-made/new');
    await walk.fill({ name: 'A2', width: '4 3/8', height: '5 3/4', count: '12' });
    await walk.press('Put them in the stash');
    await walk.go('/envelopes?width=5+1/2&height=4+1/4&copies=3');
    await walk.leave(walk.page.getByRole('link', { name: '12 A2' }));
    expect(await walk.page.locator('[name="used"]').inputValue()).toBe('3');
    await walk.press('Take them out');
    expect(await walk.page.locator('main').innerText()).toContain('9 left');
  });

  // USPS DMM 101.1: over 3.5 oz a letter becomes a large envelope.
  test('the post is one tap behind the envelope, and follows what is weighed', async () => {
    await walk.go('/envelopes?width=7&height=5');
    await walk.page.getByRole('link', { name: 'Post and set' }).click();
    await walk.page.locator('[name="mass"]').fill('4 oz');
    if (!scripts) await walk.press('Ask again');
    const answer = walk.page.locator('#post-answer .answer');
    await answer.filter({ hasText: 'large envelope' }).waitFor();
    expect(await answer.innerText()).toContain('United States: large envelope');
  });

  test('its parts go on to a project’s order', async () => {
    await walk.go('/projects');
    await walk.fill({ title: 'Five for the choir' });
    await walk.press('Write it down');
    await walk.go('/parts?width=7&height=5');
    await walk.page.locator('[name="take.0"]').check();
    await walk.press('Add to its order');
    expect(walk.page.url()).toContain('/projects/1/plans/new');
    expect(await walk.page.locator('[name="parts.0.name"]').inputValue()).toBe('Card base');
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
    await walk.go(path);
    const box = await walk.page.locator('body').boundingBox();
    expect(box!.width).toBeLessThanOrEqual(320);
    if (scripts)
      expect(await walk.page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(320);
  });

  test('nothing went wrong on the way', () => expect(walk.faults).toEqual([]));
});
