/**
 * A batch on a phone at the table: from the demo's last project to its plan, the cut sheet with its ticks, the cut and
 * back, once with scripts, once without; nobody is kept out by it.
 */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { planCuts } from '#core/cutting/plan.ts';
import { buySheets } from '#stores/movements.ts';
import { addOffcut } from '#stores/offcuts.ts';
import { createProject } from '#stores/projects.ts';
import { DIRECT, openApp } from '#tests/support/app.ts';
import { graveFaults } from '#tests/support/axe.ts';
import { batchOf37 } from '#tests/support/batch.ts';
import { sharedBrowser } from '#tests/support/browser.ts';
import { fillShelf, later, scrap, THANKS } from '#tests/support/cast.ts';
import { browserPath } from '#tests/support/find-browser.ts';
import { pagesOn, visit } from '#tests/support/print-page.ts';
import { startWalk, type Walk } from '#tests/support/walk.ts';

describe.skipIf(!browserPath).each([
  ['with scripts', true],
  ['without scripts', false],
])('a batch cut %s', (_, scripts) => {
  let walk: Walk;

  beforeAll(async () => {
    walk = await startWalk({ scripts });
  });

  afterAll(() => walk?.end());

  /** As wide as the phone, and fit for everybody. */
  const seemly = async (): Promise<void> => {
    expect(await walk.page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    if (!scripts) return;
    expect(await graveFaults(walk.page)).toEqual([]);
  };

  test('asks for what the last project still needs, with a front for each', async () => {
    await walk.page.goto(walk.url);
    await walk.press(/demo/i);
    await walk.page.goto(`${walk.url}/projects`);
    await walk.follow(/Winter thank-yous/);
    await walk.follow('Plan the whole batch');
    await walk.page.locator('[name="blanks"]').fill('2');
    await walk.press('+ Front panel');
    expect(await walk.page.locator('[name="parts.0.name"]').inputValue()).toBe('Front panel');
    await walk.page.locator('[name="parts.0.copies"]').fill('many');
    await walk.page.locator('.spot summary').click();
    await walk.page.locator('[name="parts.0.fromLeft"]').fill('1 1/2');
    await walk.press('Plan the cuts');
    expect(await walk.page.locator('[id="parts.0.fromTop-note"]').innerText()).toContain('both distances');
    expect(await walk.page.locator('[name="parts.0.fromLeft"]').inputValue()).toBe('1 1/2');
    expect(await walk.page.locator('[id="parts.0.copies-note"]').innerText()).toContain('whole number');
    expect(await walk.page.locator('[name="parts.0.copies"]').inputValue()).toBe('many');
    await seemly();
    await walk.page.locator('[name="parts.0.copies"]').fill('2');
    await walk.page.locator('[name="parts.0.fromLeft"]').fill('');
  });

  test('is given one plan, and keeps one of its pieces for another time', async () => {
    await walk.press('Plan the cuts');
    await walk.page.getByRole('link', { name: 'To the cut sheet' }).waitFor();
    expect(await walk.page.locator('h1').innerText()).toMatch(/everything fits\./);
    await seemly();
    const first = walk.page.url();
    await walk.leave(walk.page.locator('.otherwise button', { hasText: /Keep|Open no/ }).first());
    await walk.page.getByRole('link', { name: 'To the cut sheet' }).waitFor();
    expect(walk.page.url()).not.toBe(first);
    expect(await walk.main()).toContain('Before:');
  });

  test('is led from step to step, and finds after a reload what is cut', async () => {
    await walk.follow('To the cut sheet');
    const at = (step: number) => walk.page.locator('.now-where', { hasText: `Step ${step} of` }).waitFor();
    await at(1);
    expect(await walk.main()).toContain('fingers well behind it');
    await seemly();
    const go = walk.page.getByRole('button', { name: 'Cut, go on' });
    if (scripts) await walk.page.keyboard.press('Space');
    else await walk.leave(go);
    await at(2);
    expect(await walk.page.title()).toMatch(/^Step 2 of \d+ · Cut sheet/);
    if (scripts) {
      expect(await go.evaluate((button) => button === document.activeElement)).toBe(true);
      await walk.page.keyboard.press('ArrowLeft');
    } else await walk.follow('Back');
    await at(1);
    await walk.page.goto(`${walk.page.url().replace(/\?.*/, '')}`);
    await at(2);
    await seemly();
    while ((await go.count()) > 0) {
      const title = await walk.page.title();
      if (scripts) {
        await go.click();
        await walk.page.waitForFunction((before) => document.title !== before, title);
      } else await walk.leave(go);
    }
    expect(await walk.main()).toContain('That was the last cut.');
    await seemly();
  });

  test('writes the cut down, and pencils the codes', async () => {
    const place = walk.page.locator('[name="place"]');
    if ((await place.count()) > 0) await place.fill('green folder');
    await walk.press('It’s cut: write it down');
    expect(await walk.main()).toContain('Cut and written down');
    await seemly();
    await walk.follow('On with the project');
    expect(await walk.main()).toContain('Front panel');
  });

  test('undoes it, and the shelf is as it was', async () => {
    await walk.leave(walk.page.locator('main').getByRole('button', { name: 'Undo this taking' }).first());
    expect(await walk.main()).toContain('all of it is back on the shelf');
  });

  test('nothing went wrong behind the pages', () => {
    expect(walk.faults.filter((fault) => !fault.includes('422'))).toEqual([]);
  });
});

describe.skipIf(!browserPath)('a cut sheet on paper', () => {
  let page: Page;
  beforeAll(async () => {
    page = await (await sharedBrowser()).newPage();
  });
  afterAll(() => page?.close());

  test('of a dozen pieces takes two pages', async () => {
    const app = await openApp();
    const { fern, hare, hem } = await fillShelf(app.db);
    for (const { id } of [fern, hare, hem]) await buySheets(app.db, id, { sheets: 6, at: later(1) });
    for (const [width, height] of [
      [10, 7],
      [9, 9],
      [7, 11],
      [8, 5],
      [6, 9],
      [11, 4],
      [8.5, 10],
    ] as const)
      await addOffcut(app.db, { design: fern.id, offcut: scrap(width, height), count: 1, at: later(1) });
    const { id } = await createProject(app.db, { ...THANKS, quantity: 9 }, later(1));
    const sizes = [
      ['Front', '5', '3'],
      ['Mat', '5 1/2', '3 1/2'],
      ['Liner', '6 5/16', '6 11/16'],
    ] as const;
    const parts = sizes.flatMap(([name, width, height], index) =>
      Object.entries({ name, width, height, copies: '6' }).map(
        ([field, value]) => [`parts.${index}.${field}`, value] as const,
      ),
    );
    const asked = await app.post(`/projects/${id}/plans`, { blanks: '9', ...Object.fromEntries(parts) });
    await visit(page, app, `${asked.headers.get('Location')}/sheet`);
    expect(await page.locator('.laid > li').count()).toBeGreaterThan(15);
    expect([await pagesOn(page, 'Letter'), await pagesOn(page, 'A4')]).toEqual([2, 2]);
  });

  test('of 37 pieces of seven kinds takes two pages, and no step is told twice', async () => {
    const app = await openApp({
      ...DIRECT,
      start: ({ order, pieces }) => ({
        plan: Promise.resolve(planCuts(order, pieces, { work: 2000, seed: 1 })),
        progress: () => undefined,
        stop: () => {},
      }),
    });
    const { project, fields } = await batchOf37(app);
    const asked = await app.post(`/projects/${project}/plans`, [...fields, ['do', 'plan']]);
    await visit(page, app, `${asked.headers.get('Location')}/sheet`);
    expect(await page.locator('.result').textContent()).toContain('7 × Envelope');
    // 87 steps before sheets cut alike shared theirs.
    expect(await page.locator('.step').count()).toBeLessThan(30);
    expect([await pagesOn(page, 'Letter'), await pagesOn(page, 'A4')]).toEqual([2, 2]);
  });
});
