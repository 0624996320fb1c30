/** `npm run archive` and `npm run restore`: out of one folder, into another, and refusals in one sentence. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { closeDatabase, migrate, openDatabase } from '#stores/database.ts';
import { fillShelf } from '#tests/support/cast.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'creasebook-archive-run-'));
afterAll(() => rmSync(folder, { recursive: true }));

const run = (data: string, ...args: string[]) =>
  spawnSync(process.execPath, ['src/start.mjs', ...args], {
    encoding: 'utf8',
    env: { ...process.env, CREASEBOOK_DATA: data },
  });

test('out of one folder and into another', async () => {
  const db = openDatabase(path.join(folder, 'creasebook.db'));
  await migrate(db);
  await fillShelf(db);
  await closeDatabase(db);
  const zip = path.join(folder, 'out.zip');
  expect(run(folder, 'archive', zip).status).toBe(0);
  const other = path.join(folder, 'other');
  const dry = run(other, 'restore', zip, '--dry-run');
  expect(dry.stdout).toContain('pads: 2 new, 0 as here\n');
  expect(dry.stdout).toContain('dry run');
  const real = run(other, 'restore', zip);
  expect(real.stdout).toContain('pads: 2 new, 0 as here\n');
  expect(run(other, 'restore', zip).stdout).toContain('pads: 0 new, 2 as here\n');
});

test('what is no archive is refused in a sentence', () => {
  const file = path.join(folder, 'letter.zip');
  writeFileSync(file, 'Dear neighbour');
  const { status, stderr } = run(folder, 'restore', file);
  expect(status).toBe(2);
  expect(stderr.trim()).toMatch(/^That file is damaged.*Nothing was written\.$/);
  expect(run(folder, 'archive').status).toBe(2);
});
