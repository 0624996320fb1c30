/** `npm run verify` says how it is used, refuses what it doesn't know, and finds a fresh demo in order. */
import { spawnSync } from 'node:child_process';
import { expect, test } from 'vitest';

const run = (...args: string[]) =>
  spawnSync(process.execPath, ['src/start.mjs', 'verify', ...args], { encoding: 'utf8' });

test('says how it is used', () => {
  const { status, stdout } = run('--help');
  expect(status).toBe(0);
  expect(stdout).toMatch(/^Usage: npm run verify \[-- --demo\]\n/);
  expect(stdout).toContain('CREASEBOOK_DATA');
});

test('refuses what it doesn’t know, and says how it is used', () => {
  const { status, stderr } = run('--dmeo');
  expect(status).toBe(2);
  expect(stderr).toContain('Usage: npm run verify');
});

test('every invariant of a fresh demo holds', () => {
  const { status, stdout } = run('--demo');
  expect(stdout).toMatch(/^Every invariant holds: \d+ movements/);
  expect(status).toBe(0);
});
