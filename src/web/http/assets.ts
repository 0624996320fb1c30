/** The few files that pages load: our styles and mark, the fonts, htmx. Anything not in this list is not served. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { Hono } from 'hono';
import type { Env } from './env.ts';

const require = createRequire(import.meta.url);
const own = (name: string): string =>
  fileURLToPath(new URL(`../../../views/assets/${name}`, import.meta.url));
const font = (family: string, file: string): string =>
  require.resolve(`@fontsource/${family}/files/${family}-latin-${file}.woff2`);

const FILES: Record<string, { path: string; type: string }> = {
  'creasebook.css': { path: own('creasebook.css'), type: 'text/css; charset=utf-8' },
  'diagrams.css': { path: own('diagrams.css'), type: 'text/css; charset=utf-8' },
  'stash.css': { path: own('stash.css'), type: 'text/css; charset=utf-8' },
  'sets.css': { path: own('sets.css'), type: 'text/css; charset=utf-8' },
  'journal.css': { path: own('journal.css'), type: 'text/css; charset=utf-8' },
  'plans.css': { path: own('plans.css'), type: 'text/css; charset=utf-8' },
  'filling.css': { path: own('filling.css'), type: 'text/css; charset=utf-8' },
  'mark.svg': { path: own('mark.svg'), type: 'image/svg+xml' },
  'htmx.js': { path: require.resolve('htmx.org/dist/htmx.min.js'), type: 'text/javascript; charset=utf-8' },
  'serif-500.woff2': { path: font('alegreya', '500-normal'), type: 'font/woff2' },
  'serif-700.woff2': { path: font('alegreya', '700-normal'), type: 'font/woff2' },
  'serif-400-italic.woff2': { path: font('alegreya', '400-italic'), type: 'font/woff2' },
  'sans-400.woff2': { path: font('alegreya-sans', '400-normal'), type: 'font/woff2' },
  'sans-700.woff2': { path: font('alegreya-sans', '700-normal'), type: 'font/woff2' },
};

export const assets = new Hono<Env>();

for (const [name, file] of Object.entries(FILES)) {
  const body = readFileSync(file.path);
  assets.get(`/${name}`, (c) =>
    c.body(body, 200, { 'Content-Type': file.type, 'Cache-Control': 'max-age=3600' }),
  );
}
