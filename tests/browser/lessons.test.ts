/** A lesson in a real browser, with script and without: up at the step it belongs to, and gone once it is not to be here. */
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { foldOf } from '#core/envelope/folds.ts';
import { closeDatabase, openDatabase } from '#stores/database.ts';
import { recordOutcome } from '#stores/envelopes.ts';
import { graveFaults } from '#tests/support/axe.ts';
import { fillShelf, later, RECIPE, THANKS } from '#tests/support/cast.ts';
import { browserPath } from '#tests/support/find-browser.ts';
import { takeThree } from '#tests/support/projects.ts';
import { startWalk, type Walk } from '#tests/support/walk.ts';

/** Counted from one: paper of a print is laid down first. */
const BEFORE_GLUE = foldOf(RECIPE)
  .steps(RECIPE, 'clockwise')
  .findIndex(({ kind }) => kind === 'glue');

describe.skipIf(!browserPath).each([
  { name: 'with script', scripts: true },
  { name: 'without script', scripts: false },
])('$name', ({ scripts }) => {
  let walk: Walk;
  let project: number;
  beforeAll(async () => {
    walk = await startWalk({ scripts });
    const db = openDatabase(join(walk.folder, 'creasebook.db'));
    const made = await takeThree(db, await fillShelf(db), THANKS);
    await recordOutcome(db, made.envelopes[0]!, { wrong: 'The glue crept past the flap.' }, later(2));
    project = made.project;
    await closeDatabase(db);
  });
  afterAll(() => walk.end());

  test('a lesson comes up where it is glued, and not here hides it', async () => {
    const { page, go, main } = walk;
    await go(`/projects/${project}/make?envelope=2&step=${BEFORE_GLUE + 1}`);
    expect(await main()).not.toContain('crept past');
    await page.getByRole('link', { name: 'Next' }).click();
    await page.getByRole('heading', { name: /^Glue/ }).waitFor();
    expect(await main()).toContain('The glue crept past the flap.');
    if (scripts) expect(await graveFaults(page)).toEqual([]);
    await walk.press(/^Not here/);
    await page.getByRole('heading', { name: /^Glue/ }).waitFor();
    expect(await main()).not.toContain('crept past');
    expect(walk.faults).toEqual([]);
  });
});
