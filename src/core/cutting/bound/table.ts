/**
 * The most that every size of block can hold at given prices, each part any number of times, cut edge to edge: the table
 * of Gilmore & Gomory (1966) over the positions at which parts can end. Knows one set of prices at a time.
 */

/** One way for a part to lie, and its price. */
export interface PricedWay {
  readonly width: number;
  readonly height: number;
  readonly price: number;
}

const MOST_STEPS = 3_000_000;

/** A function that says what a block holds; undefined where the table would be too large. */
export function priceTable(
  ways: readonly PricedWay[],
  widest: number,
  highest: number,
): ((width: number, height: number) => number) | undefined {
  const across = positions(
    ways.map((way) => way.width),
    widest,
  );
  const down = positions(
    ways.map((way) => way.height),
    highest,
  );
  if (!across || !down) return undefined;
  const [columns, rows] = [across.length, down.length];
  if ((columns * rows * (columns + rows)) / 4 > MOST_STEPS) return undefined;
  const table = fillTable(ways, across, down);
  return (width, height) => table[lastUpTo(across, width) * rows + lastUpTo(down, height)]!;
}

function fillTable(ways: readonly PricedWay[], across: Int32Array, down: Int32Array): Float64Array {
  const [columns, rows] = [across.length, down.length];
  const table = new Float64Array(columns * rows);
  for (const { width, height, price } of ways) {
    if (width > across.at(-1)! || height > down.at(-1)!) continue;
    const at = across.indexOf(width) * rows + down.indexOf(height);
    table[at] = Math.max(table[at]!, price);
  }
  const [restAcross, restDown] = [rests(across), rests(down)];
  for (let x = 1; x < columns; x += 1) {
    for (let y = 1; y < rows; y += 1) {
      let most = Math.max(table[x * rows + y]!, table[(x - 1) * rows + y]!, table[x * rows + y - 1]!);
      for (let cut = 1; 2 * across[cut]! <= across[x]!; cut += 1) {
        const sum = table[cut * rows + y]! + table[restAcross[x * columns + cut]! * rows + y]!;
        if (sum > most) most = sum;
      }
      for (let cut = 1; 2 * down[cut]! <= down[y]!; cut += 1) {
        const sum = table[x * rows + cut]! + table[x * rows + restDown[y * rows + cut]!]!;
        if (sum > most) most = sum;
      }
      table[x * rows + y] = most;
    }
  }
  return table;
}

/** Sums of lengths up to a limit, each any number of times, from 0 on; undefined where there are too many. */
function positions(lengths: readonly number[], limit: number): Int32Array | undefined {
  const found = new Set([0]);
  const distinct = [...new Set(lengths)];
  for (const start of found) {
    for (const length of distinct) if (start + length <= limit) found.add(start + length);
    if (found.size > 2000) return undefined;
  }
  return Int32Array.from(found).sort();
}

/** For every position and a cut before it, the index of the last position that fits into the rest. */
function rests(positions: Int32Array): Int32Array {
  const many = positions.length;
  const table = new Int32Array(many * many);
  for (let whole = 1; whole < many; whole += 1) {
    let rest = whole;
    for (let cut = 1; cut <= whole; cut += 1) {
      while (positions[rest]! > positions[whole]! - positions[cut]!) rest -= 1;
      table[whole * many + cut] = rest;
    }
  }
  return table;
}

function lastUpTo(positions: Int32Array, limit: number): number {
  let at = positions.length - 1;
  while (positions[at]! > limit) at -= 1;
  return at;
}
