/**
 * A batch from paper with a border, on a phone, once with scripts, once without: the bases lie beside the border, what is
 * left out is named before anything is claimed, and nobody is kept out by it.
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { graveFaults } from '#tests/support/axe.ts';
import { browserPath } from '#tests/support/find-browser.ts';
import { startWalk, type Walk } from '#tests/support/walk.ts';

describe.skipIf(!browserPath).each([
  ['with scripts', true],
  ['without scripts', false],
])('border paper in a batch, %s', (_, scripts) => {
  let walk: Walk;
  beforeAll(async () => {
    walk = await startWalk({ scripts });
  });
  afterAll(() => walk?.end());

  const seemly = async (): Promise<void> => {
    expect(await walk.page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    if (scripts) expect(await graveFaults(walk.page)).toEqual([]);
  };

  test('puts two papers on the shelf, one with a border of 1½ in', async () => {
    await walk.go('/pads/new');
    await walk.fill({ name: 'Orchard fair', width: '12', height: '12' });
    await walk.press('Add it');
    await walk.fill({ name: 'Bunting', sheets: '2' });
    await walk.page.locator('[name="direction"]').selectOption('one edge');
    await walk.fill({ border: '1 1/2' });
    await walk.press('Add this design');
    await walk.go('/pads/new');
    await walk.fill({ name: 'Chalk', width: '8 1/2', height: '11' });
    await walk.page.locator('[name="kind"]').selectOption('cardstock');
    await walk.press('Add it');
    await walk.fill({ name: 'Chalk white', sheets: '5' });
    await walk.press('Add this design');
    await walk.go('/pads/1');
    expect(await walk.main()).toContain('Bunting');
  });

  test('asks for four bases of any patterned paper, and has them all beside the border', async () => {
    await walk.go('/envelopes?width=5+1/2&height=4+1/4&copies=4');
    await walk.press(/Begin a project/);
    await walk.fill({ blanks: '0' });
    await walk.press('Something else');
    await walk.fill({ 'parts.0.name': 'Base', 'parts.0.width': '8 1/2', 'parts.0.height': '5 1/2' });
    await walk.fill({ 'parts.0.copies': '4' });
    await walk.page.locator('[name="parts.0.paper"]').selectOption('kind-patterned');
    await walk.press('Plan the cuts');
    await walk.page.getByRole('link', { name: 'To the cut sheet' }).waitFor();
    const shown = await walk.main();
    expect(shown).toContain('2 sheets of Bunting: everything fits.');
    expect(shown).toContain('Looked at Bunting. Left out: sheets of Chalk white (not the paper asked for).');
    expect(shown).toContain('Opens 2 sheets; no plan from Bunting opens fewer.');
    await seemly();
  });

  test('with a part more says what is left out, and of which paper', async () => {
    await walk.follow('Change what is cut');
    await walk.fill({ blanks: '0', 'parts.0.copies': '5' });
    await walk.press('Plan the cuts');
    await walk.page.getByRole('link', { name: 'To the cut sheet' }).waitFor();
    const shown = await walk.main();
    expect(shown).toContain('4 of 5 parts fit.');
    expect(shown).toContain('No plan from Bunting places more.');
    expect(shown).toContain('another sheet of Bunting would take it');
    await seemly();
  });

  test('nothing went wrong behind the pages', () => {
    expect(walk.faults).toEqual([]);
  });
});
