/** The page of the backups: what is in each, one to take away, and nothing else of the disk. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { backUp } from '#stores/backups.ts';
import { openDatabase } from '#stores/database.ts';
import { createProject } from '#stores/projects.ts';
import { openApp } from '#tests/support/app.ts';
import { FIRST, later, THANKS } from '#tests/support/cast.ts';
import { freshFile } from '#tests/support/fresh-database.ts';

test('lists them with age and content, hands one out, and no other file', async () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'creasebook-listed-'));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  writeFileSync(path.join(folder, 'creasebook.db'), await freshFile());
  const db = openDatabase(path.join(folder, 'creasebook.db'));
  onTestFinished(() => db.destroy());
  await createProject(db, THANKS, FIRST);
  await backUp(folder, later(-3 * 24 * 60), 'daily');
  const name = path.basename(await backUp(folder, later(-24 * 60), 'before-restore'));
  const app = await openApp(undefined, { db, folder });
  const html = await (await app.get('/backups')).text();
  expect(html).toContain('The newest is from yesterday');
  expect(html.replaceAll(/<[^>]*>|\s+/g, ' ')).toMatch(
    /3 days ago, the daily one +1 project, 0 designs and 0 offcuts; 0\.\d MB/,
  );
  const file = await app.get(`/backups/${name}`);
  expect(
    Buffer.from(await file.arrayBuffer())
      .subarray(0, 15)
      .toString(),
  ).toBe('SQLite format 3');
  for (const other of ['creasebook.db', '..%2Fcreasebook.db', 'creasebook-2020-01-01-000000-daily.db'])
    expect((await app.get(`/backups/${other}`)).status).toBe(404);
});

test('a book without any says when the first is made', async () => {
  expect(await (await (await openApp()).get('/backups')).text()).toContain('There is none yet');
});
