/**
 * Compares a picture with the one stored in tests/snapshots. One that differs or is new is written beside it as
 * `-changed.svg` and fails the test; look at it, then rename it (or run with KEEP_PICTURES=1) to accept it.
 */
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';

const FOLDER = fileURLToPath(new URL('../snapshots/', import.meta.url));

export function expectPicture(name: string, svg: string): void {
  const [stored, changed] = [`${FOLDER}${name}.svg`, `${FOLDER}${name}-changed.svg`];
  const text = `${svg.replaceAll('><', '>\n<')}\n`;
  if (process.env.KEEP_PICTURES) writeFileSync(stored, text);
  rmSync(changed, { force: true });
  if (existsSync(stored) && readFileSync(stored, 'utf8') === text) return;
  writeFileSync(changed, text);
  expect.fail(`the picture ${name} is not the stored one: compare ${changed}`);
}
