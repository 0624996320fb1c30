/**
 * The most that one rectangle can give when copies are limited: blocks are joined in pairs, small ones first, and given
 * up when even the best surroundings could not beat the best found. Knows neither pieces nor time, only when to stop.
 */

import { grown } from '../arrays.ts';
import { chance } from '../search/random.ts';
import { addBlock, type Blocks, copyBlock, newBlocks, placeOf, type Shelf, shelve } from './blocks.ts';
import { addUp, type Counters, countersFor, countOne, within } from './counters.ts';
import { canCutOut } from './place.ts';
import type { Surround } from './surround.ts';
import { type Assembly, join, type Lay } from './unlimited.ts';

/** Lays carry the index of their part; `copies` and `prices` are by part. */
export interface FillProblem {
  readonly width: number;
  readonly height: number;
  readonly lays: readonly Lay[];
  readonly copies: readonly number[];
  /** What a copy is worth beyond the value of its lays, since copies are few. */
  readonly prices: readonly number[];
  /** Values with prices are whole numbers. */
  readonly whole: boolean;
  readonly longestCut: number;
  readonly surround: Surround;
  /** No fill is worth more. */
  readonly bound: number;
  /** Most value per unit of area of any lay. */
  readonly density: number;
}

export interface FillSearch {
  readonly seed: number;
  /** At most this many blocks are tried as neighbours of the others. */
  readonly work: number;
  /** At most this many runs, each with a wider beam than the last. */
  readonly runs: number;
  readonly shouldStop: () => boolean;
}

export interface LimitedFill {
  readonly assembly: Assembly | undefined;
  /** With prices, as is the bound. */
  readonly value: number;
  readonly bound: number;
  /** Blocks tried. */
  readonly work: number;
}

export const NO_FILL: LimitedFill = { assembly: undefined, value: 0, bound: Infinity, work: 0 };

// No sweep is on record, taken as reasonable; the bench of fills is where to try others.
const FIRST_BEAM = 4;
const WIDER = 3;
const WIDEST = 2048;
/** Counters of all joined blocks together, about 64 MB. */
const MOST_COUNTERS = 2 ** 24;
/** Classes of equal width in area; smaller blocks fall into classes by half octaves. */
const CLASSES = 128;
const SPREAD = 0.005;
const ROUNDS = 4;
const MOST_HITS = 300;
const HASH = 2 ** 52;
const CHECK_EVERY = 16;

/**
 * Wang's joining of blocks (1983) as a beam search: blocks stand in classes by area, and of each class only the most
 * promising are joined with all before them. The beam is widened from run to run, with small random whims for the
 * parts, until the bound is met, nothing was left out (then the best is proved, but for trims that a short trimmer could
 * leave inside a block), or the search is stopped. Never worse than `known`.
 */
export function fillLimited(
  problem: FillProblem,
  search: FillSearch,
  known: LimitedFill = NO_FILL,
): LimitedFill {
  const state = begin(problem, search, known);
  const widest = Math.max(FIRST_BEAM, Math.min(WIDEST, MOST_COUNTERS / CLASSES / state.counters.words));
  for (let run = 0; run < search.runs && state.best < state.bound && !state.stopped; run += 1) {
    if (!runBeam(state, Math.floor(Math.min(FIRST_BEAM * WIDER ** run, widest)))) continue;
    if (!state.shortTrimmer) state.bound = state.best;
    break;
  }
  return { assembly: state.assembly, value: state.best, bound: state.bound, work: state.done };
}

/** Some of the ways to fill the rectangle that are worth more than `bar`, best first, from one run with such a beam. */
export function fillsAbove(
  problem: FillProblem,
  search: FillSearch,
  bar: number,
  beam: number,
): readonly Assembly[] {
  const hits: Hit[] = [];
  runBeam(begin(problem, search, { ...NO_FILL, value: bar }, hits), beam);
  return different(hits).map((hit) => hit.assembly());
}

/** The best of each set of parts, best first, as many as are of use. */
function different(hits: Hit[]): Hit[] {
  hits.sort((one, other) => other.value - one.value);
  const seen = new Set<number>();
  const list: Hit[] = [];
  for (const hit of hits) {
    if (seen.has(hit.hash)) continue;
    seen.add(hit.hash);
    if (list.push(hit) >= MOST_HITS) break;
  }
  return list;
}

interface Hit {
  readonly value: number;
  readonly hash: number;
  readonly assembly: () => Assembly;
}

interface State extends FillProblem, Pick<FillSearch, 'work' | 'shouldStop'> {
  /** Takes every fill above the bar, which then does not rise. */
  readonly hits: Hit[] | undefined;
  readonly counters: Counters;
  readonly hashes: readonly number[];
  readonly random: () => number;
  readonly thinnest: number;
  readonly lowest: number;
  /** The trimmer is shorter than the piece. */
  readonly shortTrimmer: boolean;
  /** Classes for blocks below the first of the equal ones. */
  readonly smallClasses: number;
  bound: number;
  best: number;
  /** A block whose value and surroundings do not exceed this cannot beat the best. */
  bar: number;
  assembly: Assembly | undefined;
  done: number;
  stopped: boolean;
}

/** One run: blocks already joined with each other, and by class of area those that wait. */
interface Run {
  readonly beam: number;
  readonly whims: readonly number[];
  readonly joined: Blocks;
  used: Int32Array;
  readonly waiting: Blocks;
  readonly free: number[];
  readonly classes: number[][];
  readonly least: Float64Array;
  readonly rows: Shelf[];
  readonly columns: Shelf[];
  /** The last block joined with the same parts in it, and for each such block the one before it, or −1. */
  readonly alike: Map<number, number>;
  readonly before: number[];
  complete: boolean;
}

function begin(problem: FillProblem, search: FillSearch, known: LimitedFill, hits?: Hit[]): State {
  const { width, height, lays, copies, prices, whole, longestCut, surround, density } = problem;
  const { next } = chance(search.seed);
  const smallest = lays.reduce((least, lay) => Math.min(least, lay.width * lay.height), Infinity);
  const octaves = Math.log2((width * height) / CLASSES / smallest);
  // One literal, so that all states have one shape, which the inner loops are compiled for.
  return {
    width,
    height,
    lays,
    copies,
    prices,
    whole,
    longestCut,
    surround,
    density,
    work: search.work,
    shouldStop: search.shouldStop,
    hits,
    bound: Math.min(problem.bound, known.bound),
    smallClasses: Math.max(0, Math.floor(2 * octaves) + 1),
    counters: countersFor(copies),
    hashes: copies.map(() => Math.floor(next() * 2 ** 26) * 2 ** 26 + Math.floor(next() * 2 ** 26)),
    random: next,
    thinnest: lays.reduce((least, lay) => Math.min(least, lay.width), Infinity),
    lowest: lays.reduce((least, lay) => Math.min(least, lay.height), Infinity),
    shortTrimmer: longestCut < Math.max(width, height),
    best: known.value,
    bar: barFor(problem, known.value),
    assembly: known.assembly,
    done: known.work,
    stopped: false,
  };
}

/** All copies at their prices are the most that prices can add; whole values rise by 1 at least, less rounding. */
function barFor({ copies, prices, whole }: FillProblem, best: number): number {
  const most = copies.reduce((sum, count, part) => sum + Math.max(0, count) * prices[part]!, 0);
  const margin = Math.min(0.5, 1e-6 + best * 1e-9);
  return best - most + (whole ? 1 - margin : 0);
}

/** True if nothing was left out but what cannot beat the best. */
function runBeam(state: State, beam: number): boolean {
  const run = newRun(state, beam);
  state.lays.forEach((lay, index) => {
    if (state.copies[lay.part]! < 1 || lay.width > state.width || lay.height > state.height) return;
    const [price, whim] = [state.prices[lay.part]!, run.whims[lay.part]!];
    if (lay.value + price > state.best)
      improve(state, run, lay.value + price, state.hashes[lay.part]!, -1, index, 0);
    offer(state, run, lay.width, lay.height, lay.value, price, whim, state.hashes[lay.part]!, -1, index, 0);
  });
  for (let area = 0; area < run.classes.length && !state.stopped; area += 1) joinClass(state, run, area);
  return run.complete && !state.stopped;
}

function newRun(state: State, beam: number): Run {
  const spread = beam === FIRST_BEAM ? 0 : SPREAD * state.random();
  const classes = state.smallClasses + CLASSES;
  const values = state.copies.map(() => 0);
  for (const { part, value } of state.lays) values[part] = value + state.prices[part]!;
  return {
    beam,
    whims: values.map((value) => value * spread * state.random()),
    joined: newBlocks(1024),
    used: new Int32Array(1024 * state.counters.words),
    waiting: newBlocks(4096),
    free: [],
    classes: Array.from({ length: classes }, () => []),
    least: new Float64Array(classes).fill(-Infinity),
    rows: [],
    columns: [],
    alike: new Map(),
    before: [],
    complete: true,
  };
}

/** Joins the best of one class with all before; what that adds to the same class comes in further rounds. */
function joinClass(state: State, run: Run, area: number): void {
  let room = run.beam * (area <= state.smallClasses ? 4 : 1);
  for (let round = 0; round < ROUNDS && !state.stopped; round += 1) {
    selectBest(run, area);
    const blocks = run.classes[area]!;
    run.classes[area] = [];
    run.least[area] = -Infinity;
    if (blocks.length > room || (blocks.length > 0 && round === ROUNDS - 1)) run.complete = false;
    for (const block of blocks.slice(0, room)) {
      if (state.stopped) return;
      joinWithAll(state, run, block);
    }
    for (const block of blocks) run.free.push(block);
    room -= Math.min(room, blocks.length);
    if (blocks.length === 0) return;
  }
}

/** Sorts a class by promise, drops doubles, and keeps few of each size and one beam in all. */
function selectBest(run: Run, area: number): void {
  const { rank, width, height, hash } = run.waiting;
  const alike = Math.max(2, run.beam >> 3);
  const sizes = new Map<number, number>();
  const doubles = new Set<number>();
  const kept: number[] = [];
  for (const block of run.classes[area]!.sort((a, b) => rank[b]! - rank[a]! || a - b)) {
    const size = sizeKey(width[block]!, height[block]!);
    const double = sumOf(hash[block]!, size * 2 ** 20);
    const same = sizes.get(size) ?? 0;
    const again = doubles.has(double);
    if (again || same >= alike || kept.length >= run.beam) {
      run.complete &&= again;
      run.free.push(block);
      continue;
    }
    doubles.add(double);
    sizes.set(size, same + 1);
    kept.push(block);
  }
  run.classes[area] = kept;
  if (kept.length >= run.beam) run.least[area] = rank[kept[run.beam - 1]!]!;
}

/** The sum of two hashes, modulo HASH. */
const sumOf = (one: number, other: number): number => one + other - (one + other < HASH ? 0 : HASH);

const sizeKey = (width: number, height: number): number =>
  (Math.imul(width, 0x9e3779b1) ^ Math.imul(height, 0x85ebca6b)) >>> 0;

/** The most that can come from around a block of this size. */
function surroundings(state: State, width: number, height: number): number {
  const { values, atX, atY, scaleX, scaleY } = state.surround;
  const around = values[atX[(width * scaleX) | 0]! + atY[(height * scaleY) | 0]!]!;
  return Math.min(around, state.density * (state.width * state.height - width * height));
}

function joinWithAll(state: State, run: Run, waiting: number): void {
  const { width, height, value, hash } = run.waiting;
  if (value[waiting]! + surroundings(state, width[waiting]!, height[waiting]!) <= state.bar) return;
  const last = run.alike.get(hash[waiting]!) ?? -1;
  for (let block = last; block >= 0; block = run.before[block]!) if (covers(run, waiting, block)) return;
  const block = settle(state, run, waiting);
  run.before[block] = last;
  run.alike.set(hash[waiting]!, block);
  joinAlong(state, run, block, 0);
  joinAlong(state, run, block, 1);
  state.done += 1;
  if (state.done >= state.work || (state.done % CHECK_EVERY === 0 && state.shouldStop()))
    state.stopped = true;
}

/** Whether a joined block is no larger either way, so that it can stand in for the waiting one of the same parts. */
const covers = ({ joined, waiting }: Run, large: number, small: number): boolean =>
  joined.width[small]! <= waiting.width[large]! && joined.height[small]! <= waiting.height[large]!;

/** Moves a waiting block among the joined ones and counts its parts. */
function settle(state: State, run: Run, waiting: number): number {
  const { joined } = run;
  const { counters } = state;
  const block = addBlock(joined);
  copyBlock(run.waiting, waiting, joined, block);
  const room = joined.width.length * counters.words;
  if (run.used.length < room) run.used = grown(run.used, room);
  const first = joined.first[block]!;
  const second = joined.second[block]!;
  if (first < 0) countOne(counters, run.used, block, state.lays[second]!.part);
  else addUp(counters, run.used, block, first, second);
  shelve(run.rows, joined.height[block]!, joined.width, block);
  shelve(run.columns, joined.width[block]!, joined.height, block);
  return block;
}

/** All pairs with the block in which the other stands beside it, or lies below it (`down`). */
function joinAlong(state: State, run: Run, block: number, down: 0 | 1): void {
  const { joined } = run;
  const { density, shortTrimmer, longestCut, surround } = state;
  const { value: values } = joined;
  const { values: around } = surround;
  const shelves = down ? run.columns : run.rows;
  const longs = down ? joined.height : joined.width;
  const whole = down ? state.height : state.width;
  const least = down ? state.lowest : state.thinnest;
  const atLong = down ? surround.atY : surround.atX;
  const atDeep = down ? surround.atX : surround.atY;
  const scaleLong = down ? surround.scaleY : surround.scaleX;
  const scaleDeep = down ? surround.scaleX : surround.scaleY;
  const long = longs[block]!;
  const deep = (down ? joined.width : joined.height)[block]!;
  const value = values[block]!;
  const area = state.width * state.height;
  let bar = state.bar - value;
  const alone = atLong[(long * scaleLong) | 0]!;
  const first = placeOf(shelves, deep);
  let from = first;
  while (from > 0 && (deep - shelves[from - 1]!.side) * least * density < area * density - state.bar)
    from -= 1;
  let to = first;
  while (to < shelves.length && around[alone + atDeep[(shelves[to]!.side * scaleDeep) | 0]!]! > bar) to += 1;
  for (let shelf = from; shelf < to; shelf += 1) {
    const { side, blocks } = shelves[shelf]!;
    const high = Math.max(side, deep);
    const across = atDeep[(high * scaleDeep) | 0]!;
    for (let index = 0; index < blocks.length; index += 1) {
      const other = blocks[index]!;
      const wide = long + longs[other]!;
      if (wide > whole) break;
      const short = bar - values[other]!;
      if (
        density * (area - wide * high) <= short ||
        around[across + atLong[(wide * scaleLong) | 0]!]! <= short
      )
        continue;
      if (shortTrimmer && Math.max(high, side < deep ? wide - long : side > deep ? long : 0) > longestCut)
        continue;
      if (!within(state.counters, run.used, block, other)) continue;
      const sum = value + values[other]!;
      if (down) propose(state, run, block, other, high, wide, sum, down);
      else propose(state, run, block, other, wide, high, sum, down);
      bar = state.bar - value;
    }
  }
}

function propose(
  state: State,
  run: Run,
  one: number,
  other: number,
  width: number,
  height: number,
  value: number,
  down: number,
): void {
  const { price, whim, hash } = run.joined;
  const prices = price[one]! + price[other]!;
  const hashes = sumOf(hash[one]!, hash[other]!);
  if (value + prices > state.best) improve(state, run, value + prices, hashes, one, other, down);
  offer(state, run, width, height, value, prices, whim[one]! + whim[other]!, hashes, one, other, down);
}

/** Lets a block wait in its class, unless it is too poor to be looked at. */
function offer(
  state: State,
  run: Run,
  width: number,
  height: number,
  value: number,
  price: number,
  whim: number,
  hash: number,
  first: number,
  second: number,
  down: number,
): void {
  const promise = value + surroundings(state, width, height);
  if (promise <= state.bar) return;
  const area = classOf(state, width * height);
  if (promise - whim <= run.least[area]!) {
    run.complete = false;
    return;
  }
  const { waiting } = run;
  const block = run.free.pop() ?? addBlock(waiting);
  waiting.width[block] = width;
  waiting.height[block] = height;
  waiting.value[block] = value;
  waiting.price[block] = price;
  waiting.whim[block] = whim;
  waiting.hash[block] = hash;
  waiting.rank[block] = promise - whim;
  waiting.first[block] = first;
  waiting.second[block] = second;
  waiting.down[block] = down;
  if (run.classes[area]!.push(block) >= run.beam * 2) selectBest(run, area);
}

function classOf({ width, height, smallClasses }: State, area: number): number {
  const share = (area * CLASSES) / (width * height);
  const step = share < 1 ? Math.ceil(2 * Math.log2(share)) : Math.min(CLASSES, Math.floor(share));
  return Math.max(0, smallClasses - 1 + step);
}

/** Takes a block as the new best if the trimmer can cut it out of the piece. */
function improve(
  state: State,
  run: Run,
  value: number,
  hash: number,
  first: number,
  second: number,
  down: number,
): void {
  if (state.hits) {
    state.hits.push({ value, hash, assembly: () => assemblyOf(state, run.joined, first, second, down) });
    return;
  }
  const assembly = assemblyOf(state, run.joined, first, second, down);
  if (state.shortTrimmer && !canCutOut(assembly, state, state.longestCut)) return;
  state.best = value;
  state.bar = barFor(state, value);
  state.assembly = assembly;
}

function assemblyOf(state: State, joined: Blocks, first: number, second: number, down: number): Assembly {
  if (first < 0) {
    const { width, height } = state.lays[second]!;
    return { width, height, lay: second };
  }
  const of = (block: number): Assembly =>
    assemblyOf(state, joined, joined.first[block]!, joined.second[block]!, joined.down[block]!);
  return join(down ? 'y' : 'x', of(first), of(second));
}
