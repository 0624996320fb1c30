/**
 * Counts how often each part is used, many parts at a time: small counters packed into whole numbers. Knows nothing of
 * what is counted.
 */

/** Counters side by side, with a guard bit above each. A tally is `words` numbers in a long list of tallies. */
export interface Counters {
  readonly words: number;
  readonly word: Int32Array;
  readonly shift: Int32Array;
  /** Added to a sum, it carries into the guard bit of each part that is used too often. */
  readonly bias: Int32Array;
  readonly guard: Int32Array;
}

/** One counter for each limit; `limits` are 0 or more. */
export function countersFor(limits: readonly number[]): Counters {
  const word: number[] = [];
  const shift: number[] = [];
  const bias = [0];
  const guard = [0];
  let bit = 0;
  for (const count of limits) {
    const bits = Math.floor(Math.log2(Math.max(1, count))) + 2;
    if (bit + bits > 31) {
      bias.push(0);
      guard.push(0);
      bit = 0;
    }
    const last = guard.length - 1;
    word.push(last);
    shift.push(bit);
    bias[last]! += (2 ** (bits - 1) - 1 - count) * 2 ** bit;
    guard[last]! += 2 ** (bit + bits - 1);
    bit += bits;
  }
  const list = (numbers: number[]): Int32Array => Int32Array.from(numbers);
  return { words: guard.length, word: list(word), shift: list(shift), bias: list(bias), guard: list(guard) };
}

/** Whether two tallies together keep to the limits. */
export function within(counters: Counters, tallies: Int32Array, one: number, other: number): boolean {
  const { words, bias, guard } = counters;
  for (let w = 0; w < words; w += 1) {
    if ((tallies[one * words + w]! + tallies[other * words + w]! + bias[w]!) & guard[w]!) return false;
  }
  return true;
}

/** Makes a tally of a single count. */
export function countOne(
  { words, word, shift }: Counters,
  tallies: Int32Array,
  at: number,
  counter: number,
): void {
  tallies[at * words + word[counter]!] = 1 << shift[counter]!;
}

/** Makes a tally the sum of two. */
export function addUp(
  { words }: Counters,
  tallies: Int32Array,
  at: number,
  one: number,
  other: number,
): void {
  for (let w = 0; w < words; w += 1) {
    tallies[at * words + w] = tallies[one * words + w]! + tallies[other * words + w]!;
  }
}
