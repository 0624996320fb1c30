/** The journal in a real browser, with script and without: trial, steps by keyboard, another start, a measured pocket. */
import { join } from 'node:path';
import type { Browser, BrowserContext, ConsoleMessage, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { foldOf } from '#core/envelope/folds.ts';
import { closeDatabase, type Database, openDatabase } from '#stores/database.ts';
import { buySheets } from '#stores/movements.ts';
import { createProject, listProjects, readProject } from '#stores/projects.ts';
import { faultsAtBothWidths } from '#tests/support/axe.ts';
import { type RunningApp, sharedBrowser, startApp } from '#tests/support/browser.ts';
import { type Cast, FIRST, fillShelf, later, RECIPE, THANKS } from '#tests/support/cast.ts';
import { browserPath } from '#tests/support/find-browser.ts';
import { takeThree } from '#tests/support/projects.ts';

/** As many as the recipe’s fold takes on scrap, which has no print to lay down. */
const STEPS = foldOf(RECIPE).steps(RECIPE, 'clockwise').length;

let app: RunningApp;
let browser: Browser;
let db: Database;
let cast: Cast;
beforeAll(async () => {
  if (!browserPath) return;
  [app, browser] = await Promise.all([startApp(), sharedBrowser()]);
  db = openDatabase(join(app.folder, 'creasebook.db'));
  cast = await fillShelf(db);
  await buySheets(db, cast.fern.id, { sheets: 60, at: FIRST });
});
afterAll(async () => {
  if (!browserPath) return;
  await closeDatabase(db);
  await app.stop();
});

describe.skipIf(!browserPath).each([
  { name: 'with script', javaScriptEnabled: true },
  { name: 'without script', javaScriptEnabled: false },
])('$name', ({ name, javaScriptEnabled }) => {
  let context: BrowserContext;
  let page: Page;
  const complaints: string[] = [];
  beforeEach(async () => {
    context = await browser.newContext({ javaScriptEnabled, viewport: { width: 1100, height: 850 } });
    page = await context.newPage();
    page.on('console', (line) => isComplaint(line) && complaints.push(line.text()));
    page.on('pageerror', (error) => complaints.push(error.message));
  });
  afterEach(async () => {
    await context.close();
    expect(complaints.splice(0)).toEqual([]);
  });

  const visit = (path: string) => page.goto(app.url + path);

  test('a trial from scrap, folded by keyboard, asks for another start', async () => {
    const { project } = await takeThree(db, cast, { ...THANKS, title: `Trial ${name}` });
    await visit(`/projects/${project}`);
    await page.getByRole('link', { name: 'Make the trial piece' }).click();
    await page.getByRole('button', { name: 'Make it from scrap' }).click();
    await page.getByText('trial piece from scrap').waitFor();
    for (let step = 1; step <= STEPS; step++) {
      await page.locator('.making-words', { hasText: `Step ${step} of ${STEPS}` }).waitFor();
      await page.locator('a[rel=next]:focus').waitFor();
      await page.keyboard.press('Enter');
    }
    await page.getByText('Put the card in. Does it go?').waitFor();
    await page.getByRole('link', { name: 'Back' }).click();
    await page.getByText('to close.').waitFor();
    await page.getByRole('link', { name: 'Next' }).click();
    await page.getByRole('button', { name: 'Tight' }).click();
    await page
      .getByRole('button', { name: /Use .* for the rest/ })
      .first()
      .click();
    await page.getByText('The start was changed after the trial').waitFor();
    await page.getByRole('link', { name: 'Fold envelope 1' }).waitFor();
    expect((await readProject(db, project))!.start).not.toBeNull();
  });

  test('an envelope is written down, and its pocket sharpens the tool', async () => {
    const { project } = await takeThree(db, cast, { ...THANKS, title: `Pocket ${name}` });
    await visit(`/projects/${project}/outcomes/new?envelope=1`);
    await page.getByLabel('easy').check();
    await page.getByLabel('Width').fill('wide');
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.locator('#pocketWidth-note', { hasText: 'isn’t a length' }).waitFor();
    expect(await page.getByLabel('Width').inputValue()).toBe('wide');
    expect(await page.getByLabel('easy').isChecked()).toBe(true);
    await page.getByLabel('Width').fill('6 1/2');
    await page.getByLabel('Height').fill('3 9/16');
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.getByText('What is added to the ruler’s reading', { exact: false }).waitFor();
    await page.getByRole('link', { name: 'Back to the project' }).click();
    await page.getByText('Made and measured (envelope 1)').waitFor();
  });

  test('a new idea is written down, found by its words, and given its lesson', async () => {
    await visit('/projects');
    await page.getByLabel('A new idea').fill(`Kites ${name}`);
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.getByRole('heading', { name: `Kites ${name}` }).waitFor();
    await page.getByText('Change title, notes, lesson, series').click();
    await page.getByLabel('Series').fill('Summer');
    await page.getByLabel('Lesson').fill('Thin paper only.');
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByRole('link', { name: 'Summer' }).waitFor();
    await visit('/projects');
    await createProject(db, { title: `Lanterns ${name}` }, later(9));
    await page.getByLabel('Words').fill('kites');
    if (!javaScriptEnabled) await page.getByRole('button', { name: 'Find' }).click();
    await page.getByRole('link', { name: `Lanterns ${name}` }).waitFor({ state: 'detached' });
    await page.getByRole('link', { name: `Kites ${name}` }).waitFor();
    await page.waitForURL(/q=kites/);
    expect((await listProjects(db, { text: `kites ${name}` }))[0]!.series?.name).toBe('Summer');
  });
});

describe.skipIf(!browserPath)('every page of the journal', () => {
  test('is free of serious barriers and never scrolls sideways', async () => {
    const { project } = await takeThree(db, cast, { ...THANKS, title: 'Wide' });
    const home = `/projects/${project}`;
    const page = await browser.newPage();
    const paths = ['', '/make', '/make?envelope=1&step=3', '/make?envelope=1&step=99', '/start'];
    const more = ['/spoiled?envelope=1', '/outcomes/new?envelope=1'];
    for (const path of ['/projects', ...[...paths, ...more].map((one) => home + one)]) {
      await page.goto(app.url + path);
      expect(await faultsAtBothWidths(page), path).toEqual([]);
    }
    await page.close();
  });

  test('a caution is read on a phone before the picture, clear of the buttons', async () => {
    const { project } = await takeThree(db, cast, { ...THANKS, title: 'Careful' });
    const page = await browser.newPage({ viewport: { width: 390, height: 740 } });
    await page.goto(`${app.url}/projects/${project}/make?envelope=1&step=1`);
    const caution = (await page.locator('.making .caution').boundingBox())!;
    const buttons = (await page.locator('.step-links').boundingBox())!;
    expect(caution.y + caution.height).toBeLessThan(buttons.y);
    await page.close();
  });

  test('prints a project with all of it open, on two pages at most', async () => {
    const { project } = await takeThree(db, cast, {
      ...THANKS,
      title: 'Printed',
      notes: 'One line.\n'.repeat(6),
    });
    const page = await browser.newPage();
    await page.goto(`${app.url}/projects/${project}`);
    const pdf = (await page.pdf({ format: 'Letter', margin: { top: '12mm', bottom: '12mm' } })).toString(
      'latin1',
    );
    expect(pdf.match(/\/Type\s*\/Page\b/g)!.length).toBeLessThanOrEqual(2);
    await page.emulateMedia({ media: 'print' });
    for (const part of ['Envelopes 1–3', '3 sheets of Fern', 'Twin, from the other corner'])
      expect(await page.getByText(part).isVisible(), part).toBe(true);
    await page.close();
  });
});

/** A refused form is answered with 422, which the browser notes as an error of its own. */
const isComplaint = (line: ConsoleMessage): boolean =>
  line.type() === 'error' && !line.text().includes('422');
