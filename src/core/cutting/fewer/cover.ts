/**
 * The cheapest way to cover demands by shares of columns, each of which costs 1 and covers what it holds: a linear
 * programme that keeps its answer while columns are added, and hands it on to a smaller one for what is left to cover.
 * Knows numbers only, no paper.
 */
import { grown } from '../arrays.ts';

/** A column in the answer, and how often it is used. */
export interface Share {
  readonly label: number;
  readonly times: number;
}

// Tolerances of doubles; the counts are untuned, taken as reasonable.
const MOST_STEPS = 5000;
/** After so many exchanges their errors are looked at, and cleared away where they add up to more. */
const LOOK = 50;
const DRIFT = 1e-9;
const CHECK_EVERY = 16;
const TINY = 1e-9;
/** What a banned column costs, to be rid of it. */
const DEAR = 100;
const GAIN = 1e-7;
const PROMISING = 48;
const NOTHING = 1e-12;

/**
 * min Σ x with A x ≥ demand and x ≥ 0, by the revised simplex method. Rows without demand are left out. There is always
 * a column for each row that holds one of it, with the row as its label. After `solve`, `price` holds the duals by row,
 * which a column worth more than 1 could improve on, and `cost` the sum.
 */
export class Cover {
  readonly price: Float64Array;
  cost = 0;
  /** By column, its label. */
  readonly labels: number[] = [];
  /** Labels from here on were never offered. */
  next: number;
  private readonly codes: Float64Array;
  private readonly shouldStop: () => boolean;
  /** By line of the programme, which row it is; and by row its line, or −1. */
  private readonly rowOf: Int32Array;
  private readonly lineOf: Int32Array;
  private readonly lines: number;
  private count = 0;
  private starts: Int32Array = new Int32Array(1 << 11);
  private entries: Int32Array = new Int32Array(1 << 13);
  private readonly costs: number[] = [];
  /** Columns by the sum of the codes of what they hold. */
  private readonly known = new Map<number, number>();
  private readonly demanded: Float64Array;
  private readonly inverse: Float64Array;
  /** By line of the inverse, a column, or −1 − line for what is covered beyond demand. */
  private readonly basis: Int32Array;
  private readonly times: Float64Array;
  private readonly dual: Float64Array;
  private readonly step: Float64Array;
  /** The line of the inverse that an exchange begins with. */
  private readonly pivotLine: Float64Array;
  private pivots = 0;
  /** Where the column that is being written ends, and the sum of its codes so far. */
  private end = 0;
  private key = 0;
  private readonly promising = new Int32Array(PROMISING);
  private promised = 0;

  /** By row, what is demanded, and a random whole number below 2³². */
  constructor(demand: Float64Array, codes: Float64Array, shouldStop: () => boolean) {
    this.codes = codes;
    this.shouldStop = shouldStop;
    this.price = new Float64Array(demand.length);
    this.next = demand.length;
    this.lineOf = new Int32Array(demand.length).fill(-1);
    this.rowOf = Int32Array.from(demand.keys()).filter((row) => demand[row]! > 0);
    this.rowOf.forEach((row, line) => {
      this.lineOf[row] = line;
    });
    const lines = this.rowOf.length;
    this.lines = lines;
    this.demanded = Float64Array.from(this.rowOf, (row) => demand[row]!);
    this.inverse = new Float64Array(lines * lines);
    this.basis = new Int32Array(lines);
    this.times = new Float64Array(lines);
    this.dual = new Float64Array(lines);
    this.step = new Float64Array(lines);
    this.pivotLine = new Float64Array(lines);
    for (const row of this.rowOf) {
      this.hold(row);
      this.finish(row, 1);
    }
    this.restart();
  }

  /** Offers a column that covers each of these rows, as often as it is listed; one that is known is not added. */
  add(held: Int32Array, label: number): void {
    for (const row of held) this.hold(row);
    this.finish(label, 1);
    this.next = label + 1;
  }

  /** Answers anew after columns were added or banned. */
  solve(): void {
    this.promised = 0;
    for (let steps = 0; steps < MOST_STEPS; steps += 1) {
      const [enter, reduced] = this.cheapest();
      if (enter === undefined || this.stopped(steps)) break;
      this.direct(enter);
      const leave = this.firstGone();
      if (leave < 0) break;
      this.exchange(leave, enter, reduced);
      if (this.pivots % LOOK === 0 && this.drift() > DRIFT) this.refactor();
    }
    this.refresh();
  }

  shares(): Share[] {
    const shares: Share[] = [];
    this.basis.forEach((column, line) => {
      if (column >= 0 && this.times[line]! > GAIN)
        shares.push({ label: this.labels[column]!, times: this.times[line]! });
    });
    return shares;
  }

  /** Makes a column so dear that the next answer does without it. */
  ban(label: number): void {
    this.costs[this.labels.indexOf(label)] = DEAR;
    this.refresh();
  }

  /**
   * The programme for what is left to cover, nowhere more than before, begun from this answer. Columns with which the
   * cost would rise by more than the gap are left out.
   */
  lowered(demand: Float64Array, gap: number): Cover {
    const lower = new Cover(demand, this.codes, this.shouldStop);
    lower.next = this.next;
    const columns = this.handOver(lower, gap);
    const answer = [this.inverse, this.basis, this.times, this.dual] as const;
    const kept = answer.map((one) => one.slice());
    for (let line = 0; line < this.lines; line += 1) {
      const at = lower.lineOf[this.rowOf[line]!]!;
      this.allow(line, at < 0 ? Infinity : this.demanded[line]! - lower.demanded[at]!);
    }
    lower.startFrom(this, columns);
    answer.forEach((one, index) => {
      one.set(kept[index]!);
    });
    lower.solve();
    return lower;
  }

  /** Offers the lower programme the columns within the gap; by column, which one it is there, or −1. */
  private handOver(lower: Cover, gap: number): Int32Array {
    const { starts, entries, rowOf, labels, costs } = this;
    const used = new Set(this.basis);
    const columns = new Int32Array(this.count).fill(-1);
    for (let column = 0; column < this.count; column += 1) {
      if (!used.has(column) && this.reducedCost(column) > gap) continue;
      for (let at = starts[column]!; at < starts[column + 1]!; at += 1) lower.hold(rowOf[entries[at]!]!);
      columns[column] = lower.finish(labels[column]!, costs[column]!);
    }
    return columns;
  }

  /**
   * Lets a line go short of its demand by so much, and takes what it saves until a column is gone. Without end, the line
   * no longer counts.
   */
  private allow(line: number, by: number): void {
    const { basis, times, step, lines, dual } = this;
    if (by <= 0) return;
    const slack = -1 - line;
    const at = basis.indexOf(slack);
    if (at >= 0) {
      times[at]! += by;
      return;
    }
    this.direct(slack);
    let leave = this.firstGone(-1);
    const enough = leave < 0 || times[leave]! / -step[leave]! >= by;
    if (enough && by < Infinity) {
      for (let row = 0; row < lines; row += 1) times[row]! += by * step[row]!;
      return;
    }
    if (leave < 0) leave = this.firstGone();
    if (leave < 0) return;
    this.exchange(leave, slack, dual[line]!);
    times[leave]! += by;
  }

  /** Begins with the answer of a programme from which this one was made; starts over if there is none. */
  private startFrom(other: Cover, columns: Int32Array): void {
    const { lines, lineOf, rowOf, basis, inverse, times } = this;
    let kept = 0;
    for (let line = 0; line < other.lines; line += 1) {
      const old = other.basis[line]!;
      const now = old < 0 ? -1 - lineOf[other.rowOf[-1 - old]!]! : columns[old]!;
      if (old < 0 ? now === 0 : now < 0) continue;
      if (kept < lines) {
        basis[kept] = now;
        for (let at = 0; at < lines; at += 1)
          inverse[kept * lines + at] = other.inverse[line * other.lines + other.lineOf[rowOf[at]!]!]!;
      }
      kept += 1;
    }
    if (kept !== lines) this.restart();
    this.tally();
    if (this.drift() > DRIFT) this.refactor();
    if (times.some((one) => one < -GAIN)) this.restart();
  }

  /** Goes on with a column that `finish` then adds. */
  private hold(row: number): void {
    const line = this.lineOf[row]!;
    if (line < 0) return;
    if (this.end === this.entries.length) this.entries = grown(this.entries, this.end + 1);
    this.entries[this.end++] = line;
    this.key += this.codes[row]! + 1;
  }

  /** Which column it is now, or −1 if it holds nothing. */
  private finish(label: number, cost: number): number {
    const column = this.end === this.starts[this.count]! ? -1 : (this.known.get(this.key) ?? this.count);
    if (column === this.count) {
      this.known.set(this.key, column);
      this.labels.push(label);
      this.costs.push(cost);
      this.count += 1;
      if (this.count === this.starts.length) this.starts = grown(this.starts, this.count + 1);
      this.starts[this.count] = this.end;
    }
    this.end = this.starts[this.count]!;
    this.key = 0;
    return column;
  }

  private stopped(steps: number): boolean {
    return steps % CHECK_EVERY === CHECK_EVERY - 1 && this.shouldStop();
  }

  private reducedCost(column: number): number {
    const { entries, starts, dual } = this;
    let reduced = this.costs[column]!;
    for (let at = starts[column]!, end = starts[column + 1]!; at < end; at += 1)
      reduced -= dual[entries[at]!]!;
    return reduced;
  }

  /** What lowers the cost most, among the few that did so at the last look at all of them if there is still one. */
  private cheapest(): [column: number | undefined, reduced: number] {
    const { promising, dual, lines } = this;
    let best = -GAIN;
    let enter: number | undefined;
    for (let index = 0; index < this.promised; index += 1) {
      const reduced = this.reducedCost(promising[index]!);
      if (reduced >= best) continue;
      best = reduced;
      enter = promising[index]!;
    }
    if (enter === undefined) {
      this.promised = 0;
      for (let column = 0; column < this.count; column += 1) {
        const reduced = this.reducedCost(column);
        if (reduced >= -GAIN) continue;
        if (this.promised < promising.length) promising[this.promised++] = column;
        if (reduced >= best) continue;
        best = reduced;
        enter = column;
      }
    }
    for (let line = 0; line < lines; line += 1) {
      if (dual[line]! >= best) continue;
      best = dual[line]!;
      enter = -1 - line;
    }
    return [enter, best];
  }

  /** The line that is the first to come to nothing when the answer changes by the step, or (`sign` −1) against it. */
  private firstGone(sign = 1): number {
    const { step, times, lines } = this;
    let leave = -1;
    let ratio = Infinity;
    let most = 0;
    for (let line = 0; line < lines; line += 1) {
      const size = sign * step[line]!;
      if (size <= TINY || times[line] === Infinity) continue;
      const now = Math.max(0, times[line]!) / size;
      if (now > ratio + NOTHING || (now > ratio - NOTHING && size <= most)) continue;
      most = size;
      ratio = now;
      leave = line;
    }
    return leave;
  }

  /** How the answer changes when a column enters it, by line of the inverse. */
  private direct(enter: number): void {
    const { lines, inverse, step } = this;
    if (enter < 0) {
      for (let line = 0; line < lines; line += 1) step[line] = -inverse[line * lines - 1 - enter]!;
      return;
    }
    const from = this.starts[enter]!;
    const to = this.starts[enter + 1]!;
    for (let line = 0, start = 0; line < lines; line += 1, start += lines) {
      let sum = 0;
      for (let at = from; at < to; at += 1) sum += inverse[start + this.entries[at]!]!;
      step[line] = sum;
    }
  }

  private exchange(leave: number, enter: number, reduced: number): void {
    const { lines, inverse, step, times, dual, pivotLine } = this;
    const ratio = times[leave]! / step[leave]!;
    for (let line = 0; line < lines; line += 1) times[line]! -= ratio * step[line]!;
    times[leave] = ratio;
    const from = leave * lines;
    const scale = 1 / step[leave]!;
    for (let at = 0; at < lines; at += 1) {
      const scaled = inverse[from + at]! * scale;
      inverse[from + at] = scaled;
      pivotLine[at] = scaled;
      dual[at]! += reduced * scaled;
    }
    for (let line = 0; line < lines; line += 1) {
      const factor = step[line]!;
      if (line === leave || (factor < NOTHING && factor > -NOTHING)) continue;
      const to = line * lines;
      for (let at = 0; at < lines; at += 1) inverse[to + at]! -= factor * pivotLine[at]!;
    }
    this.basis[leave] = enter;
    this.pivots += 1;
  }

  /** How far the prices are from the cost of some column in the answer. */
  private drift(): number {
    const { basis, dual } = this;
    this.refresh();
    let most = 0;
    for (const column of basis)
      most = Math.max(most, Math.abs(column < 0 ? dual[-1 - column]! : this.reducedCost(column)));
    return most;
  }

  /** The inverse from the columns in the answer, without the errors that exchanges add up; starts over if there is none. */
  private refactor(): void {
    const { lines, basis, inverse } = this;
    const matrix = new Float64Array(lines * lines);
    basis.forEach((column, at) => {
      if (column < 0) matrix[(-1 - column) * lines + at] = -1;
      else
        for (let entry = this.starts[column]!; entry < this.starts[column + 1]!; entry += 1)
          matrix[this.entries[entry]! * lines + at]! += 1;
    });
    if (invert(matrix, inverse, lines)) this.tally();
    else this.restart();
  }

  /** Each row covered by its own column. */
  private restart(): void {
    this.inverse.fill(0);
    for (let line = 0; line < this.lines; line += 1) {
      this.inverse[line * this.lines + line] = 1;
      this.basis[line] = line;
    }
    this.tally();
  }

  private tally(): void {
    const { lines, inverse, demanded, times } = this;
    for (let line = 0, start = 0; line < lines; line += 1, start += lines) {
      let sum = 0;
      for (let at = 0; at < lines; at += 1) sum += inverse[start + at]! * demanded[at]!;
      times[line] = sum;
    }
    this.refresh();
  }

  private refresh(): void {
    const { lines, inverse, basis, costs, dual, times, price } = this;
    dual.fill(0);
    this.cost = 0;
    for (let line = 0, start = 0; line < lines; line += 1, start += lines) {
      if (basis[line]! < 0) continue;
      const cost = costs[basis[line]!]!;
      this.cost += cost * times[line]!;
      for (let at = 0; at < lines; at += 1) dual[at]! += cost * inverse[start + at]!;
    }
    for (let line = 0; line < lines; line += 1) price[this.rowOf[line]!] = dual[line]!;
  }
}

/** Gauss and Jordan's method with pivots by column; spoils the matrix. False where there is no inverse. */
function invert(matrix: Float64Array, inverse: Float64Array, rows: number): boolean {
  inverse.fill(0);
  for (let row = 0; row < rows; row += 1) inverse[row * rows + row] = 1;
  for (let at = 0; at < rows; at += 1) {
    let pivot = at;
    for (let row = at + 1; row < rows; row += 1)
      if (Math.abs(matrix[row * rows + at]!) > Math.abs(matrix[pivot * rows + at]!)) pivot = row;
    const size = matrix[pivot * rows + at]!;
    if (Math.abs(size) < TINY) return false;
    if (pivot !== at) for (const one of [matrix, inverse]) swap(one, pivot * rows, at * rows, rows);
    for (const one of [matrix, inverse])
      for (let entry = at * rows; entry < (at + 1) * rows; entry += 1) one[entry]! /= size;
    for (let row = 0; row < rows; row += 1) {
      const factor = matrix[row * rows + at]!;
      if (row === at || factor === 0) continue;
      subtract(matrix, row * rows + at, at * rows + at, rows - at, factor);
      subtract(inverse, row * rows, at * rows, rows, factor);
    }
  }
  return true;
}

function swap(values: Float64Array, one: number, other: number, many: number): void {
  for (let at = 0; at < many; at += 1) {
    const kept = values[one + at]!;
    values[one + at] = values[other + at]!;
    values[other + at] = kept;
  }
}

function subtract(values: Float64Array, from: number, what: number, many: number, factor: number): void {
  for (let at = 0; at < many; at += 1) values[from + at]! -= factor * values[what + at]!;
}
