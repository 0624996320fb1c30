/** What a page loads: kept for ever under an address of its own, packed, and fonts that hold every sign we write. */
import { readdirSync, readFileSync } from 'node:fs';
import { brotliDecompressSync } from 'node:zlib';
import * as fontkit from 'fontkit';
import { beforeAll, describe, expect, test } from 'vitest';
import { type App, openApp } from '#tests/support/app.ts';

let app: App;
let page: string;
beforeAll(async () => {
  app = await openApp();
  page = await (await app.get('/tools')).text();
});

const loaded = (html: string): string[] =>
  [...html.matchAll(/(?:href|src)="(\/assets\/[^"]+)"/g)].map(([, at]) => at!);

describe('what a page loads', () => {
  test('its addresses carry what they hold, so that a browser may keep them for ever', async () => {
    expect(loaded(page).some((at) => at.endsWith('/creasebook.css'))).toBe(true);
    for (const at of loaded(page)) {
      expect(at).toMatch(/^\/assets\/[\w-]{12}\/[\w.-]+$/);
      const answer = await app.get(at);
      expect(answer.status).toBe(200);
      expect(answer.headers.get('Cache-Control')).toContain('immutable');
    }
    expect((await app.get('/assets/AAAAAAAAAAAA/creasebook.css')).status).toBe(404);
  });

  test('the style sheet comes packed in what the browser reads, and as it is to one that reads nothing', async () => {
    const at = loaded(page).find((one) => one.endsWith('.css'))!;
    const plain = await (await app.get(at)).text();
    const brotli = await app.get(at, { 'Accept-Encoding': 'gzip, br' });
    expect(brotli.headers.get('Content-Encoding')).toBe('br');
    expect(brotliDecompressSync(Buffer.from(await brotli.arrayBuffer())).toString()).toBe(plain);
    const refused = await app.get(at, { 'Accept-Encoding': 'br;q=0, gzip' });
    expect(refused.headers.get('Content-Encoding')).toBe('gzip');
    expect((await app.get(at)).headers.get('Content-Encoding')).toBeNull();
  });

  test('pages come packed too', async () => {
    const answer = await app.get('/tools', { 'Accept-Encoding': 'gzip' });
    expect(answer.headers.get('Content-Encoding')).toBe('gzip');
    expect(answer.headers.get('Vary')).toMatch(/Accept-Encoding/i);
  });

  test('style sheet, script, mark and all faces together leave room for the page under 120 kB on the wire', async () => {
    const css = loaded(page).find((one) => one.endsWith('.css'))!;
    const faces = [...(await (await app.get(css)).text()).matchAll(/url\("([^"]+)"\)/g)].map(([, at]) => at!);
    const plain = faces.filter((at) => !at.includes('-ext'));
    expect(plain).toHaveLength(5);
    let bytes = 0;
    for (const at of new Set([...loaded(page), ...plain])) {
      bytes += (await (await app.get(at, { 'Accept-Encoding': 'br' })).arrayBuffer()).byteLength;
    }
    expect(bytes).toBeLessThan(107_000);
  });
});

const ROOT = new URL('../../../', import.meta.url);
/** What is read and never shown, and the box on the shopping list, which any system's font has. */
const READ_ONLY = new Set('✕Σ⅐☐');

test('every sign that our words use is in every face, so that no measure changes its look', () => {
  const signs = new Set(
    ['views', 'shared', 'src/core'].flatMap((folder) =>
      readdirSync(new URL(folder, ROOT), { recursive: true, encoding: 'utf8' })
        .filter((file) => /\.tsx?$/.test(file))
        .flatMap((file) => [...readFileSync(new URL(`${folder}/${file}`, ROOT), 'utf8')])
        .filter((sign) => sign > '~' && !READ_ONLY.has(sign)),
    ),
  );
  expect(signs.has('⅞')).toBe(true);
  const fonts = new URL('views/assets/fonts/', ROOT);
  for (const file of readdirSync(fonts).filter((name) => /\.woff2?$/.test(name) && !name.includes('-ext'))) {
    const face = fontkit.create(readFileSync(new URL(file, fonts))) as fontkit.Font;
    const lacking = [...signs].filter((sign) => !face.hasGlyphForCodePoint(sign.codePointAt(0)!));
    expect({ file, lacking }).toEqual({ file, lacking: [] });
    expect(face.availableFeatures).toEqual(expect.arrayContaining(['frac', 'lnum', 'tnum']));
  }
});
