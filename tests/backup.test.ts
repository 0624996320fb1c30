/** `npm run backup`: one made, listed and put back from a shell, and a refusal in one sentence. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, onTestFinished, test } from 'vitest';

test('made, listed and put back; what is no backup is refused', () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'creasebook-backup-run-'));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  const run = (...args: string[]) =>
    spawnSync(process.execPath, ['src/start.mjs', 'backup', ...args], {
      encoding: 'utf8',
      env: { ...process.env, CREASEBOOK_DATA: folder },
    });
  expect(run().stdout).toContain('the whole book, checked.');
  const { stdout } = run('list');
  expect(stdout).toMatch(/-asked-for\.db {2}\d+ KiB {2}0 projects, 0 designs, 0 offcuts\n$/);
  expect(run('restore', stdout.split('  ')[0]!).stdout).toMatch(/is the book now\.\nThe book as it was: /);
  const refused = run('restore', 'package.json');
  expect([refused.status, refused.stdout]).toEqual([2, '']);
  expect(refused.stderr).toMatch(
    /package\.json can’t be restored: it is no database\. Nothing was changed\.\n$/,
  );
});
