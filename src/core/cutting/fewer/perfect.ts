/**
 * All ways to cut whole pieces without any waste: blocks with a side in common are joined, small ones first, until they
 * are pieces. Knows the parts at hand and one kind of paper; which of the ways go together is for others to choose.
 */
import { addUp, type Counters, countersFor, countOne, within } from '../one-piece/counters.ts';
import { type Assembly, join, type Lay } from '../one-piece/unlimited.ts';
import { patternOf } from '../search/assembled.ts';
import { isFree, type Job, type Stock } from '../search/job.ts';
import { CUT_X, CUT_Y, type Pattern } from '../search/nodes.ts';
import type { Chance } from '../search/random.ts';

/** Cut whole from one stock. */
export interface PerfectFill {
  readonly stock: number;
  /** One entry for each copy. */
  readonly parts: Int32Array;
  readonly pattern: () => Pattern;
}

/** Copies by part, in what order they are joined, and until when. */
interface Joinable {
  readonly available: Int32Array;
  readonly random: Chance;
  readonly shouldStop: () => boolean;
}

// Made for orders that need nearly all of their sheets; no sweep is on record, taken as reasonable.
const MOST_BLOCKS = 20_000;
const MOST_PAIRS = 1_000_000;
const MOST_WORDS = 8;
const HASHES = 1 << 15;
/** Joined blocks larger than this share of a piece are kept only if they reach across it. */
const LARGE = 0.4;
const CHECK_EVERY = 64;

/**
 * The fills without waste that the stocks, which are of one paper, can have from `available`: all of them but those that
 * need large blocks in their midst, or as many as `shouldStop` and the room for blocks allow, in an order of chance.
 * None where the trimmer is too short for some cut.
 */
export function perfectFills(
  job: Job,
  stocks: readonly number[],
  { available, random, shouldStop }: Joinable,
): PerfectFill[] {
  const sizes = stocks.map((stock) => job.stocks[stock]!);
  if (sizes.some(({ width, height }) => Math.max(width, height) > job.longestCut)) return [];
  const joining = begin(job, sizes, available);
  if (joining.counters.words > MOST_WORDS) return [];
  for (const part of shuffled(available, random)) addPart(joining, part);
  joinAll(joining, shouldStop);
  return stocks.flatMap((stock) => {
    const size = job.stocks[stock]!;
    const { width, height } = size;
    return joining.whole
      .filter((block) => fills(joining, joining.wide[block]!, joining.high[block]!, width, height))
      .map((block) => {
        const lays: Lay[] = [];
        const whole = assembly(joining, block, width, height, lays);
        return {
          stock,
          parts: Int32Array.from(lays, ({ part }) => part),
          pattern: () => patternOf(job, size, whole, lays),
        };
      });
  });
}

interface Joining {
  readonly job: Job;
  readonly lies: Uint8Array;
  readonly sizes: readonly Stock[];
  readonly counters: Counters;
  /** All parts may turn: then blocks stand upright, and each stands for itself turned as well. */
  readonly turns: boolean;
  readonly most: number;
  readonly longest: number;
  count: number;
  pairs: number;
  readonly wide: Int32Array;
  readonly high: Int32Array;
  /** The cut of a block as it stands, and its two halves, or -1 and a part. */
  readonly how: Uint8Array;
  readonly one: Int32Array;
  readonly other: Int32Array;
  readonly used: Int32Array;
  /** Blocks by what they hold: the last one, and each one's predecessor. */
  readonly ofHash: Int32Array;
  readonly sameHash: Int32Array;
  /** Joined blocks by the side that they can be joined along. */
  readonly beside: Map<number, number[]>;
  readonly below: Map<number, number[]>;
  /** Blocks that are whole pieces. */
  readonly whole: number[];
}

function begin(job: Job, sizes: readonly Stock[], available: Int32Array): Joining {
  const { lies } = job.papers[sizes[0]!.paper]!;
  const counters = countersFor([...available]);
  const ints = (room: number): Int32Array => new Int32Array(room);
  const turns = available.every(
    (copies, part) =>
      copies < 1 || lies[part] === 2 || (lies[part] === 1 && job.width[part] === job.height[part]),
  );
  const beside = new Map<number, number[]>();
  return {
    ...{ job, lies, sizes, counters, turns, count: 0, pairs: 0, whole: [] },
    most: LARGE * Math.max(...sizes.map(({ area }) => area)),
    longest: Math.max(...sizes.map(({ width, height }) => Math.max(width, height))),
    wide: ints(MOST_BLOCKS),
    high: ints(MOST_BLOCKS),
    how: new Uint8Array(MOST_BLOCKS),
    one: ints(MOST_BLOCKS),
    other: ints(MOST_BLOCKS),
    used: ints(MOST_BLOCKS * Math.min(MOST_WORDS, counters.words)),
    ofHash: ints(HASHES).fill(-1),
    sameHash: ints(MOST_BLOCKS),
    beside,
    below: turns ? beside : new Map(),
  };
}

function shuffled(available: Int32Array, random: Chance): number[] {
  const parts = [...available.keys()].filter((part) => available[part]! > 0);
  for (let left = parts.length - 1; left > 0; left -= 1) {
    const at = random.below(left + 1);
    [parts[left], parts[at]] = [parts[at]!, parts[left]!];
  }
  return parts;
}

function addPart(joining: Joining, part: number): void {
  const { job, lies, turns } = joining;
  const [wide, high] = [job.width[part]!, job.height[part]!];
  if (isFree(lies[part]!)) add(joining, wide, high, CUT_X, -1, part);
  if (lies[part] === 2 && !turns) add(joining, high, wide, CUT_X, -1, part);
}

/** Each block with all before it; when time or room is up, only what reaches across a piece is still joined. */
function joinAll(joining: Joining, shouldStop: () => boolean): void {
  const { wide, high, turns } = joining;
  let closing = false;
  for (let block = 0; block < joining.count && joining.count < MOST_BLOCKS; block += 1) {
    if (joining.pairs > 2 * MOST_PAIRS) break;
    closing ||= joining.pairs > MOST_PAIRS || (block % CHECK_EVERY === 0 && shouldStop());
    if (closing && !isAcross(joining, wide[block]!, high[block]!)) continue;
    if (isWhole(joining, wide[block]!, high[block]!)) continue;
    joinAlong(joining, joining.beside, block, high[block]!, wide[block]!, true);
    if (!turns || wide[block] !== high[block])
      joinAlong(joining, joining.below, block, wide[block]!, high[block]!, false);
  }
}

function joinAlong(
  joining: Joining,
  lists: Map<number, number[]>,
  block: number,
  side: number,
  length: number,
  sideways: boolean,
): void {
  const { used, counters } = joining;
  const list = lists.get(side);
  if (!list) {
    lists.set(side, [block]);
    return;
  }
  joining.pairs += list.length;
  for (const other of list) {
    const more = lengthFrom(joining, other, side, sideways);
    if (length + more > joining.longest || !within(counters, used, block, other)) continue;
    if (sideways) add(joining, length + more, side, CUT_X, block, other);
    else add(joining, side, length + more, CUT_Y, block, other);
  }
  list.push(block);
}

/** Adds a block if it fits a piece, unless one like it is there. */
function add(joining: Joining, width: number, height: number, how: number, one: number, other: number): void {
  const { counters, used, count, ofHash, sameHash, turns } = joining;
  if (count >= MOST_BLOCKS) return;
  const wide = turns ? Math.min(width, height) : width;
  const high = turns ? Math.max(width, height) : height;
  if (!mayStay(joining, wide, high, one < 0 ? Infinity : joining.most)) return;
  const { words } = counters;
  const at = count * words;
  used.fill(0, at, at + words);
  if (one < 0) countOne(counters, used, count, other);
  else addUp(counters, used, count, one, other);
  let hash = wide;
  for (let word = 0; word < words; word += 1) hash = Math.imul(hash ^ used[at + word]!, 0x9e3779b1);
  hash = (hash ^ (hash >>> 15)) & (HASHES - 1);
  for (let known = ofHash[hash]!; known >= 0; known = sameHash[known]!) {
    if (isSame(joining, known, wide)) return;
  }
  joining.wide[count] = wide;
  joining.high[count] = high;
  joining.how[count] = wide === width ? how : CUT_X + CUT_Y - how;
  joining.one[count] = one;
  joining.other[count] = other;
  sameHash[count] = ofHash[hash]!;
  ofHash[hash] = count;
  joining.count += 1;
  if (isWhole(joining, wide, high)) joining.whole.push(count);
}

/** Whether a block holds the parts of the one that is being added, on the same width. */
function isSame({ wide, used, count, counters }: Joining, block: number, width: number): boolean {
  if (wide[block] !== width) return false;
  const { words } = counters;
  for (let word = 0; word < words; word += 1)
    if (used[block * words + word] !== used[count * words + word]) return false;
  return true;
}

/** Whether a block fits a piece and, where it does not reach across, is no larger than the most. */
function mayStay({ sizes, turns }: Joining, wide: number, high: number, most: number): boolean {
  const stays = ({ width, height }: Stock, across: number, down: number): boolean =>
    across <= width && down <= height && (across * down <= most || across === width || down === height);
  return sizes.some((size) => stays(size, wide, high) || (turns && stays(size, high, wide)));
}

const isAcross = ({ sizes, turns }: Joining, wide: number, high: number): boolean =>
  sizes.some(
    ({ width, height }) =>
      wide === width || high === height || (turns && (wide === height || high === width)),
  );

const isWhole = (joining: Joining, wide: number, high: number): boolean =>
  joining.sizes.some(({ width, height }) => fills(joining, wide, high, width, height));

const fills = ({ turns }: Joining, wide: number, high: number, width: number, height: number): boolean =>
  (wide === width && high === height) || (turns && wide === height && high === width);

/** A block that lies in its place, turned if need be, as its halves joined. */
function assembly(joining: Joining, block: number, width: number, height: number, lays: Lay[]): Assembly {
  const { job, wide, high, how, one, other } = joining;
  const first = one[block]!;
  const second = other[block]!;
  if (first < 0) {
    const turned = job.width[second] !== width || job.height[second] !== height;
    return { width, height, lay: lays.push({ part: second, turned, width, height, value: 0 }) - 1 };
  }
  const sideways = (how[block] === CUT_X) === (wide[block] === width);
  const side = how[block] === CUT_X ? high[block]! : wide[block]!;
  const at = lengthFrom(joining, first, side, how[block] === CUT_X);
  return join(
    sideways ? 'x' : 'y',
    assembly(joining, first, sideways ? at : width, sideways ? height : at, lays),
    assembly(joining, second, sideways ? width - at : width, sideways ? height : height - at, lays),
  );
}

/** How long a block is on from the side along which it is joined. */
const lengthFrom = (
  { wide, high, turns }: Joining,
  block: number,
  side: number,
  sideways: boolean,
): number => ((turns ? high[block] === side : sideways) ? wide[block]! : high[block]!);
