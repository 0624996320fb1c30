/**
 * Fewer patterns and fewer settings for the same parts: counts both for the pieces on a board, and repeats one pattern on
 * as many of them as the parts allow. Knows the arrangement of what is cut alike; decides nothing.
 */
import type { Bin, Board } from '../search/board.ts';
import type { Job, Stock } from '../search/job.ts';
import { AS_IS, CUT_X, CUT_Y, type Pattern, REST, TURNED } from '../search/nodes.ts';
import type { Chance } from '../search/random.ts';
import type { Budget } from '../search/search.ts';
import { Arranger, type Block, measure, needsOf, partBlock, restBlock, rowOf, simpler } from './rows.ts';

export interface Sameness {
  readonly patterns: number;
  /** Measures that are set at the fence. */
  readonly settings: number;
}

interface Known {
  readonly name: string;
  readonly measures: readonly number[];
}

/** Counts patterns and settings, and remembers what it has seen of each pattern. */
export class Likeness {
  private readonly job: Job;
  private readonly known = new WeakMap<Pattern, Known>();
  private readonly arrangers: readonly Arranger[];

  constructor(job: Job) {
    this.job = job;
    this.arrangers = job.papers.map(() => new Arranger(job.longestCut));
  }

  of(bins: readonly Bin[]): Sameness {
    const names = new Set<string>();
    const measures = new Set<number>();
    for (const bin of bins) {
      const { name, measures: set } = this.read(bin);
      if (names.has(name)) continue;
      names.add(name);
      for (const one of set) measures.add(one);
    }
    return { patterns: names.size, settings: measures.size };
  }

  private read({ stock, pattern }: Bin): Known {
    const known = this.known.get(pattern);
    if (known) return known;
    const { width, height, paper } = this.job.stocks[stock]!;
    const block = blockOf(this.job, this.job.stocks[stock]!, pattern.nodes);
    const arranged = this.arrangers[paper]!.arrangements(block).reduce(simpler);
    const read = { name: `${width} ${height} ${arranged.key}`, measures: measuresOf(arranged) };
    this.known.set(pattern, read);
    return read;
  }
}

/** What is wanted goes to the fence at its own measure; the last of a row needs none where nothing is left over. */
function measuresOf(block: Block): number[] {
  if (block.kind !== 'row') return [];
  const wanted = block.blocks.filter(({ kind }) => kind !== 'rest');
  const set = wanted.length < block.blocks.length ? wanted : wanted.slice(0, -1);
  return [...set.map((one) => measure(one, block.along)), ...block.blocks.flatMap(measuresOf)];
}

function blockOf(job: Job, { width, height, paper }: Stock, nodes: Int32Array): Block {
  const { lies } = job.papers[paper]!;
  let at = 0;
  const read = (wide: number, high: number): Block => {
    const kind = nodes[at++]!;
    const what = nodes[at++]!;
    if (kind === CUT_X) return rowOf('x', [read(what, high), read(wide - what, high)]);
    if (kind === CUT_Y) return rowOf('y', [read(wide, what), read(wide, high - what)]);
    const sides = { width: wide, height: high };
    if (kind === REST) return restBlock(sides);
    if (kind !== AS_IS && kind !== TURNED) throw new Error(`invalid node: ${kind}`);
    const held = lies[what] !== 2 && job.width[what] !== job.height[what];
    return partBlock(what, kind === TURNED, sides, needsOf(job.parts[what]!.pin, held));
  };
  return read(width, height);
}

const SHAKE = 0.2;
const MOST_EMPTIED = 12;

/**
 * Empties a few pieces of one stock, gives one pattern to as many of them as the parts allow, one that is there or a new
 * one with an even share of what is free, and fills the others with patterns that are there, or anew. Can be undone.
 */
export function repeatOne(board: Board, random: Chance, values: (shake: number) => Float64Array): () => void {
  const { stock } = board.bins[random.below(board.bins.length)]!;
  const others = patternsOn(board, stock);
  const old = takeOff(board, random, stock);
  const kept = board.bins.length;
  const slots = (): number => old.length - (board.bins.length - kept);
  const put = (bin: Bin, times: number): void => {
    for (let time = 0; time < times && board.possible(bin); time += 1) board.put(bin);
  };
  const times = 1 + random.below(old.length);
  const first =
    random.next() < 0.5
      ? others[random.below(others.length)]
      : board.fill(stock, values(SHAKE), SHAKE, times);
  if (first) put(first, random.next() < 0.7 ? slots() : times);
  while (slots() > 0 && board.unplaced > 0) {
    const again = random.next() < 0.5 ? others.find((bin) => board.possible(bin)) : undefined;
    const share = 1 + random.below(slots());
    const bin =
      again ?? board.fill(stock, values(SHAKE), SHAKE, share) ?? board.fill(stock, values(SHAKE), SHAKE);
    if (!bin) break;
    put(bin, slots());
  }
  return () => {
    while (board.bins.length > kept) board.remove(board.bins.length - 1);
    for (const bin of old) board.put(bin);
  };
}

/** Work that trying one exchange counts as, of a repacking. */
const EXCHANGE = 0.2;

/**
 * Lets two pieces exchange parts of one size wherever that costs less: pieces that differ in the names of such parts alone
 * come to be cut alike, and what is left over stays as it is.
 */
export function exchangeAlike(
  board: Board,
  cost: () => number,
  budget: Pick<Budget, 'work' | 'spent'>,
): void {
  const { width, height } = board.job;
  if (new Set(Array.from(width, (wide, part) => `${wide} ${height[part]!}`)).size === width.length) return;
  const anyBetter = (): boolean => {
    const least = cost();
    for (const one of exchanges(board)) {
      if (budget.spent() >= 1) return false;
      budget.work(EXCHANGE);
      const undo = exchange(board, one);
      if (cost() < least) return true;
      undo();
    }
    return false;
  };
  while (anyBetter());
}

interface Exchange {
  readonly bins: readonly [Bin, Bin];
  readonly parts: readonly [number, number];
}

/** Two patterns, and a part of each that may lie in the place of the other's. */
function* exchanges({ job, bins }: Board): Generator<Exchange> {
  const patterns = [...new Map(bins.map((bin) => [bin.pattern, bin])).values()];
  const of = (bin: Bin): Set<number> => new Set(bin.pattern.parts);
  for (const [index, one] of patterns.entries())
    for (const other of patterns.slice(index + 1))
      for (const given of of(one))
        for (const taken of of(other))
          if (given !== taken && likeSized(job, given, taken))
            yield { bins: [one, other], parts: [given, taken] };
}

/** Leaves the board as it is where parts that match would come from different designs; can be undone. */
function exchange(board: Board, { bins: [one, other], parts: [given, taken] }: Exchange): () => void {
  const kept = board.bins.length - 2;
  const putBack = (): void => {
    while (board.bins.length > kept) board.remove(board.bins.length - 1);
    for (const bin of [one, other]) board.put(bin);
  };
  for (const bin of [one, other]) board.remove(board.bins.indexOf(bin));
  for (const bin of [renamed(one, given, taken), renamed(other, taken, given)])
    if (board.possible(bin)) board.put(bin);
  if (board.bins.length < kept + 2) putBack();
  return putBack;
}

const likeSized = ({ width, height, papers }: Job, one: number, other: number): boolean =>
  width[one] === width[other] &&
  height[one] === height[other] &&
  papers.every(({ lies }) => lies[one] === lies[other] && lies[one] !== 3);

/** The bin with another part in the place of one copy of `from`. */
function renamed({ stock, lost, pattern }: Bin, from: number, to: number): Bin {
  const nodes = pattern.nodes.slice();
  for (let at = 0; at < nodes.length; at += 2) {
    if ((nodes[at] !== AS_IS && nodes[at] !== TURNED) || nodes[at + 1] !== from) continue;
    nodes[at + 1] = to;
    break;
  }
  const parts = pattern.parts.slice();
  parts[parts.indexOf(from)] = to;
  return { stock, lost, pattern: { ...pattern, nodes, parts } };
}

/** Largest first, each once. */
function patternsOn({ bins }: Board, stock: number): Bin[] {
  const seen = new Set<Pattern>();
  const found: Bin[] = [];
  for (const bin of bins) {
    if (bin.stock !== stock || seen.has(bin.pattern)) continue;
    seen.add(bin.pattern);
    found.push(bin);
  }
  return found.sort((one, other) => other.pattern.area - one.pattern.area);
}

function takeOff(board: Board, random: Chance, stock: number): Bin[] {
  const places = board.bins.flatMap((bin, index) => (bin.stock === stock ? [index] : []));
  const many = Math.min(places.length, 2 + random.below(Math.min(MOST_EMPTIED, places.length)));
  while (places.length > many) places.splice(random.below(places.length), 1);
  return places.reverse().map((index) => board.remove(index));
}
