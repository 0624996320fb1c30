/** What each page may cost on a real shelf: its questions, its elements, its bytes, on 200 designs and on 2 000. */
import { describe, expect, test } from 'vitest';
import { fillRealShelf } from '#tests/bench/shelf.ts';
import { type App, openApp } from '#tests/support/app.ts';
import { FIRST } from '#tests/support/cast.ts';
import { PAGES, withPlans } from '#tests/support/pages.ts';
import { watchQueries } from '#tests/support/queries.ts';

const QUERIES = 15;
const ELEMENTS = 1_500;
const BYTES = 150_000;
const LIVE_BYTES = 60_000;

const within = Object.values(PAGES).flat();

async function costs(app: App, addresses: readonly string[], headers: Record<string, string> = {}) {
  const queries = watchQueries(app.db);
  const seen = [];
  for (const address of addresses) {
    queries.take();
    const answer = await app.get(address, headers);
    const text = await answer.text();
    if (answer.headers.get('Content-Type')?.includes('zip')) continue;
    const elements = text.match(/<[a-z]/gi)?.length ?? 0;
    seen.push({ address, queries: queries.take().length, elements, bytes: Buffer.byteLength(text) });
  }
  return seen;
}

describe.each([200, 2_000])('on a shelf of %i designs', async (designs) => {
  const app = await openApp();
  await fillRealShelf(app.db, designs, new Date(FIRST));
  await withPlans(app);

  test('no page asks, holds or weighs more than it may', async () => {
    const seen = await costs(app, within);
    expect(
      seen.filter((one) => one.queries > QUERIES || one.elements > ELEMENTS || one.bytes > BYTES),
    ).toEqual([]);
  });

  test('no answer while she types weighs more than it may', async () => {
    const seen = await costs(app, PAGES['/envelopes']!, { 'HX-Request': 'true' });
    expect(seen.filter(({ bytes }) => bytes > LIVE_BYTES)).toEqual([]);
  });
});
