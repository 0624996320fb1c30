/**
 * Remembers full patterns that a search came by, and finds among them those that together use most of what is free. Knows
 * patterns by their parts; makes none but by leaving parts out.
 */
import type { Bin } from './board.ts';
import { codesFor, sumOfCodes } from './codes.ts';
import type { Job } from './job.ts';
import type { Pattern } from './nodes.ts';
import type { Chance } from './random.ts';
import { thinned } from './thinned.ts';

// Made for sheets that a few large parts share with small ones; no sweep is on record, taken as reasonable.
/** Share of its piece that a pattern fills if it is remembered, and that a remembered one has to fill again. */
const FULL = 0.92;
const MOST_KNOWN = 4096;
const MOST_CANDIDATES = 200;
const MOST_VISITS = 1500;
const WHIM = 0.02;

export class Recall {
  private readonly job: Job;
  private readonly random: Chance;
  private readonly codes: Float64Array;
  private readonly known: Bin[] = [];
  private readonly keys: number[] = [];
  private readonly seen = new Set<number>();
  private next = 0;

  constructor(job: Job, random: Chance) {
    this.job = job;
    this.random = random;
    this.codes = codesFor(job.copies.length, random);
  }

  /** The oldest is forgotten where there are too many. */
  remember(bin: Bin): void {
    if (bin.pattern.area < FULL * this.job.stocks[bin.stock]!.area) return;
    const key = bin.stock + sumOfCodes(this.codes, bin.pattern.parts);
    if (this.seen.has(key)) return;
    if (this.known.length === MOST_KNOWN) this.seen.delete(this.keys[this.next]!);
    this.seen.add(key);
    this.known[this.next] = bin;
    this.keys[this.next] = key;
    this.next = (this.next + 1) % MOST_KNOWN;
  }

  /**
   * Patterns for at most so many pieces of a stock with most area of what is available, which is left as it was found;
   * each part is in one of them only as often as it is there, and none is empty. Undefined where too few are known.
   */
  pick(stock: number, many: number, available: Int32Array): Pattern[] | undefined {
    const candidates = this.candidates(stock, available);
    const choice: Choice = { candidates, many, available, chosen: [], best: undefined, most: 0, visits: 0 };
    this.extend(choice, 0, 0);
    const patterns = choice.best?.map((bin) =>
      thinned(this.job, this.job.stocks[stock]!, bin.pattern, available),
    );
    for (const pattern of patterns ?? []) take(available, pattern.parts, -1);
    return patterns?.filter(({ parts }) => parts.length > 0);
  }

  private candidates(stock: number, available: Int32Array): Candidate[] {
    const candidates: Candidate[] = [];
    const least = FULL * this.job.stocks[stock]!.area;
    for (const bin of this.known) {
      if (bin.stock !== stock) continue;
      const gain = this.gain(bin, available);
      if (gain >= least) candidates.push({ bin, gain: gain * (1 + WHIM * this.random.next()) });
    }
    candidates.sort((one, other) => other.gain - one.gain);
    return candidates.slice(0, MOST_CANDIDATES);
  }

  private gain({ pattern: { parts } }: Bin, available: Int32Array): number {
    let gain = 0;
    for (const part of parts) if (available[part]!-- > 0) gain += this.job.area[part]!;
    take(available, parts, -1);
    return gain;
  }

  private extend(choice: Choice, from: number, sum: number): void {
    const { candidates, many, available, chosen } = choice;
    const more = many - chosen.length;
    if (more === 0) {
      choice.most = sum;
      choice.best = [...chosen];
      return;
    }
    for (let at = from; at < candidates.length; at += 1) {
      const { bin, gain } = candidates[at]!;
      if (sum + gain * more <= choice.most || choice.visits++ > MOST_VISITS) return;
      const real = more === many ? gain : this.gain(bin, available);
      if (sum + real + gain * (more - 1) <= choice.most) continue;
      take(available, bin.pattern.parts, 1);
      chosen.push(bin);
      this.extend(choice, at + 1, sum + real);
      chosen.pop();
      take(available, bin.pattern.parts, -1);
    }
  }
}

function take(available: Int32Array, parts: Int32Array, times: 1 | -1): void {
  for (const part of parts) available[part]! -= times;
}

interface Candidate {
  readonly bin: Bin;
  readonly gain: number;
}

interface Choice {
  readonly candidates: readonly Candidate[];
  readonly many: number;
  readonly available: Int32Array;
  readonly chosen: Bin[];
  best: readonly Bin[] | undefined;
  most: number;
  visits: number;
}
