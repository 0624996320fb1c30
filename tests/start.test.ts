/** What `npm start` runs is built from the sources as they are, once, and tells of errors by their lines. */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';

const root = mkdtempSync(path.join(tmpdir(), 'creasebook-start-'));
afterAll(() => rmSync(root, { recursive: true }));

const within = (...names: string[]): string => path.join(root, ...names);
const write = (file: string, text: string): void => writeFileSync(within(...file.split('/')), text);
const start = (...args: string[]) =>
  spawnSync(process.execPath, [within('src', 'start.mjs'), ...args], { encoding: 'utf8' });
const built = (): string[] => readdirSync(within('node_modules', '.cache', 'creasebook'));

beforeAll(() => {
  for (const folder of ['shared', 'src', 'views', 'migrations', 'seed', 'node_modules'])
    mkdirSync(within(folder));
  for (const name of ['esbuild', '@esbuild'])
    symlinkSync(path.resolve('node_modules', name), within('node_modules', name));
  for (const file of ['package.json', 'package-lock.json', 'tsconfig.json', 'src/start.mjs'])
    cpSync(file, within(...file.split('/')));
  for (const name of ['plan', 'verify', 'archive', 'restore', 'backup', 'worker'])
    write(`src/${name}.ts`, 'export {};\n');
});

test('it is built once, and anew after a change', () => {
  write('shared/word.ts', `export const WORD: string = 'folded';\n`);
  write('src/server.ts', `import { WORD } from '#shared/word.ts';\nconsole.log(WORD, process.argv[2]);\n`);
  expect(start('server', '--demo')).toMatchObject({ stdout: 'folded --demo\n', stderr: '' });
  const first = built();
  expect(start('server', '--demo').stdout).toBe('folded --demo\n');
  expect(built()).toEqual(first);
  write('shared/word.ts', `export const WORD: string = 'glued';\n`);
  expect(start('server', '--demo').stdout).toBe('glued --demo\n');
  expect(built()).toHaveLength(2);
  expect(built()).not.toEqual(first);
});

test('an error names the line of its source, and files beside a source are found there', () => {
  write('views/beside.ts', `export const at: string = new URL('word.txt', import.meta.url).pathname;\n`);
  write(
    'src/server.ts',
    `import { at } from '#views/beside.ts';\nconsole.log(at);\ninterface Gone {}\n\nthrow new Error('torn');\n`,
  );
  const { stdout, stderr } = start('server');
  expect(stdout).toBe(`${within('views', 'word.txt')}\n`);
  expect(stderr).toMatch(/Error: torn\n\s+at .*src\/server\.ts:5:\d+/);
});
