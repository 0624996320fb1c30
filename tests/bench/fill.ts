/**
 * Bench section: fill one piece, against the proven optima of two collections in tests/fixtures/cutting. `benchFill()` answers
 * with markdown tables; each fill is replayed by the judge of plans. Knows no other planner.
 */
import { checkFill } from '#core/cutting/one-piece/check-fill.ts';
import { type Fill, fillPiece } from '#core/cutting/one-piece/fill.ts';
import type { FillPart } from '#core/cutting/one-piece/wants.ts';
import type { Piece } from '#core/cutting/order.ts';
import { readInstances } from './orders.ts';

const SHORT = 1_000;
const LONG = 10_000;
const LONGEST = 12_000;

/** One instance, and what no fill of it can beat. */
interface Instance {
  readonly name: string;
  readonly piece: Piece;
  readonly parts: readonly FillPart[];
  readonly optimum: number;
}

interface Result extends Instance {
  readonly fill: Fill;
  readonly sound: boolean;
}

/** Both collections in the short time; what misses there, again in the long one. Takes about a minute. */
export async function benchFill(): Promise<string> {
  const limited = readLimited();
  const straight = readUnlimited(false);
  const turned = readUnlimited(true);
  return [
    '| fill a piece | optimal | proved | worst gap | sound | median | slowest | short of the optimum |',
    '| --- | ---: | ---: | ---: | ---: | ---: | ---: | --- |',
    ...rows('limited copies, no turns', limited, LONG),
    ...rows('any number, no turns', straight, LONGEST),
    ...rows('any number, turns', turned, LONGEST),
    '',
    `${process.version}, one core; gaps are to the proven optimum; what misses it in ${seconds(SHORT)} is run again.`,
  ].join('\n');
}

/** Instances of a collection, as one-piece fills by area. Exported for the test that runs the quick ones. */
export function readLimited(): Instance[] {
  return readInstances<Listed & { guillotine: { best: number } }>('knapsack-limited.json').map((one) =>
    instance(one, false, one.guillotine.best),
  );
}

export function readUnlimited(turns: boolean): Instance[] {
  type Both = Listed & { guillotineOptimum: { noRotation: number; withRotation: number } };
  return readInstances<Both>('knapsack-unlimited.json').map((one) =>
    instance(one, turns, one.guillotineOptimum[turns ? 'withRotation' : 'noRotation']),
  );
}

interface Listed {
  readonly name: string;
  readonly stock: { readonly w: number; readonly h: number };
  readonly items: readonly { readonly w: number; readonly h: number; readonly copies: number | null }[];
}

function instance({ name, stock, items }: Listed, turns: boolean, optimum: number): Instance {
  const upright = !turns;
  return {
    ...{ name, optimum },
    piece: { id: name, kind: 'sheet', width: stock.w, height: stock.h, upright },
    parts: items.map(({ w, h, copies }, index) => ({
      ...{ id: `part ${index + 1}`, width: w, height: h, upright },
      ...(copies !== null && { copies }),
    })),
  };
}

function rows(name: string, instances: readonly Instance[], longer: number): string[] {
  const short = instances.map((one) => run(one, SHORT));
  const again = short.map((result) => (gap(result) > 0 ? run(result, longer) : result));
  const of = (time: number): string => `${name}, ${instances.length} at ${seconds(time)}`;
  return [row(of(SHORT), short), row(of(longer), again)];
}

function run(one: Instance, timeMs: number): Result {
  const fill = fillPiece(one.piece, one.parts, { timeMs, now: () => performance.now() });
  return { ...one, fill, sound: checkFill(one.piece, one.parts, fill).length === 0 };
}

function row(name: string, results: readonly Result[]): string {
  const times = results.map(({ fill }) => fill.timeMs).sort((one, other) => one - other);
  const cells = [
    results.filter((result) => gap(result) === 0).length,
    results.filter(({ fill }) => fill.proved).length,
    percent(Math.max(...results.map(gap))),
    results.filter(({ sound }) => sound).length,
    `${Math.round(times[times.length >> 1]!)} ms`,
    `${Math.round(times.at(-1)!)} ms`,
    results.flatMap((result) => (gap(result) > 0 ? `${result.name} ${percent(gap(result))}` : [])).join(', '),
  ];
  return `| ${name} | ${cells.join(' | ')} |`;
}

const gap = ({ optimum, fill }: Result): number => (optimum - fill.value) / optimum;

const percent = (share: number): string => `${(100 * share).toFixed(3)} %`;

const seconds = (ms: number): string => `${ms / 1000} s`;
