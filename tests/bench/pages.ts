/**
 * Every page and live answer on shelves of 200, 2 000 and 20 000 designs, asked of the whole app without a network: time in
 * the middle and at the 99th of 100, queries, bytes, elements, and how much longer each takes on ten times the shelf.
 */
import { type App, openApp } from '#tests/support/app.ts';
import { PAGES, withPlans } from '#tests/support/pages.ts';
import { type Queries, watchQueries } from '#tests/support/queries.ts';
import { fillRealShelf } from './shelf.ts';

const SIZES = [200, 2_000, 20_000];
const MOST_TIMES = 40;
const ENOUGH_MS = 1_500;
const NOW = new Date('2026-11-25T12:00:00Z');

interface Asked {
  readonly address: string;
  readonly live: boolean;
}

interface Seen {
  readonly median: number;
  readonly p99: number;
  readonly queries: number;
  readonly bytes: number;
  readonly elements: number;
}

/** A markdown table with one row for each address; the worst of each column stands below it. */
export async function benchPages(): Promise<string> {
  const answers = Object.values(PAGES)
    .flat()
    .map((address) => ({ address, live: false }));
  const asked: Asked[] = [...answers, ...PAGES['/envelopes']!.map((address) => ({ address, live: true }))];
  const seen = new Map<Asked, Seen[]>(asked.map((one) => [one, []]));
  for (const size of SIZES) {
    const app = await openApp();
    await fillRealShelf(app.db, size, NOW);
    await withPlans(app);
    const queries = watchQueries(app.db);
    for (const one of asked) seen.get(one)!.push(await look(app, queries, one));
    await app.db.destroy();
  }
  return [
    '| address | ms, median at 200 / 2 000 / 20 000 designs | × a tenfold | p99, ms at 2 000 | queries | elements | kB |',
    '| --- | ---: | ---: | ---: | ---: | ---: | ---: |',
    ...asked.map((one) => row(one, seen.get(one)!)),
  ].join('\n');
}

async function look(app: App, queries: Queries, { address, live }: Asked): Promise<Seen> {
  const headers: Record<string, string> = live ? { 'HX-Request': 'true' } : {};
  const times: number[] = [];
  let text = '';
  const until = performance.now() + ENOUGH_MS;
  while (times.length < 3 || (times.length < MOST_TIMES && performance.now() < until)) {
    queries.take();
    const before = performance.now();
    const answer = await app.get(address, headers);
    text = await answer.text();
    times.push(performance.now() - before);
    if (answer.status >= 400) throw new Error(`invalid page: ${address} answered ${answer.status}`);
  }
  times.sort((one, other) => one - other);
  return {
    median: times[times.length >> 1]!,
    p99: times[Math.ceil(times.length * 0.99) - 1]!,
    queries: queries.take().length,
    bytes: Buffer.byteLength(text),
    elements: elementsIn(text),
  };
}

const elementsIn = (html: string): number => html.match(/<[a-z]/gi)?.length ?? 0;

function row({ address, live }: Asked, seen: readonly Seen[]): string {
  const growth = seen.slice(1).map(({ median }, one) => (median / seen[one]!.median).toFixed(1));
  const most = (of: (one: Seen) => number): number => Math.max(...seen.map(of));
  return `| ${[
    `${address}${live ? ' as she types' : ''}`,
    seen.map(({ median }) => median.toFixed(1)).join(' / '),
    growth.join(', '),
    seen[1]!.p99.toFixed(1),
    most(({ queries }) => queries),
    most(({ elements }) => elements),
    Math.ceil(most(({ bytes }) => bytes) / 1000),
  ].join(' | ')} |`;
}
