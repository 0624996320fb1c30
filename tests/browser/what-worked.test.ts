/**
 * From a trial that was tight to the next batch of the same card: another start, called finished with what was really
 * made, known again when the card is typed, made again, found by its start; and what to buy, printed. With script and without.
 */
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { solveEnvelope } from '#core/envelope/recipes.ts';
import { inches } from '#shared/length.ts';
import { closeDatabase, openDatabase } from '#stores/database.ts';
import { addTrial } from '#stores/envelopes.ts';
import { chosenNotcher } from '#stores/notchers.ts';
import { fillShelf, later, size } from '#tests/support/cast.ts';
import { browserPath } from '#tests/support/find-browser.ts';
import { takeThree } from '#tests/support/projects.ts';
import { startWalk, type Walk } from '#tests/support/walk.ts';

const CARD = { ...size(5 + 1 / 16, 6 + 7 / 16), bulk: inches(1 / 32) };

describe.skipIf(!browserPath).each([
  ['with script', true],
  ['without script', false],
])('what worked, %s', (_, scripts) => {
  let walk: Walk;
  let home: string;

  beforeAll(async () => {
    walk = await startWalk({ scripts });
    const db = openDatabase(join(walk.folder, 'creasebook.db'));
    const cast = await fillShelf(db);
    const { notcher } = await chosenNotcher(db);
    const recipe = solveEnvelope({ card: CARD, notcher })[0]!;
    expect(recipe.starts[0]).toBe(inches(5.25));
    const { project } = await takeThree(db, cast, { title: 'Odd ones', card: CARD, quantity: 3, recipe });
    await addTrial(db, project, later(2));
    await closeDatabase(db);
    home = `/projects/${project}`;
  }, 60_000);

  afterAll(() => walk?.end());

  test('a trial that is tight changes the start for the rest', async () => {
    await walk.go(`${home}/make?envelope=4&step=99`);
    await walk.press('Tight');
    await walk.press(/Use .*5⅜/);
    expect(await walk.main()).toContain('The start was changed after the trial, from 5¼″.');
  });

  test('the first of the batch goes in, and is told of as the project is called finished', async () => {
    await walk.go(`${home}/make?envelope=1&step=99`);
    await walk.press('It goes in');
    await walk.go(home);
    await walk.page.getByText('Change title, notes, lesson, series').click();
    await walk.follow(/call it finished/);
    expect(await walk.page.locator('[name="start"]').inputValue()).toBe('5 3/8');
    await walk.page.getByLabel('easy').check();
    await walk.press(/call it finished/);
    expect(await walk.main()).toContain('· finished');
  });

  test('typed again, the card is known, and made again it begins at what worked', async () => {
    await walk.go('/');
    await walk.fill({ card: '6 7/16 x 5 1/16' });
    if (!scripts) await walk.press('Find its envelope');
    const note = walk.page.getByLabel('Made before');
    await note.getByText('start 5⅜″, easy').waitFor();
    await walk.leave(note.getByRole('button', { name: 'Make it again' }));
    if (!walk.page.url().includes('/projects/')) throw new Error(`invalid page: ${walk.page.url()}`);
    const again = /\/projects\/\d+/.exec(walk.page.url())![0];
    await walk.go(again);
    expect(await walk.main()).toMatch(/Made again from Odd ones[\s\S]*Start\s+5⅜″/);
  });

  test('a length in the box finds it', async () => {
    await walk.page.locator('#find-box').fill('5 3/8');
    if (!scripts) await walk.press('Look up');
    await walk.page.locator('#finds').getByRole('link', { name: 'Odd ones' }).first().waitFor();
  });

  test('what to buy is a list to print, with no button on it', async () => {
    await walk.go('/stash/shopping');
    await walk.page.emulateMedia({ media: 'print' });
    expect(await walk.page.getByText('Meadow walk').first().isVisible()).toBe(true);
    for (const button of await walk.page.locator('main button, .masthead nav').all())
      expect(await button.isVisible()).toBe(false);
    expect(walk.faults).toEqual([]);
  });
});
