/**
 * Fills one block with strips: one 0/1 knapsack pass over the ways to lie, thinnest first, prices every thickness of a
 * strip; the best is cut off and all that remains is filled the same way. Knows one piece at a time and nothing of goals.
 */

import { grown } from '../arrays.ts';
import { worth } from '../worth.ts';
import type { Job, Paper, Stock, Ways } from './job.ts';
import { AS_IS, CUT_X, CUT_Y, type Pattern, REST, TURNED } from './nodes.ts';
import type { Frame } from './pins.ts';
import type { Chance } from './random.ts';

// Untuned, taken as reasonable but for MOST_VALUE, which is what 32 bits can sum.
/** Strips up to this long are priced at every length; longer ones in so many steps, with the exact length beside each. */
const DENSE = 640;
const STEPS = 192;

/** Where more ways than this would do, one in so many is priced, another one each time. */
const MOST_WAYS = 400;

/** The most that values may come to together, as whole numbers. */
const MOST_VALUE = 2 ** 30 - 1;

/** A whole stock, or a block within one. */
type Space = Pick<Stock, 'width' | 'height' | 'paper'>;

/** What a space is filled with. */
export interface Wanted {
  /** Copies by part; left as it was found. */
  readonly available: Int32Array;
  /** By part: the higher, the more it is sought. */
  readonly value: Float64Array;
  /** 0 is greedy, 0.3 is lively. */
  readonly noise: number;
  /** Has its parts cut first. */
  readonly frame?: Frame | undefined;
}

/** Each filler has its own workspace, so one may not be used from within another's `fill`. */
export class StripFiller {
  private readonly job: Job;
  private readonly random: Chance;
  private readonly best = new Int32Array(DENSE + 1);
  private readonly exact = new Float64Array(STEPS + 1);
  /** Each pass offers a way so many times at once, which takes so much room, or 0 where steps are coarse. */
  private readonly passWay: number[] = [];
  private readonly passTimes: number[] = [];
  private readonly passLong: number[] = [];
  private passes = 0;
  /** By pass and room: 0 where it was not taken, −1 where it was, and one more than the step it came from if coarse. */
  private taking = new Int16Array(1 << 14);
  private available: Int32Array = new Int32Array(0);
  /** Whole numbers in proportion to the values, so that the knapsack needs no branches. */
  private readonly scaled: Int32Array;
  private paper!: Paper;
  private noise = 0;
  private mask = 0;
  private nodes: Int32Array = new Int32Array(1 << 12);
  private size = 0;
  private placed: Int32Array = new Int32Array(1 << 10);
  private count = 0;
  private area = 0;
  private worthLeft = 0;
  /** The best strip of the last pass. */
  private stripScore = 0;
  private stripThickness = 0;
  private stripPasses = 0;
  private stripSteps = 0;
  /** The only way in it, or −1. */
  private stripWay = -1;
  /** Ways taken into strips under way: a stack. */
  private taken: Int32Array = new Int32Array(1 << 10);
  private top = 0;

  constructor(job: Job, random: Chance) {
    this.job = job;
    this.random = random;
    this.scaled = new Int32Array(job.copies.length);
  }

  /** Undefined when nothing fits. */
  fill({ width, height, paper }: Space, wanted: Wanted): Pattern | undefined {
    const { available, value, noise, frame } = wanted;
    this.available = available;
    this.scale(value, width * height);
    this.noise = noise;
    this.paper = this.job.papers[paper]!;
    this.size = this.count = this.area = this.worthLeft = this.top = 0;
    if (frame) this.around(frame, width, height);
    else this.block(width, height);
    for (let at = 0; at < this.count; at += 1) available[this.placed[at]!]! += 1;
    if (this.count === 0) return undefined;
    return {
      parts: this.placed.slice(0, this.count),
      nodes: this.nodes.slice(0, this.size),
      area: this.area,
      left: this.worthLeft,
    };
  }

  /** Takes all parts of the frame first, so that nothing else uses them up. */
  private around(frame: Frame, width: number, height: number): void {
    const reserve = (one: Frame): void => {
      if (one.kind === 'part') this.available[one.part]! -= 1;
      else if ('parts' in one) one.parts.forEach(reserve);
    };
    reserve(frame);
    this.build(frame, width, height);
  }

  private build(frame: Frame, width: number, height: number): void {
    if (frame.kind === 'open') {
      this.block(width, height);
    } else if (frame.kind === 'closed') {
      this.leave(width, height);
    } else if (frame.kind === 'part') {
      this.set(AS_IS, frame.part);
    } else {
      const { kind, at, parts } = frame;
      this.emit(kind, at);
      this.build(parts[0], kind === CUT_X ? at : width, kind === CUT_Y ? at : height);
      this.build(parts[1], kind === CUT_X ? width - at : width, kind === CUT_Y ? height - at : height);
    }
  }

  /** Fills a block strip by strip. */
  private block(width: number, height: number): void {
    let [wide, high] = [width, height];
    while (wide > 0 && high > 0) {
      const from = this.top;
      const along = this.bestStrip(wide, high);
      if (along === undefined) {
        this.leave(wide, high);
        return;
      }
      if (along) high = this.cutOff(along, wide, high, from);
      else wide = this.cutOff(along, high, wide, from);
      this.top = from;
    }
  }

  /** Whether the best strip of a block lies along x, with its ways taken; undefined where nothing fits. */
  private bestStrip(width: number, height: number): boolean | undefined {
    const { across, down } = this.paper;
    const from = this.top;
    this.mask = this.random.next() * 4294967296;
    this.price(across, width, height);
    const acrossScore = this.stripScore;
    const acrossThickness = this.stripThickness;
    if (acrossScore > 0) this.take(across);
    const acrossTop = this.top;
    this.giveBack(across, from);
    this.price(down, height, width);
    if (acrossScore === 0 && this.stripScore === 0) return undefined;
    if (this.stripScore <= acrossScore) {
      this.top = acrossTop;
      this.stripThickness = acrossThickness;
      for (let at = from; at < this.top; at += 1) this.available[across.part[this.taken[at]!]!]! -= 1;
      return true;
    }
    this.top = from;
    this.take(down);
    return false;
  }

  /**
   * Cuts the best strip from the block and fills it; how much of the depth is left. Sometimes the strip lies beyond the
   * rest, which is then filled first.
   */
  private cutOff(along: boolean, length: number, depth: number, from: number): number {
    const cut = along ? CUT_Y : CUT_X;
    const thickness = this.stripThickness;
    const to = this.top;
    if (thickness === depth) {
      this.strip(along, length, thickness, from, to);
      return 0;
    }
    if (this.noise > 0 && this.random.next() < 0.5) {
      this.emit(cut, depth - thickness);
      this.lay(along, length, depth - thickness);
      this.strip(along, length, thickness, from, to);
      return 0;
    }
    this.emit(cut, thickness);
    this.strip(along, length, thickness, from, to);
    return depth - thickness;
  }

  /** Lays the ways taken (thickest first) into a strip and fills what is beside them and at its end. */
  private strip(along: boolean, length: number, thickness: number, from: number, to: number): void {
    const ways = along ? this.paper.across : this.paper.down;
    let rest = length;
    let at = from;
    while (at < to) {
      const way = this.taken[at]!;
      const deep = ways.thickness[way]!;
      if (deep === thickness) {
        const long = ways.length[way]!;
        if (long < rest) this.emit(along ? CUT_X : CUT_Y, long);
        this.set(ways.turned[way] ? TURNED : AS_IS, ways.part[way]!);
        rest -= long;
        at += 1;
        continue;
      }
      let end = at;
      let run = 0;
      while (end < to && ways.thickness[this.taken[end]!] === deep) run += ways.length[this.taken[end++]!]!;
      if (run === rest || this.random.next() < 0.5) {
        this.emit(along ? CUT_Y : CUT_X, deep);
        this.strip(along, rest, deep, at, to);
        this.lay(along, rest, thickness - deep);
        return;
      }
      this.emit(along ? CUT_X : CUT_Y, run);
      this.emit(along ? CUT_Y : CUT_X, deep);
      this.strip(along, run, deep, at, end);
      this.lay(along, run, thickness - deep);
      rest -= run;
      at = end;
    }
    if (rest > 0) this.lay(along, rest, thickness);
  }

  private lay(along: boolean, length: number, thickness: number): void {
    if (along) this.block(length, thickness);
    else this.block(thickness, length);
  }

  private emit(kind: number, what: number): void {
    if (this.size + 4 > this.nodes.length) this.nodes = grown(this.nodes);
    this.nodes[this.size++] = kind;
    this.nodes[this.size++] = what;
  }

  private set(kind: typeof AS_IS | typeof TURNED, part: number): void {
    this.emit(kind, part);
    if (this.count === this.placed.length) this.placed = grown(this.placed);
    this.placed[this.count++] = part;
    this.area += this.job.area[part]!;
  }

  private leave(width: number, height: number): void {
    this.emit(REST, 0);
    this.worthLeft += worth({ width, height }, this.job.keepAtLeast);
  }

  /** No sum of values within the room comes to much more than MOST_VALUE, and no value to nothing. */
  private scale(value: Float64Array, room: number): void {
    const { area } = this.job;
    let density = 0;
    for (let part = 0; part < value.length; part += 1)
      if (this.available[part]! > 0) density = Math.max(density, value[part]! / area[part]!);
    const scale = density > 0 ? MOST_VALUE / (density * room) : 0;
    for (let part = 0; part < value.length; part += 1)
      this.scaled[part] = value[part]! > 0 ? Math.max(1, Math.min(MOST_VALUE, value[part]! * scale)) : 0;
  }

  /** Moves the ways of the best strip onto the stack, thickest first, out of what is available. */
  private take(ways: Ways): void {
    if (this.stripWay >= 0) {
      this.push(ways, this.stripWay, 1);
      return;
    }
    let room = this.stripSteps;
    for (let pass = this.stripPasses - 1; pass >= 0; pass -= 1) {
      const long = this.passLong[pass]!;
      const taken = room >= long ? this.taking[pass * (this.stripSteps + 1) + room]! : 0;
      if (taken === 0) continue;
      this.push(ways, this.passWay[pass]!, this.passTimes[pass]!);
      room = taken < 0 ? room - long : taken - 1;
    }
  }

  private push(ways: Ways, way: number, many: number): void {
    const part = ways.part[way]!;
    for (let times = many; times > 0 && this.available[part]! > 0; times -= 1) {
      if (this.top === this.taken.length) this.taken = grown(this.taken);
      this.taken[this.top++] = way;
      this.available[part]! -= 1;
    }
  }

  private giveBack(ways: Ways, from: number): void {
    for (let at = from; at < this.top; at += 1) this.available[ways.part[this.taken[at]!]!]! += 1;
  }

  /** One pass over the ways, thinnest first; leaves the best strip by value per area, with noise, in `strip…`. */
  private price(ways: Ways, length: number, depth: number): void {
    this.stripScore = 0;
    this.stripWay = -1;
    this.passes = 0;
    const { longestCut } = this.job;
    if (length > longestCut || depth > longestCut) this.priceUncut(ways, length, depth);
    if (length > longestCut) return;
    const steps = length <= DENSE ? length : STEPS;
    const end = ways.count;
    this.best.fill(0, 0, steps + 1);
    if (length > DENSE) this.exact.fill(0, 0, steps + 1);
    const stride = this.strideFor(ways, length, depth);
    let thickness = 0;
    let priced = 0;
    for (let way = stride > 1 ? this.random.below(stride) : 0; way < end; way += stride) {
      const deep = ways.thickness[way]!;
      if (deep > depth || deep > longestCut) break;
      if (deep !== thickness) {
        if (this.best[steps]! > priced) this.judge(thickness, length, steps);
        priced = this.best[steps]!;
        thickness = deep;
      }
      this.offer(ways, way, length, steps);
    }
    if (this.best[steps]! > priced) this.judge(thickness, length, steps);
  }

  private strideFor(ways: Ways, length: number, depth: number): number {
    if (ways.count <= MOST_WAYS) return 1;
    let useful = 0;
    for (let way = 0; way < ways.count && ways.thickness[way]! <= depth; way += 1)
      if (ways.length[way]! <= length && this.available[ways.part[way]!]! > 0) useful += 1;
    return Math.max(1, Math.ceil(useful / MOST_WAYS));
  }

  /** Strips that the trimmer cannot cut across: only a way that needs no such cut. */
  private priceUncut(ways: Ways, length: number, depth: number): void {
    for (let way = ways.count - 1; way >= 0; way -= 1) {
      const [long, deep, part] = [ways.length[way]!, ways.thickness[way]!, ways.part[way]!];
      if (this.available[part]! === 0 || long !== length || deep > depth) continue;
      if (length > this.job.longestCut ? deep !== depth : deep <= this.job.longestCut) continue;
      const score = this.scaled[part]! / (long * deep);
      if (score <= this.stripScore) continue;
      this.stripScore = score;
      this.stripThickness = deep;
      this.stripWay = way;
    }
  }

  private judge(thickness: number, length: number, steps: number): void {
    const score = (this.best[steps]! / (length * thickness)) * (1 + this.noise * this.random.next());
    if (score <= this.stripScore) return;
    this.stripScore = score;
    this.stripThickness = thickness;
    this.stripPasses = this.passes;
    this.stripSteps = steps;
    this.stripWay = -1;
  }

  /** Offers a way to the knapsack as often as it is available and fits, by doubling. */
  private offer(ways: Ways, way: number, length: number, steps: number): void {
    const part = ways.part[way]!;
    const one = ways.length[way]!;
    if (one > length) return;
    if (
      this.noise > 0 &&
      this.paper.lies[part] === 2 &&
      ((this.mask >>> (part & 31)) & 1) === ways.turned[way]
    )
      return;
    let many = Math.min(this.available[part]!, Math.floor(length / one));
    for (let times = 1; many > 0; times *= 2) {
      if (times > many) times = many;
      many -= times;
      const long = one * times;
      const value = this.scaled[part]! * times;
      const start = this.startPass(way, times, length <= DENSE ? long : 0, steps + 1);
      if (length <= DENSE) this.passDense(start, long, value, steps);
      else this.passCoarse(start, long, value, length);
    }
  }

  /** Where in `taking` the pass writes. */
  private startPass(way: number, times: number, long: number, size: number): number {
    this.passWay[this.passes] = way;
    this.passTimes[this.passes] = times;
    this.passLong[this.passes] = long;
    const start = this.passes * size;
    this.passes += 1;
    if (start + size > this.taking.length) this.taking = grown(this.taking);
    return start;
  }

  private passDense(start: number, long: number, value: number, steps: number): void {
    const { best, taking } = this;
    for (let to = steps; to >= long; to -= 1) {
      const gain = best[to - long]! + value - best[to]!;
      const better = -gain >> 31;
      best[to]! += gain & better;
      taking[start + to] = better;
    }
  }

  /** As `passDense`, where a step stands for up to length/STEPS grid units, counted down from the far end. */
  private passCoarse(start: number, long: number, value: number, length: number): void {
    const { best, exact, taking } = this;
    const step = length / STEPS;
    taking.fill(0, start, start + STEPS + 1);
    for (let to = STEPS; to >= 0; to -= 1) {
      const room = to === STEPS ? length : to * step;
      if (room < long) break;
      let from = Math.min(to, Math.floor((room - long) / step) + 1);
      if (exact[from]! + long > room) from -= 1;
      if (from < 0 || exact[from]! + long > room) continue;
      if (from > 0 && best[from - 1]! > best[from]!) from -= 1;
      const offered = best[from]! + value;
      if (offered <= best[to]!) continue;
      best[to] = offered;
      exact[to] = exact[from]! + long;
      taking[start + to] = from + 1;
    }
  }
}
