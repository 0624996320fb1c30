/**
 * The cheapest way to cover demands by shares of columns, each of which costs 1 and covers what it holds: a linear
 * programme that keeps its answer while columns are added and demands change. Knows numbers only, no paper.
 */

/** A column in the answer, and how often it is used. */
export interface Share {
  readonly column: number;
  readonly times: number;
}

/** What is needed to come back to an answer; columns added since stay. */
export interface Mark {
  readonly inverse: Float64Array;
  readonly basis: Int32Array;
  readonly demand: Float64Array;
  readonly live: Int32Array;
  readonly count: number;
}

const MOST_STEPS = 5000;
/** After so many exchanges the errors that they add up are cleared away. */
const REFRESH = 120;
const CHECK_EVERY = 16;
const TINY = 1e-9;
/** What a banned column costs, to be rid of it. */
const DEAR = 100;
const GAIN = 1e-7;
const PROMISING = 48;
const NOTHING = 1e-12;

/**
 * min Σ x with A x ≥ demand and x ≥ 0, by the revised simplex method: primal after `add`, dual after `demand`.
 * Columns 0 to rows − 1 hold one of each row. At the end `price` holds the duals, which a column worth more than 1 could
 * improve on, and `cost` the sum.
 */
export class Cover {
  readonly rows: number;
  readonly price: Float64Array;
  cost = 0;
  count = 0;
  private starts: Int32Array = new Int32Array(1 << 12);
  private entries: Int32Array = new Int32Array(1 << 14);
  /** Columns that may enter. */
  private live: Int32Array = new Int32Array(1 << 12);
  private alive = 0;
  private readonly demanded: Float64Array;
  private readonly shouldStop: () => boolean;
  private readonly inverse: Float64Array;
  /** By row of the inverse, a column, or −1 − row for what is covered beyond demand. */
  private readonly basis: Int32Array;
  private readonly times: Float64Array;
  private readonly step: Float64Array;
  /** Where a line of the inverse is not zero. */
  private readonly filled: Int32Array;
  private pivots = 0;
  private readonly promising = new Int32Array(PROMISING);
  private promised = 0;
  private readonly banned = new Set<number>();

  constructor(demand: Float64Array, shouldStop: () => boolean) {
    this.shouldStop = shouldStop;
    const rows = demand.length;
    this.rows = rows;
    this.demanded = Float64Array.from(demand);
    this.price = new Float64Array(rows);
    this.inverse = new Float64Array(rows * rows);
    this.basis = new Int32Array(rows);
    this.times = new Float64Array(rows);
    this.step = new Float64Array(rows);
    this.filled = new Int32Array(rows);
    for (let row = 0; row < rows; row += 1) this.add(Int32Array.of(row));
    this.restart();
  }

  /** Adds a column that covers each of these rows, as often as it is listed. */
  add(held: Int32Array): number {
    const column = this.count++;
    if (column + 2 > this.starts.length) this.starts = grown(this.starts, column + 2);
    const start = this.starts[column]!;
    const end = start + held.length;
    if (end > this.entries.length) this.entries = grown(this.entries, end);
    this.entries.set(held, start);
    this.starts[column + 1] = end;
    if (this.alive === this.live.length) this.live = grown(this.live, this.alive + 1);
    this.live[this.alive++] = column;
    return column;
  }

  /** Sets other demands and answers anew. */
  demand(demand: Float64Array): void {
    this.demanded.set(demand);
    this.tally();
    this.dualSteps();
    this.refresh();
    this.solve();
  }

  shares(): Share[] {
    const shares: Share[] = [];
    this.basis.forEach((column, row) => {
      if (column >= 0 && this.times[row]! > GAIN) shares.push({ column, times: this.times[row]! });
    });
    return shares;
  }

  /** Leaves out columns with which the cost would rise by more than the gap, until the next `reset` to an earlier mark. */
  leaveOut(gap: number): void {
    let alive = 0;
    for (let at = 0; at < this.alive; at += 1) {
      const column = this.live[at]!;
      if (this.reducedCost(column) <= gap) this.live[alive++] = column;
    }
    this.alive = alive;
  }

  /** Keeps a column out of the answer until it is allowed again; both take effect with the next `reset`. */
  ban(column: number): void {
    this.banned.add(column);
  }

  allow(column: number): void {
    this.banned.delete(column);
  }

  mark(): Mark {
    return {
      inverse: this.inverse.slice(),
      basis: this.basis.slice(),
      demand: this.demanded.slice(),
      live: this.live.slice(0, this.alive),
      count: this.count,
    };
  }

  /** Back to a mark, with the columns that could enter then and all that were added since. */
  reset({ inverse, basis, demand, live, count }: Mark): void {
    this.inverse.set(inverse);
    this.basis.set(basis);
    this.demanded.set(demand);
    if (this.live.length < this.count) this.live = grown(this.live, this.count);
    this.alive = 0;
    for (const column of live) if (!this.banned.has(column)) this.live[this.alive++] = column;
    for (let column = count; column < this.count; column += 1)
      if (!this.banned.has(column)) this.live[this.alive++] = column;
    this.tally();
    this.solve();
  }

  /** Answers anew after columns were added. */
  solve(): void {
    this.promised = 0;
    for (let steps = 0; steps < MOST_STEPS; steps += 1) {
      const [enter, reduced] = this.cheapest();
      if (enter === undefined || this.stopped(steps)) break;
      this.direct(enter);
      const leave = this.firstGone();
      if (leave < 0) break;
      this.pivot(leave, enter, reduced);
    }
    this.refresh();
  }

  private stopped(steps: number): boolean {
    return steps % CHECK_EVERY === CHECK_EVERY - 1 && this.shouldStop();
  }

  private reducedCost(column: number): number {
    const { entries, starts, price } = this;
    let reduced = 1;
    for (let at = starts[column]!; at < starts[column + 1]!; at += 1) reduced -= price[entries[at]!]!;
    return reduced;
  }

  /** What lowers the cost most, among the few that did so at the last look at all of them if there is still one. */
  private cheapest(): [column: number | undefined, reduced: number] {
    const { promising, live, price, rows } = this;
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
      for (let index = 0; index < this.alive; index += 1) {
        const reduced = this.reducedCost(live[index]!);
        if (reduced >= -GAIN) continue;
        if (this.promised < promising.length) promising[this.promised++] = live[index]!;
        if (reduced >= best) continue;
        best = reduced;
        enter = live[index]!;
      }
    }
    for (let row = 0; row < rows; row += 1) {
      if (price[row]! >= best) continue;
      best = price[row]!;
      enter = -1 - row;
    }
    return [enter, best];
  }

  private firstGone(): number {
    const { step, times, rows } = this;
    let leave = -1;
    let ratio = Infinity;
    for (let row = 0; row < rows; row += 1) {
      if (step[row]! <= TINY) continue;
      const now = Math.max(0, times[row]!) / step[row]!;
      if (now > ratio + NOTHING || (now > ratio - NOTHING && leave >= 0 && step[row]! <= step[leave]!))
        continue;
      ratio = now;
      leave = row;
    }
    return leave;
  }

  private dualSteps(): void {
    for (let steps = 0; steps < MOST_STEPS; steps += 1) {
      let leave = -1;
      let least = -TINY;
      for (let row = 0; row < this.rows; row += 1) {
        if (this.times[row]! >= least) continue;
        least = this.times[row]!;
        leave = row;
      }
      if (leave < 0 || this.stopped(steps)) return;
      const [enter, reduced] = this.leastDearer(leave);
      if (enter === undefined) return;
      this.direct(enter);
      this.pivot(leave, enter, reduced);
    }
  }

  /** The column that can take the place of the one in this row for the least rise of cost. */
  private leastDearer(leave: number): [column: number | undefined, reduced: number] {
    const { entries, starts, price, live, alive, rows } = this;
    const line = this.inverse.subarray(leave * rows, (leave + 1) * rows);
    let enter: number | undefined;
    let reducedBest = 0;
    let ratio = Infinity;
    let steep = 0;
    const offer = (column: number, slope: number, reduced: number): void => {
      const now = reduced / -slope;
      if (now > ratio + TINY || (now > ratio - TINY && slope >= steep)) return;
      [ratio, enter, reducedBest, steep] = [now, column, reduced, slope];
    };
    for (let index = 0; index < alive; index += 1) {
      const column = live[index]!;
      let slope = 0;
      let reduced = 1;
      for (let at = starts[column]!, end = starts[column + 1]!; at < end; at += 1) {
        slope += line[entries[at]!]!;
        reduced -= price[entries[at]!]!;
      }
      if (slope < -GAIN) offer(column, slope, Math.max(0, reduced));
    }
    for (let row = 0; row < rows; row += 1)
      if (line[row]! > GAIN) offer(-1 - row, -line[row]!, Math.max(0, price[row]!));
    return [enter, reducedBest];
  }

  private direct(enter: number): void {
    const { rows, inverse, step } = this;
    if (enter < 0) {
      for (let row = 0; row < rows; row += 1) step[row] = -inverse[row * rows - 1 - enter]!;
      return;
    }
    const from = this.starts[enter]!;
    const to = this.starts[enter + 1]!;
    for (let row = 0, line = 0; row < rows; row += 1, line += rows) {
      let sum = 0;
      for (let at = from; at < to; at += 1) sum += inverse[line + this.entries[at]!]!;
      step[row] = sum;
    }
  }

  private pivot(leave: number, enter: number, reduced: number): void {
    const { rows, inverse, step, times, price, filled } = this;
    const ratio = times[leave]! / step[leave]!;
    for (let row = 0; row < rows; row += 1) times[row]! -= ratio * step[row]!;
    times[leave] = ratio;
    const from = leave * rows;
    const scale = 1 / step[leave]!;
    let many = 0;
    for (let at = 0; at < rows; at += 1) {
      if (inverse[from + at] === 0) continue;
      inverse[from + at]! *= scale;
      filled[many++] = at;
    }
    for (let row = 0; row < rows; row += 1) {
      const factor = step[row]!;
      if (row === leave || (factor < NOTHING && factor > -NOTHING)) continue;
      for (let index = 0, to = row * rows; index < many; index += 1) {
        const at = filled[index]!;
        inverse[to + at]! -= factor * inverse[from + at]!;
      }
    }
    for (let index = 0; index < many; index += 1)
      price[filled[index]!]! += reduced * inverse[from + filled[index]!]!;
    this.basis[leave] = enter;
    this.pivots += 1;
    if (this.pivots >= REFRESH) this.refactor();
  }

  /** The inverse from the columns in the answer, without the errors that pivots add up; starts over if there is none. */
  private refactor(): void {
    const { rows, basis, inverse } = this;
    this.pivots = 0;
    const matrix = new Float64Array(rows * rows);
    basis.forEach((column, at) => {
      if (column < 0) matrix[(-1 - column) * rows + at] = -1;
      else
        for (let entry = this.starts[column]!; entry < this.starts[column + 1]!; entry += 1)
          matrix[this.entries[entry]! * rows + at]! += 1;
    });
    if (invert(matrix, inverse, rows)) this.tally();
    else this.restart();
  }

  /** Each row covered by its own column. */
  private restart(): void {
    this.inverse.fill(0);
    for (let row = 0; row < this.rows; row += 1) {
      this.inverse[row * this.rows + row] = 1;
      this.basis[row] = row;
    }
    this.tally();
  }

  private tally(): void {
    const { rows, inverse, demanded, times } = this;
    for (let row = 0, line = 0; row < rows; row += 1, line += rows) {
      let sum = 0;
      for (let at = 0; at < rows; at += 1) sum += inverse[line + at]! * demanded[at]!;
      times[row] = sum;
    }
    this.refresh();
  }

  private refresh(): void {
    const { rows, inverse, price } = this;
    price.fill(0);
    this.cost = 0;
    for (let row = 0, line = 0; row < rows; row += 1, line += rows) {
      if (this.basis[row]! < 0) continue;
      const cost = this.banned.has(this.basis[row]!) ? DEAR : 1;
      this.cost += cost * this.times[row]!;
      for (let at = 0; at < rows; at += 1) price[at]! += cost * inverse[line + at]!;
    }
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

function grown(full: Int32Array, least: number): Int32Array {
  const larger = new Int32Array(Math.max(least, full.length * 2));
  larger.set(full);
  return larger;
}
