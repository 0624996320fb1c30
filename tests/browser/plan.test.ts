/**
 * A batch on a phone at the table: from the demo's last project to its plan, the cut sheet with its ticks, the cut and
 * back, once with scripts, once without; nobody is kept out by it.
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { graveFaults } from '#tests/support/axe.ts';
import { browserPath } from '#tests/support/find-browser.ts';
import { startWalk, type Walk } from '#tests/support/walk.ts';

describe.skipIf(!browserPath).each([
  ['with scripts', true],
  ['without scripts', false],
])('a batch cut %s', (_, scripts) => {
  let walk: Walk;

  beforeAll(async () => {
    walk = await startWalk({ scripts });
  }, 60_000);

  afterAll(() => walk?.end());

  const ticked = () => walk.page.locator('.step.ticked').count();
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
    await walk.page.getByRole('link', { name: 'To the cut sheet' }).waitFor({ timeout: 20_000 });
    expect(await walk.page.locator('h1').innerText()).toMatch(/everything fits\./);
    await seemly();
    const first = walk.page.url();
    await walk.leave(walk.page.locator('.otherwise button', { hasText: /Keep|Open no/ }).first());
    await walk.page.getByRole('link', { name: 'To the cut sheet' }).waitFor({ timeout: 20_000 });
    expect(walk.page.url()).not.toBe(first);
    expect(await walk.main()).toContain('Before:');
  });

  test('ticks the steps, and finds them ticked after a reload', async () => {
    await walk.follow('To the cut sheet');
    expect(await walk.main()).toContain('Blades: cut away from you');
    await seemly();
    const steps = await walk.page.locator('.step').count();
    expect(steps).toBeGreaterThan(1);
    const tick = async (number: number): Promise<void> => {
      const box = walk.page.locator(`#step-${number} .tick`);
      if (scripts) {
        await box.click();
        await walk.page.locator(`#step-${number}.ticked`).waitFor();
      } else await walk.leave(box);
    };
    await tick(0);
    await tick(1);
    await walk.page.reload();
    expect(await ticked()).toBe(2);
    const box = walk.page.locator('#step-1 .tick');
    if (scripts) {
      await box.click();
      await walk.page.locator('#step-1:not(.ticked)').waitFor();
    } else await walk.leave(box);
    await walk.page.reload();
    expect(await ticked()).toBe(1);
  });

  test('writes the cut down, and pencils the codes', async () => {
    const place = walk.page.locator('[name="place"]');
    if ((await place.count()) > 0) await place.fill('green folder');
    await walk.press('It’s cut: write it down');
    expect(await walk.main()).toContain('Cut and written down');
    await seemly();
    await walk.follow('On with the project');
    expect(await walk.main()).toMatch(/2 × Front panel|1 × Front panel/);
  });

  test('undoes it, and the shelf is as it was', async () => {
    await walk.leave(walk.page.locator('main').getByRole('button', { name: 'Undo this taking' }).last());
    expect(await walk.main()).toContain('all of it is back on the shelf');
  });

  test.runIf(scripts)('prints a batch of eighteen parts on two pages', async () => {
    await walk.follow('Plan the whole batch');
    await walk.page.locator('[name="blanks"]').fill('6');
    await walk.press('+ Front panel');
    await walk.press('+ Envelope liner');
    for (const part of [0, 1]) await walk.page.locator(`[name="parts.${part}.copies"]`).fill('6');
    await walk.press('Plan the cuts');
    await walk.follow('To the cut sheet');
    expect(await walk.page.locator('.step').count()).toBeGreaterThan(12);
    const margin = '12mm';
    const pdf = await walk.page.pdf({
      format: 'Letter',
      margin: { top: margin, right: margin, bottom: margin, left: margin },
    });
    expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)!.length).toBeLessThanOrEqual(2);
  });

  test('nothing went wrong behind the pages', () => {
    expect(walk.faults.filter((fault) => !fault.includes('422'))).toEqual([]);
  });
});
