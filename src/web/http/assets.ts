/**
 * The few files that pages load: one style sheet, the mark, the fonts, htmx and our script. An address carries what its file holds, so that a
 * browser may keep it for ever; each is packed once, when first asked for. Anything not listed is not served.
 */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { promisify } from 'node:util';
import { brotliCompress, gzip } from 'node:zlib';
import { type Context, Hono } from 'hono';
import { accepts } from 'hono/accepts';
import type { Env } from './env.ts';

interface Asset {
  readonly href: string;
  readonly type: string;
  readonly body: Uint8Array<ArrayBuffer>;
}

const require = createRequire(import.meta.url);
const OWN = new URL('../../../views/assets/', import.meta.url);

/** Sheets by layer: whatever a selector weighs, a later layer wins over an earlier one. */
const LAYERS: Readonly<Record<string, readonly string[]>> = {
  tokens: ['tokens'],
  base: ['base'],
  parts: ['parts', 'diagrams'],
  pages: ['envelopes', 'journal', 'stash', 'plans', 'sets', 'filling', 'find'],
};

const own = (name: string): Buffer => readFileSync(new URL(name, OWN));

function asset(name: string, type: string, content: Buffer | string): Asset {
  const body = new Uint8Array(Buffer.from(content));
  const held = createHash('sha256').update(body).digest('base64url').slice(0, 12);
  return { href: `/assets/${held}/${name}`, type, body };
}

const FONTS = readdirSync(new URL('fonts', OWN))
  .filter((file) => file.endsWith('.woff2'))
  .map((file) => asset(file, 'font/woff2', own(`fonts/${file}`)));

const fontHref = (name: string): string => FONTS.find(({ href }) => href.endsWith(`/${name}`))!.href;

const STYLE = asset(
  'creasebook.css',
  'text/css; charset=utf-8',
  styled().replace(/url\("fonts\/([^"]+)"\)/g, (_, name: string) => `url("${fontHref(name)}")`),
);

function styled(): string {
  const layers = Object.entries(LAYERS).map(([layer, sheets]) => {
    const rules = sheets.map((name) => own(`${name}.css`).toString());
    return `@layer ${layer} {\n${rules.join('\n')}}\n`;
  });
  return [`@layer ${Object.keys(LAYERS).join(', ')};\n`, ...layers].join('');
}

const HTMX = asset(
  'htmx.js',
  'text/javascript; charset=utf-8',
  readFileSync(require.resolve('htmx.org/dist/htmx.min.js')),
);
const FIND = asset('find.js', 'text/javascript; charset=utf-8', own('find.js'));
const KEYS = asset('keys.js', 'text/javascript; charset=utf-8', own('keys.js'));
const COPY = asset('copy.js', 'text/javascript; charset=utf-8', own('copy.js'));
const MARK = asset('mark.svg', 'image/svg+xml', own('mark.svg'));

/** The names of all colours of the tokens. */
export const colours: readonly string[] = [
  ...new Set(
    [
      ...own('tokens.css')
        .toString()
        .matchAll(/--([\w-]+): (?:#|rgb|transparent)/g),
    ].map(([, name]) => name!),
  ),
];

/** Where a page finds what it loads; the fonts are those of nearly every first screen. */
export const assetHrefs = {
  style: STYLE.href,
  scripts: [HTMX.href, FIND.href, KEYS.href, COPY.href],
  icon: MARK.href,
  fonts: ['sans-400.woff2', 'sans-700.woff2', 'serif-700.woff2'].map(fontHref),
};

const KEPT_FOR_EVER = 'public, max-age=31536000, immutable';

export const assets = new Hono<Env>();

for (const one of [STYLE, HTMX, FIND, KEYS, COPY, MARK, ...FONTS]) {
  const packed = packer(one);
  assets.get(one.href.slice('/assets'.length), async (c) => {
    const { encoding, body } = await packed(c);
    c.header('Vary', 'Accept-Encoding');
    if (encoding) c.header('Content-Encoding', encoding);
    return c.body(body, 200, { 'Content-Type': one.type, 'Cache-Control': KEPT_FOR_EVER });
  });
}

const PACKERS = {
  br: promisify<Uint8Array, Buffer>(brotliCompress),
  gzip: promisify<Uint8Array, Buffer>(gzip),
};

type Encoding = keyof typeof PACKERS;

interface Packed {
  readonly encoding?: Encoding;
  readonly body: Uint8Array<ArrayBuffer>;
}

/** Fonts are packed already. */
function packer({ type, body }: Asset): (c: Context) => Promise<Packed> {
  const kept = new Map<Encoding, Promise<Uint8Array<ArrayBuffer>>>();
  return async (c) => {
    const encoding = type === 'font/woff2' ? undefined : smallest(c);
    if (!encoding) return { body };
    const packing = kept.get(encoding) ?? PACKERS[encoding](body).then((bytes) => new Uint8Array(bytes));
    kept.set(encoding, packing);
    return { encoding, body: await packing };
  };
}

const smallest = (c: Context): Encoding | undefined => {
  const wanted = accepts(c, {
    header: 'Accept-Encoding',
    supports: ['br', 'gzip'],
    default: '',
    match: (asked, { supports }) =>
      supports.find((one) => asked.some(({ type, q }) => type === one && q > 0)) ?? '',
  });
  return wanted === 'br' || wanted === 'gzip' ? wanted : undefined;
};
