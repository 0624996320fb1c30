/** Keeps the shape of the code: who may import whom, what only one layer may do, a header on every file, a map of it. */
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { migrations } from '#migrations/all.ts';

const files = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard'], {
  encoding: 'utf8',
})
  .split('\n')
  .filter((file) => file !== '' && existsSync(file));
const code = files.filter((file) => /\.(ts|tsx|mjs)$/.test(file));

const LAYERS: Record<string, { ours: string[]; npm: string[] }> = {
  shared: { ours: ['shared'], npm: ['zod'] },
  'src/core': { ours: ['shared', 'src/core'], npm: ['polygon-clipping', 'd3-array', 'd3-scale'] },
  'src/stores': {
    ours: ['shared', 'src/core', 'src/stores', 'migrations'],
    npm: [
      'kysely',
      'better-sqlite3',
      'yazl',
      'yauzl',
      'node:fs/promises',
      'node:os',
      'node:path',
      'node:stream',
      'node:stream/consumers',
      'node:zlib',
    ],
  },
  views: { ours: ['shared', 'src/core', 'views'], npm: ['hono/jsx', 'pdfkit'] },
  'src/web': {
    ours: ['shared', 'src/core', 'src/stores', 'views', 'src/web'],
    npm: ['hono', 'zod', 'node:crypto', 'node:fs', 'node:module', 'node:stream', 'node:util', 'node:zlib'],
  },
  migrations: { ours: ['migrations'], npm: ['kysely'] },
  seed: { ours: ['shared', 'src/core', 'src/stores', 'migrations', 'seed'], npm: [] },
};

/** Inside core: the first five do not know each other, the next four join them one way only, drawing draws them all. */
const KINDS = ['geometry', 'envelope', 'cutting', 'paper', 'post'];
const CORE: Record<string, string[]> = {
  geometry: ['geometry'],
  envelope: ['geometry', 'envelope'],
  cutting: ['geometry', 'cutting'],
  paper: ['geometry', 'paper'],
  post: ['geometry', 'post'],
  stash: [...KINDS, 'stash'],
  sets: [...KINDS, 'stash', 'sets'],
  project: [...KINDS, 'stash', 'project'],
  finding: ['finding'],
  batch: [...KINDS, 'stash', 'sets', 'project', 'batch'],
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
      /(?:^|\n)\s*(?:import|export)\b[^'"`;]*?from\s+'([^']+)'|import\('([^']+)'\)|(?:^|\n)\s*import\s+'([^']+)'/g,
    ),
  ].map((found) => found[1] ?? found[2] ?? found[3]!);

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

  test.each(Object.keys(CORE))('core/%s knows only what it may', (part) => {
    const wrong = code
      .filter((file) => file.startsWith(`src/core/${part}/`))
      .flatMap((file) => importsOf(file).map((target) => ({ file, target: resolve(file, target) })))
      .filter(({ target }) => target.startsWith('src/core/'))
      .filter(({ target }) => !CORE[part]!.some((allowed) => target.startsWith(`src/core/${allowed}/`)));
    expect(wrong).toEqual([]);
  });

  test('every folder of core is bound, but drawing, which may know them all', () => {
    const folders = new Set(code.flatMap((file) => /^src\/core\/(\w+)\//.exec(file)?.[1] ?? []));
    expect([...folders].sort()).toEqual([...Object.keys(CORE), 'drawing'].sort());
  });

  test('inside web, http knows neither routes nor what they gather, and nothing gathered knows its route', () => {
    const wrong = code
      .filter((file) => /^src\/web\/(http|gather)\//.test(file))
      .flatMap((file) => importsOf(file).map((target) => ({ file, target: resolve(file, target) })))
      .filter(({ file, target }) =>
        (file.startsWith('src/web/http/') ? /^src\/web\/(routes|gather)\// : /^src\/web\/routes\//).test(
          target,
        ),
      );
    expect(wrong).toEqual([]);
  });

  test('what runs needs no package that only developers install', () => {
    const { dependencies } = JSON.parse(readFileSync('package.json', 'utf8')) as { dependencies: object };
    const needed = code
      .filter((file) => /^(shared|src|views|migrations|seed)\//.test(file) && file !== 'src/worker.mjs')
      .flatMap((file) => importsOf(file).map((target) => ({ file, target: resolve(file, target) })))
      .filter(({ target }) => !isOurs(target) && !target.startsWith('node:'))
      .map(({ file, target }) => ({ file, name: /^(@[^/]+\/)?[^/]+/.exec(target)![0] }));
    expect(needed.map(({ name }) => name)).toContain('esbuild');
    expect(needed.filter(({ name }) => !(name in dependencies))).toEqual([]);
  });

  test('nobody imports tests, but tests', () => {
    const wrong = code
      .filter((file) => !file.startsWith('tests/'))
      .filter((file) => importsOf(file).some((target) => resolve(file, target).startsWith('tests/')));
    expect(wrong).toEqual([]);
  });

  test('imports name their file with its extension', () => {
    const wrong = code.flatMap((file) =>
      importsOf(file)
        .filter((target) => isOurs(resolve(file, target)) && !/\.(ts|tsx|mjs)$/.test(target))
        .map((target) => ({ file, target })),
    );
    expect(wrong).toEqual([]);
  });
});

/** The files of a part of the tree, tests left out, in which a pattern occurs. */
const holding = (pattern: RegExp, within: (file: string) => boolean): string[] =>
  code.filter(
    (file) => !file.startsWith('tests/') && within(file) && pattern.test(readFileSync(file, 'utf8')),
  );

describe('what only one layer may do', () => {
  const isCore = (file: string): boolean => file.startsWith('src/core/');

  test('the core has no clock, chance, input or output of its own', () => {
    const impure = /\b(Math\.random|Date\.now|new Date\(\)|performance\.now|process\.|console\.|fetch\()/;
    expect(holding(impure, isCore)).toEqual([]);
  });

  test('only the entry points read environment, time and chance', () => {
    const reads =
      /\b(Math\.random|randomUUID|Date\.now|new Date\(\)|performance\.now|process\.(env|argv|cwd))/;
    const isEntry = (file: string): boolean => /^src\/[^/]+$/.test(file) || file === 'vitest.config.ts';
    expect(holding(reads, (file) => !isEntry(file))).toEqual([]);
  });

  test('only the stores know SQL', () => {
    const query = /\b(selectFrom|selectNoFrom|insertInto|updateTable|deleteFrom)\(|\bsql(<[^`]*>)?`/;
    expect(holding(query, (file) => !/^(src\/stores|migrations)\//.test(file))).toEqual([]);
  });

  test('only shared/length.ts makes lengths', () => {
    expect(holding(/\bas (unknown as )?Length\b/, (file) => file !== 'shared/length.ts')).toEqual([]);
  });

  test('no page carries styles or scripts of its own', () => {
    const inline =
      /\s(style|on(click|input|change|submit|load|error|focus|blur|key\w+|mouse\w+|pointer\w+))=[{"]|dangerouslySetInnerHTML/;
    expect(holding(inline, (file) => file.startsWith('views/'))).toEqual([]);
  });
});

describe('the migrations', () => {
  test('are all in the list, each under the name of its file', () => {
    const there = files.flatMap((file) => /^migrations\/(\d{4}_\w+)\.ts$/.exec(file)?.[1] ?? []);
    expect(Object.keys(migrations)).toEqual(there.sort());
  });
});

/** The functions at the outermost level, as the formatter lays them out, with how many lines each takes. */
function functionsIn(text: string): { name: string; lines: number }[] {
  const lines = text.split('\n');
  const begins =
    /^(?:export )?(?:async function|function|const) (\w+)(?=[(<]|(?:: .+?)? = (?:async )?(?:<.*>)?\()/;
  const goesOn = /^(\s|$)|^[)}].*[({]$|^[)}].*=>$/;
  return lines.flatMap((line, start) => {
    const name = begins.exec(line)?.[1];
    if (name === undefined) return [];
    let end = start + 1;
    while (end < lines.length && goesOn.test(lines[end]!)) end += 1;
    if (!/^[)}\]]/.test(lines[end] ?? '')) end -= 1;
    while (lines[end] === '') end -= 1;
    return [{ name, lines: end - start + 1 }];
  });
}

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

  test('no file holds more than one idea could fill', () => {
    const most = (file: string): number => (file.startsWith('src/core/cutting/') ? 500 : 300);
    const long = code
      .filter((file) => !file.startsWith('tests/'))
      .filter((file) => readFileSync(file, 'utf8').split('\n').length > most(file));
    expect(long).toEqual([]);
  });

  test('no function of the views is longer than 60 lines', () => {
    const long = code
      .filter((file) => file.startsWith('views/'))
      .flatMap((file) => functionsIn(readFileSync(file, 'utf8')).map((one) => ({ file, ...one })));
    expect(long.length).toBeGreaterThan(300);
    expect(long.filter(({ lines }) => lines > 60)).toEqual([]);
  });

  test('a function is counted from its first line to the one that closes it', () => {
    const text = [
      'const ONE = 1;',
      'export const two = (one: number) => one;',
      'export function five(',
      '  one: number,',
      '): number {',
      '  return one;',
      '}',
      'const Four: FC<{ a: number }> = ({',
      '  a,',
      '}) => (',
      ');',
    ];
    expect(functionsIn(text.join('\n'))).toEqual([
      { name: 'two', lines: 1 },
      { name: 'five', lines: 5 },
      { name: 'Four', lines: 4 },
    ]);
  });

  test('every test can fail, and none stands alone', () => {
    const idle = files
      .filter((file) => file.endsWith('.test.ts') || file.endsWith('.test.tsx'))
      .filter((file) => {
        const text = readFileSync(file, 'utf8');
        return (
          !/\bexpect\w*\(|\bfc\.assert\(/.test(text) || /\b(test|it|describe)\.(only|todo|skip)\(/.test(text)
        );
      });
    expect(idle).toEqual([]);
  });

  test('DEVELOPERS.md names every folder', () => {
    const map = readFileSync('DEVELOPERS.md', 'utf8');
    const folders = new Set(code.map((file) => dirname(file)).filter((folder) => folder !== '.'));
    expect([...folders].filter((folder) => !map.includes(`${folder}/`))).toEqual([]);
  });
});

describe('the figures', () => {
  const prose = files.filter((file) => /\.(tsx?|md)$/.test(file) && file !== 'tests/tidy.test.ts');
  const isTest = (file: string): boolean => /^tests\/.*\.tsx?$/.test(file);

  test('no check leans on a page that is not here', () => {
    expect(prose.filter((file) => /\bfacts( ?§|\.md|,)/i.test(readFileSync(file, 'utf8')))).toEqual([]);
  });

  test('every document that a check names stands in SOURCES.md', () => {
    const sources = readFileSync('tests/SOURCES.md', 'utf8');
    const document =
      /\b(ISO \d{3}|DMM \d{3}|Publication \d+|Postal Bulletin \d+|PWG [\d.]+\d|WCAG \d\.\d|Ofcom|UPU)\b/g;
    const named = prose.filter(isTest).flatMap((file) => readFileSync(file, 'utf8').match(document) ?? []);
    expect(named.length).toBeGreaterThan(20);
    expect(
      [...new Set(named)].filter((one) => !sources.includes(one) && !sources.includes(one.slice(4))),
    ).toEqual([]);
  });

  test('pairs of square and start that makers pass on stand in tests alone, marked as without a source', () => {
    const pair =
      /\b8, 2\.875\b|\b8\.125, 3\.(75|625)\b|\b5\.25, 3\)|6\.25, 3\.25\)|6 1\/4.{0,12}3 1\/4|8⅛, start|8, start 2⅞|5¼, start 3/;
    const holders = prose.filter((file) => pair.test(readFileSync(file, 'utf8')));
    expect(holders.filter((file) => !isTest(file))).toEqual([]);
    const unmarked = holders.filter(
      (file) => !/Common practice, no source/i.test(readFileSync(file, 'utf8')),
    );
    expect(unmarked).toEqual([]);
  });
});
