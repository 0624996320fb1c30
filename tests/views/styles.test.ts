/** Holds the style sheets to their shape: every rule has its element, every class its rule, every colour its token. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

const ASSETS = 'views/assets/';
const sheets = readdirSync(ASSETS)
  .filter((file) => file.endsWith('.css'))
  .map((file) => ({ file, rules: readFileSync(ASSETS + file, 'utf8').replace(/\/\*[\s\S]*?\*\//g, '') }));

const views = readdirSync('views', { recursive: true, encoding: 'utf8' })
  .filter((file) => /\.tsx?$/.test(file))
  .map((file) => readFileSync(`views/${file}`, 'utf8'))
  .join('\n');
const roles = readFileSync('src/core/drawing/drawing.ts', 'utf8');

const matches = (text: string, pattern: RegExp): string[] =>
  [...text.matchAll(pattern)].map(([, one]) => one!);

const ruled = [
  ...new Set(sheets.flatMap(({ rules }) => matches(rules.replace(/"[^"]*"/g, ''), /\.([a-z][\w-]*)/g))),
];

const worn = new Set([
  ...matches(views, /\bclass="([^"]*)"/g).flatMap((all) => all.split(' ')),
  ...matches(views, /\bclass=\{((?:[^{}]|\{[^{}]*\})*)\}/g)
    .flatMap((said) => matches(said, /(?:^|[?:] )'([a-z\d -]*)'/g))
    .flatMap((all) => all.split(' ')),
]);

/** Names by which a test or a script finds something that looks like its neighbours. */
const HOOKS = ['as-is', 'spot', 'd-print', 'stamp'];

const isSpoken = (name: string): boolean =>
  new RegExp(`['"\`\\s]${name}['"\`\\s]`).test(views) ||
  (name.startsWith('d-') && (roles + views).includes(`'${name.slice(2)}'`));

describe('the style sheets', () => {
  test('have no rule for a class that no view writes', () => {
    expect(ruled.filter((name) => !isSpoken(name))).toEqual([]);
  });

  test('rule every class that a view writes', () => {
    expect([...worn].filter((name) => name && !ruled.includes(name) && !HOOKS.includes(name))).toEqual([]);
  });

  test('write colours in the tokens alone', () => {
    const coloured = sheets.filter(
      ({ file, rules }) =>
        file !== 'tokens.css' && /#[\da-f]{3,8}\b(?=[^{}]*;)|\b(?:rgb|hsl|oklch|lab|hwb)a?\(/i.test(rules),
    );
    expect(coloured.map(({ file }) => file)).toEqual([]);
  });

  test('use every token, and only tokens that there are', () => {
    const tokens = matches(sheets.find(({ file }) => file === 'tokens.css')!.rules, /(--[\w-]+):/g);
    const asked = sheets.flatMap(({ rules }) => matches(rules, /var\((--[\w-]+)/g));
    expect(asked.filter((one) => !tokens.includes(one))).toEqual([]);
    expect(tokens.filter((one) => !asked.includes(one))).toEqual([]);
  });
});
