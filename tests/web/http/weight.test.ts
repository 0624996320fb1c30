/**
 * What pages weigh on the wire, packed as they are sent: a first visit with all it names, the fonts it preloads among them, and
 * an answer while she types. Every id stands once.
 */
import { gunzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { fillRealShelf } from '#tests/bench/shelf.ts';
import { openApp } from '#tests/support/app.ts';
import { FIRST } from '#tests/support/cast.ts';
import { PAGES, withPlans } from '#tests/support/pages.ts';

const FIRST_VISIT_BYTES = 120_000;
const LIVE_BYTES = 25_000;
const PACKED = { 'Accept-Encoding': 'gzip' };

const app = await openApp();
await fillRealShelf(app.db, 200, new Date(FIRST));
await withPlans(app);

const weights = new Map<string, Promise<number>>();

function weightOf(path: string): Promise<number> {
  const weight = weights.get(path) ?? app.get(path, PACKED).then(weigh);
  weights.set(path, weight);
  return weight;
}

const weigh = async (answer: Response): Promise<number> => (await answer.arrayBuffer()).byteLength;

const found = (text: string, pattern: RegExp): string[] => [...text.matchAll(pattern)].map(([, one]) => one!);

const pages = Object.values(PAGES).flat();

describe('every page', async () => {
  const told: { address: string; bytes: number; html: string }[] = [];
  for (const address of pages) {
    const answer = await app.get(address, PACKED);
    if (!answer.headers.get('Content-Type')?.startsWith('text/html')) continue;
    const sent = Buffer.from(await answer.arrayBuffer());
    const html = answer.headers.get('Content-Encoding') ? gunzipSync(sent) : sent;
    told.push({ address, bytes: sent.byteLength, html: html.toString() });
  }

  test('comes with all it loads in a first visit under 120 kB', async () => {
    const over = [];
    for (const { address, bytes: own, html } of told) {
      const loads = new Set(found(html, /<(?:link|script|img)\b[^>]*?\b(?:href|src)="(\/[^"]+)"/g));
      const weighed = await Promise.all([...loads].map(weightOf));
      const bytes = weighed.reduce((sum, one) => sum + one, own);
      if (bytes > FIRST_VISIT_BYTES) over.push({ address, bytes });
    }
    expect(told.length).toBeGreaterThan(90);
    expect(over).toEqual([]);
  });

  test('gives each id once', () => {
    const twice = told.flatMap(({ address, html }) => {
      const ids = found(html, /<[a-z][^<>]*?\sid="([^"]+)"/gi);
      return ids.filter((id, at) => ids.indexOf(id) < at).map((id) => `${address}: ${id}`);
    });
    expect(twice).toEqual([]);
  });
});

test('an answer while she types is under 25 kB', async () => {
  const over = [];
  for (const address of PAGES['/envelopes']!) {
    const bytes = await weigh(await app.get(address, { ...PACKED, 'HX-Request': 'true' }));
    if (bytes > LIVE_BYTES) over.push({ address, bytes });
  }
  expect(over).toEqual([]);
});
