/**
 * Fills one block with strips: one 0/1 knapsack pass over the ways to lie, thinnest first, prices every thickness of a
 * strip; the best is cut off and all that remains is filled the same way. Knows one piece at a time and nothing of goals.
 */
import type { Job, Paper, Ways } from './job.ts';
import { AS_IS, CUT_X, CUT_Y, type Pattern, REST, TURNED } from './nodes.ts';
import type { Frame } from './pins.ts';
import type { Chance } from './random.ts';
import { worth } from './worth.ts';

/** Strips up to this long are priced at every length; longer ones in so many steps, with the exact length beside each. */
const DENSE = 640;
const STEPS = 192;

/** Where more ways than this would do, one in so many is priced, another one each time. */
const MOST_WAYS = 400;

/** A whole stock, or a block within one. */
export interface Block {
  readonly width: number;
  readonly height: number;
  readonly paper: number;
}

export interface Filler {
  /**
   * Fills a block with what `available` holds, which is left as it was found. Higher `value` of a part is sought;
   * `noise` of 0 is greedy, 0.3 is lively. A frame has its parts cut first. Undefined when nothing fits.
   */
  fill(
    block: Block,
    available: Int32Array,
    value: Float64Array,
    noise: number,
    frame?: Frame,
  ): Pattern | undefined;
}

/** Each filler has its own workspace, so one may not be used from within another's `fill`. */
export function stripFiller(job: Job, random: Chance): Filler {
  const work = new Workspace(job, random);
  return { fill: (...request) => work.fill(...request) };
}

class Workspace {
  private readonly job: Job;
  private readonly random: Chance;
  private readonly best = new Float64Array(DENSE + 2);
  private readonly exact = new Float64Array(DENSE + 2);
  private readonly link = new Int32Array(DENSE + 2);
  private cellWay: Int32Array = new Int32Array(1 << 14);
  private cellTimes: Int32Array = new Int32Array(1 << 14);
  private cellBefore: Int32Array = new Int32Array(1 << 14);
  private cells = 0;
  private available: Int32Array = new Int32Array(0);
  private value: Float64Array = new Float64Array(0);
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
  private stripCell = 0;
  /** Ways taken into strips under way: a stack. */
  private taken: Int32Array = new Int32Array(1 << 10);
  private top = 0;

  constructor(job: Job, random: Chance) {
    this.job = job;
    this.random = random;
  }

  fill(
    { width, height, paper }: Block,
    available: Int32Array,
    value: Float64Array,
    noise: number,
    frame?: Frame,
  ): Pattern | undefined {
    this.available = available;
    this.value = value;
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
      else if (one.kind !== 'open') one.parts.forEach(reserve);
    };
    reserve(frame);
    this.build(frame, width, height);
  }

  private build(frame: Frame, width: number, height: number): void {
    if (frame.kind === 'open') {
      this.block(width, height);
    } else if (frame.kind === 'part') {
      this.set(AS_IS, frame.part);
    } else {
      const { kind, at, parts } = frame;
      this.emit(kind, at);
      this.build(parts[0], kind === CUT_X ? at : width, kind === CUT_Y ? at : height);
      this.build(parts[1], kind === CUT_X ? width - at : width, kind === CUT_Y ? height - at : height);
    }
  }

  private block(width: number, height: number): void {
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
    if (acrossScore === 0 && this.stripScore === 0) {
      this.leave(width, height);
      return;
    }
    if (this.stripScore > acrossScore) {
      const thickness = this.stripThickness;
      this.top = from;
      this.take(down);
      this.cutOff(false, down, height, width, thickness, from);
    } else {
      this.top = acrossTop;
      for (let at = from; at < this.top; at += 1) this.available[across.part[this.taken[at]!]!]! -= 1;
      this.cutOff(true, across, width, height, acrossThickness, from);
    }
    this.top = from;
  }

  /** Cuts a strip from the block and fills both; which lies nearer the corner decides which is filled first. */
  private cutOff(
    along: boolean,
    ways: Ways,
    length: number,
    depth: number,
    thickness: number,
    from: number,
  ): void {
    const cut = along ? CUT_Y : CUT_X;
    const to = this.top;
    if (thickness === depth) {
      this.strip(along, ways, length, thickness, from, to);
    } else if (this.noise > 0 && this.random.next() < 0.5) {
      this.emit(cut, depth - thickness);
      this.lay(along, length, depth - thickness);
      this.strip(along, ways, length, thickness, from, to);
    } else {
      this.emit(cut, thickness);
      this.strip(along, ways, length, thickness, from, to);
      this.lay(along, length, depth - thickness);
    }
  }

  /** Lays the ways taken (thickest first) into a strip and fills what is beside them and at its end. */
  private strip(
    along: boolean,
    ways: Ways,
    length: number,
    thickness: number,
    from: number,
    to: number,
  ): void {
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
        this.strip(along, ways, rest, deep, at, to);
        this.lay(along, rest, thickness - deep);
        return;
      }
      this.emit(along ? CUT_X : CUT_Y, run);
      this.emit(along ? CUT_Y : CUT_X, deep);
      this.strip(along, ways, run, deep, at, end);
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

  /** Moves the ways of the best strip onto the stack, thickest first, out of what is available. */
  private take(ways: Ways): void {
    for (let cell = this.stripCell; cell > 0; cell = this.cellBefore[cell]!) {
      const way = this.cellWay[cell]!;
      const part = ways.part[way]!;
      for (let times = this.cellTimes[cell]!; times > 0 && this.available[part]! > 0; times -= 1) {
        if (this.top === this.taken.length) this.taken = grown(this.taken);
        this.taken[this.top++] = way;
        this.available[part]! -= 1;
      }
    }
  }

  private giveBack(ways: Ways, from: number): void {
    for (let at = from; at < this.top; at += 1) this.available[ways.part[this.taken[at]!]!]! += 1;
  }

  /** One pass over the ways, thinnest first; leaves the best strip by value per area, with noise, in `strip…`. */
  private price(ways: Ways, length: number, depth: number): void {
    this.stripScore = 0;
    this.cells = 1;
    const { longestCut } = this.job;
    if (length > longestCut || depth > longestCut) this.priceUncut(ways, length, depth);
    if (length > longestCut) return;
    const steps = length <= DENSE ? length : STEPS;
    const end = ways.count;
    this.best.fill(0, 0, steps + 1);
    this.link.fill(0, 0, steps + 1);
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
      const score = this.value[part]! / (long * deep);
      if (score <= this.stripScore) continue;
      this.stripScore = score;
      this.stripThickness = deep;
      this.stripCell = this.cell(way, 1, 0);
    }
  }

  private judge(thickness: number, length: number, steps: number): void {
    const score = (this.best[steps]! / (length * thickness)) * (1 + this.noise * this.random.next());
    if (score <= this.stripScore) return;
    this.stripScore = score;
    this.stripThickness = thickness;
    this.stripCell = this.link[steps]!;
  }

  /** Offers a way to the knapsack as often as it is available and fits, by doubling. */
  private offer(ways: Ways, way: number, length: number, steps: number): void {
    const part = ways.part[way]!;
    const long = ways.length[way]!;
    if (long > length) return;
    if (
      this.noise > 0 &&
      this.paper.lies[part] === 2 &&
      ((this.mask >>> (part & 31)) & 1) === ways.turned[way]
    )
      return;
    let many = Math.min(this.available[part]!, Math.floor(length / long));
    for (let times = 1; many > 0; times *= 2) {
      if (times > many) times = many;
      many -= times;
      this.reserve(steps + 1);
      if (length <= DENSE) this.passDense(way, times, long * times, this.value[part]! * times, steps);
      else this.passCoarse(way, times, long * times, this.value[part]! * times, length);
    }
  }

  private passDense(way: number, times: number, long: number, value: number, steps: number): void {
    const { best, link, cellWay, cellTimes, cellBefore } = this;
    let cells = this.cells;
    for (let to = steps; to >= long; to -= 1) {
      const offered = best[to - long]! + value;
      if (offered <= best[to]!) continue;
      best[to] = offered;
      cellWay[cells] = way;
      cellTimes[cells] = times;
      cellBefore[cells] = link[to - long]!;
      link[to] = cells++;
    }
    this.cells = cells;
  }

  /** As `passDense`, where a step stands for up to length/STEPS grid units, counted down from the far end. */
  private passCoarse(way: number, times: number, long: number, value: number, length: number): void {
    const { best, exact, link, cellWay, cellTimes, cellBefore } = this;
    const step = length / STEPS;
    let cells = this.cells;
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
      cellWay[cells] = way;
      cellTimes[cells] = times;
      cellBefore[cells] = link[from]!;
      link[to] = cells++;
    }
    this.cells = cells;
  }

  private cell(way: number, times: number, before: number): number {
    this.reserve(1);
    this.cellWay[this.cells] = way;
    this.cellTimes[this.cells] = times;
    this.cellBefore[this.cells] = before;
    return this.cells++;
  }

  private reserve(more: number): void {
    if (this.cells + more <= this.cellWay.length) return;
    this.cellWay = grown(this.cellWay);
    this.cellTimes = grown(this.cellTimes);
    this.cellBefore = grown(this.cellBefore);
  }
}

function grown(full: Int32Array): Int32Array {
  const larger = new Int32Array(full.length * 2);
  larger.set(full);
  return larger;
}
