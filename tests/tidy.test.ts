/** Keeps the shape of the code: who may import whom, a header on every file, a map that names every folder. */
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';

const files = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard'], {
  encoding: 'utf8',
})
  .split('\n')
  .filter((file) => file !== '' && existsSync(file));
const code = files.filter((file) => /\.(ts|tsx|mjs)$/.test(file));

const LAYERS: Record<string, { ours: string[]; npm: string[] }> = {
  shared: { ours: ['shared'], npm: ['zod'] },
  'src/core': { ours: ['shared', 'src/core'], npm: ['polygon-clipping'] },
  'src/stores': {
    ours: ['shared', 'src/core', 'src/stores'],
    npm: ['kysely', 'better-sqlite3', 'sharp', 'node:fs', 'node:path', 'node:url'],
  },
  views: { ours: ['shared', 'src/core', 'views'], npm: ['hono/jsx', 'pdfkit'] },
  'src/web': {
    ours: ['shared', 'src/core', 'src/stores', 'views', 'src/web'],
    npm: ['hono', 'zod', 'node:fs', 'node:module', 'node:url'],
  },
  migrations: { ours: ['migrations'], npm: ['kysely'] },
  seed: { ours: ['shared', 'src/core', 'src/stores', 'migrations', 'seed'], npm: [] },
};

/** Inside core these do not know each other; project and drawing join them, geometry serves all. */
const CORE: Record<string, string[]> = {
  geometry: ['geometry'],
  envelope: ['geometry', 'envelope'],
  cutting: ['geometry', 'cutting'],
  paper: ['geometry', 'paper'],
  post: ['geometry', 'post'],
};

const ALIAS: Record<string, string> = {
  '#shared': 'shared',
  '#core': 'src/core',
  '#stores': 'src/stores',
  '#web': 'src/web',
  '#src': 'src',
  '#views': 'views',
  '#migrations': 'migrations',
  '#seed': 'seed',
  '#tests': 'tests',
};

const importsOf = (file: string): string[] =>
  [
    ...readFileSync(file, 'utf8').matchAll(
      /(?:^|\n)\s*(?:import|export)\b[^'"`;]*?from\s+'([^']+)'|import\('([^']+)'\)/g,
    ),
  ].map((found) => found[1] ?? found[2]!);

function resolve(file: string, target: string): string {
  if (target.startsWith('.')) return join(dirname(file), target);
  const [alias, ...rest] = target.split('/');
  return alias! in ALIAS ? join(ALIAS[alias!]!, ...rest) : target;
}

const layerOf = (path: string): string | undefined =>
  Object.keys(LAYERS).find((layer) => path === layer || path.startsWith(`${layer}/`));

const isOurs = (path: string): boolean => /^(shared|src|views|migrations|seed|tests)\//.test(path);

describe('the layers', () => {
  test.each(Object.keys(LAYERS))('%s imports only what it may', (layer) => {
    const rules = LAYERS[layer]!;
    const wrong = code
      .filter((file) => layerOf(file) === layer)
      .flatMap((file) => importsOf(file).map((target) => ({ file, target: resolve(file, target) })))
      .filter(({ target }) =>
        isOurs(target)
          ? !rules.ours.some((allowed) => target.startsWith(`${allowed}/`))
          : !rules.npm.some((allowed) => target === allowed || target.startsWith(`${allowed}/`)),
      );
    expect(wrong).toEqual([]);
  });

  test.each(Object.keys(CORE))('core/%s does not know its neighbours', (part) => {
    const wrong = code
      .filter((file) => file.startsWith(`src/core/${part}/`))
      .flatMap((file) => importsOf(file).map((target) => ({ file, target: resolve(file, target) })))
      .filter(({ target }) => target.startsWith('src/core/'))
      .filter(({ target }) => !CORE[part]!.some((allowed) => target.startsWith(`src/core/${allowed}/`)));
    expect(wrong).toEqual([]);
  });

  test('nobody imports tests, but tests', () => {
    const wrong = code
      .filter((file) => !file.startsWith('tests/'))
      .filter((file) => importsOf(file).some((target) => resolve(file, target).startsWith('tests/')));
    expect(wrong).toEqual([]);
  });

  test('the core has no clock, chance, input or output of its own', () => {
    const impure = /\b(Math\.random|Date\.now|new Date\(\)|performance\.now|process\.|console\.|fetch\()/;
    const wrong = code.filter(
      (file) => file.startsWith('src/core/') && impure.test(readFileSync(file, 'utf8')),
    );
    expect(wrong).toEqual([]);
  });
});

describe('the files', () => {
  test('every file says at its top what it knows', () => {
    const headless = [...code, ...files.filter((file) => file.endsWith('.css'))].filter(
      (file) => !/^(#![^\n]*\n)?\/\*/.test(readFileSync(file, 'utf8')),
    );
    expect(headless).toEqual([]);
  });

  test('the top level holds what the design lists', () => {
    const allowed = new Set([
      'README.md',
      'DEVELOPERS.md',
      'LICENSE',
      'package.json',
      'package-lock.json',
      'tsconfig.json',
      'biome.json',
      'knip.json',
      'vitest.config.ts',
      '.gitignore',
      '.npmrc',
      '.ci',
      'src',
      'migrations',
      'views',
      'tests',
      'seed',
      'shared',
    ]);
    expect(files.map((file) => file.split('/')[0]!).filter((name) => !allowed.has(name))).toEqual([]);
  });

  test('DEVELOPERS.md names every folder', () => {
    const map = readFileSync('DEVELOPERS.md', 'utf8');
    const folders = new Set(code.map((file) => dirname(file)).filter((folder) => folder !== '.'));
    expect([...folders].filter((folder) => !map.includes(`${folder}/`))).toEqual([]);
  });
});
