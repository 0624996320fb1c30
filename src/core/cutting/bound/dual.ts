/**
 * Dual feasible functions: prices for lengths such that whatever fits end to end into a capacity is worth at most 1.
 * Knows one dimension; bound.ts multiplies two of them.
 */

/** A length that occurs, and how many copies have it. */
export interface Lengths {
  readonly length: Int32Array;
  readonly copies: Int32Array;
}

/**
 * Prices for each of the lengths, one array for each function: identity, the rounding of
 * Fekete & Schepers (2001), thresholds (Martello & Vigo 1998), Carlier, Clautiaux & Moukrim (2007) f1 and f2,
 * Burdett & Johnson (1977) and Vanderbeck (2000), as surveyed by Clautiaux, Alves & Valério de Carvalho (2010). Lengths over the capacity are priced 1, right to about 1e-12.
 */
export function dualFunctions(capacity: number, lengths: Lengths, mostSteps = 150): Float64Array[] {
  const list: Float64Array[] = [];
  const add = (price: (length: number) => number): void => {
    const prices = Float64Array.from(lengths.length, (length) => (length > capacity ? 1 : price(length)));
    list.push(prices);
  };
  add((length) => length / capacity);
  for (const step of steps(capacity, lengths.length, mostSteps)) {
    add((length) => threshold(length, step, capacity));
    add((length) => mirrored(length, step, capacity));
    add((length) => burdett(length, step, capacity));
    const counting = counted(step, capacity, lengths);
    if (counting) add(counting);
  }
  for (let times = 1; times <= 12; times += 1) {
    add((length) => rounded(length, times, capacity));
    if (times > 1) add((length) => vanderbeck(length, times, capacity));
  }
  return list;
}

/** Steps worth trying: all where they are few, else those at which a length or its complement begins to count. */
function steps(capacity: number, lengths: Int32Array, most: number): number[] {
  const half = Math.floor(capacity / 2);
  if (half <= most) return Array.from({ length: half }, (_, index) => index + 1);
  const found = new Set<number>();
  for (const length of lengths) {
    for (const one of [length, capacity - length]) {
      for (let times = 1; times <= 4; times += 1) found.add(Math.floor(one / times));
    }
  }
  return [...found].filter((one) => one > 0 && one <= half).slice(0, most);
}

function threshold(length: number, step: number, capacity: number): number {
  if (length > capacity - step) return 1;
  return length >= step ? length / capacity : 0;
}

function mirrored(length: number, step: number, capacity: number): number {
  const most = Math.floor(capacity / step);
  if (2 * length === capacity) return 0.5;
  return 2 * length < capacity
    ? Math.floor(length / step) / most
    : 1 - Math.floor((capacity - length) / step) / most;
}

function burdett(length: number, step: number, capacity: number): number {
  const most = Math.floor(capacity / step);
  const spare = capacity - most * step;
  const whole = Math.floor(length / step);
  const over = length - whole * step - spare;
  return (whole + Math.max(0, over / (step - spare))) / most;
}

function rounded(length: number, times: number, capacity: number): number {
  const scaled = length * (times + 1);
  return scaled % capacity === 0 ? length / capacity : Math.floor(scaled / capacity) / times;
}

function vanderbeck(length: number, times: number, capacity: number): number {
  if (2 * length === capacity) return 0.5;
  if (2 * length > capacity) return 1 - vanderbeck(capacity - length, times, capacity);
  return Math.max(0, Math.ceil((times * length) / capacity) - 1) / (times - 1);
}

/** Small lengths, from `step` to half the capacity, count one each; a large one as many as it keeps out. */
function counted(step: number, capacity: number, lengths: Lengths): ((length: number) => number) | undefined {
  const small: number[] = [];
  lengths.length.forEach((length, index) => {
    if (length >= step && 2 * length <= capacity) {
      const many = Math.min(lengths.copies[index]!, Math.floor(capacity / length));
      for (let copy = 0; copy < many; copy += 1) small.push(length);
    }
  });
  const sums = Float64Array.from(small.sort((one, other) => one - other));
  for (let at = 1; at < sums.length; at += 1) sums[at]! += sums[at - 1]!;
  const fitting = (room: number): number => {
    let [from, to] = [0, sums.length];
    while (from < to) {
      const middle = (from + to) >> 1;
      if (sums[middle]! <= room) from = middle + 1;
      else to = middle;
    }
    return from;
  };
  const most = fitting(capacity);
  if (most === 0) return undefined;
  return (length) => {
    if (2 * length > capacity) return (most - fitting(capacity - length)) / most;
    return length >= step ? 1 / most : 0;
  };
}
