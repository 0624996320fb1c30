/**
 * The most that any rectangle can give when parts may be cut as often as one likes: exact, for cuts of any number of
 * stages. Knows nothing of copies; where copies are limited its values are upper bounds.
 */
import { type Axis, floorIndex } from './normal-patterns.ts';

/** One way in which a part may lie, and what a copy is worth there. Sides are whole numbers. */
export interface Lay {
  readonly part: number;
  readonly turned: boolean;
  readonly width: number;
  readonly height: number;
  readonly value: number;
}

/** Parts joined edge to edge, with the smallest rectangle around them. A lay is an index into the list of lays. */
export type Assembly = { readonly width: number; readonly height: number } & (
  | { readonly lay: number }
  | { readonly along: 'x' | 'y'; readonly first: Assembly; readonly second: Assembly }
);

/** Values by rectangle: the one `i` marks wide and `j` marks high has `byColumn[i * rows + j] = byRow[j * columns + i]`. */
export interface FillTable {
  readonly x: Axis;
  readonly y: Axis;
  readonly columns: number;
  readonly rows: number;
  readonly byColumn: Float64Array;
  readonly byRow: Float64Array;
  /** The mark below what mark `p` leaves of mark `i`, at `[i * marks + p]`. */
  readonly restX: Int16Array;
  readonly restY: Int16Array;
  /** Most value per unit of area of any lay. */
  readonly density: number;
  /** All values are whole numbers. */
  readonly whole: boolean;
  /** A rectangle is worth the same on its side, so that half of the table is enough. */
  readonly symmetric: boolean;
}

/**
 * Gilmore & Gomory's recursion (1966) over normal patterns, symmetric cuts once. A first block that is worth no more
 * than a narrower one is passed over, and a rectangle that reaches the value of its area is settled. Undefined if
 * stopped on the way.
 */
export function fillTable(
  x: Axis,
  y: Axis,
  lays: readonly Lay[],
  shouldStop: () => boolean,
): FillTable | undefined {
  const table = emptyTable(x, y, lays);
  const steps = { columns: stepLists(table.columns, table.rows), rows: stepLists(table.rows, 1) };
  for (let i = 1; i < table.columns; i += 1) {
    if (shouldStop()) return undefined;
    steps.rows.counts[0] = 0;
    fillColumn(table, i, steps.columns, steps.rows);
  }
  return table;
}

/** The most that the whole piece can give. */
export const mostOf = (table: FillTable): number => table.byColumn[table.byColumn.length - 1]!;

/** The blocks behind the value of the whole piece; undefined if it is 0. Only for exact axes. */
export function traceBest(table: FillTable, lays: readonly Lay[]): Assembly | undefined {
  return mostOf(table) > 0 ? traceBlock(table, lays, table.columns - 1, table.rows - 1) : undefined;
}

/** How many additions a table of this size costs, at most. */
export const tableCost = (x: Axis, y: Axis): number =>
  (x.marks.length * y.marks.length * (x.marks.length + y.marks.length)) / 4;

/** For each line of the table, the marks at which its value rises, as far as half of the side. */
interface StepLists {
  readonly length: number;
  readonly marks: Int16Array;
  readonly counts: Int32Array;
}

const stepLists = (length: number, lines: number): StepLists => ({
  length,
  marks: new Int16Array(length * lines),
  counts: new Int32Array(lines),
});

function emptyTable(x: Axis, y: Axis, lays: readonly Lay[]): FillTable {
  const columns = x.marks.length;
  const rows = y.marks.length;
  const byColumn = new Float64Array(columns * rows);
  for (const lay of lays) {
    const cell = coverOf(x, lay.width) * rows + coverOf(y, lay.height);
    byColumn[cell] = Math.max(byColumn[cell]!, lay.value);
  }
  return {
    x,
    y,
    columns,
    rows,
    byColumn,
    byRow: new Float64Array(columns * rows),
    restX: rests(x.marks),
    restY: rests(y.marks),
    density: densestOf(lays, x.unit, y.unit),
    whole: lays.every((lay) => Number.isInteger(lay.value)),
    symmetric: isSymmetric(x, y, byColumn),
  };
}

function isSymmetric(x: Axis, y: Axis, byColumn: Float64Array): boolean {
  const count = x.marks.length;
  if (count !== y.marks.length || x.unit !== y.unit || x.marks.some((mark, i) => mark !== y.marks[i]))
    return false;
  return byColumn.every(
    (value, cell) => value === byColumn[(cell % count) * count + Math.floor(cell / count)],
  );
}

/** The first mark that is long enough. */
const coverOf = ({ unit, marks }: Axis, length: number): number =>
  floorIndex(marks, Math.floor(length / unit) - 0.5) + 1;

/** The most value per unit of area of any lay, a hair too high rather than too low. */
export const densestOf = (lays: readonly Lay[], unitX = 1, unitY = 1): number =>
  lays.reduce((most, lay) => Math.max(most, densityOf(lay, unitX, unitY)), 0) * (1 + 1e-12);

const densityOf = (lay: Lay, unitX: number, unitY: number): number =>
  lay.value / (Math.floor(lay.width / unitX) * Math.floor(lay.height / unitY));

function rests(marks: Float64Array): Int16Array {
  const count = marks.length;
  const rest = new Int16Array(count * count);
  for (let i = 0; i < count; i += 1) {
    let below = i;
    for (let p = 0; p <= i; p += 1) {
      while (marks[below]! > marks[i]! - marks[p]!) below -= 1;
      rest[i * count + p] = below;
    }
  }
  return rest;
}

function fillColumn(table: FillTable, i: number, across: StepLists, down: StepLists): void {
  const { columns, rows, byColumn, byRow, restX, restY, density, whole, symmetric } = table;
  const width = table.x.marks[i]!;
  const half = table.x.side / 2;
  const column = i * rows;
  const last = symmetric ? i : rows - 1;
  for (let j = 1; j <= last; j += 1) {
    const height = table.y.marks[j]!;
    const row = j * columns;
    const above = byColumn[column + j - 1]!;
    const before = byRow[row + i - 1]!;
    const area = density * width * height;
    const most = whole ? Math.floor(area) : area;
    let best = Math.max(byColumn[column + j]!, above, before);
    best = joined(byRow, row, restX, i * columns, across, j, table.x.marks, width / 2, best, most);
    best = joined(byColumn, column, restY, j * rows, down, 0, table.y.marks, height / 2, best, most);
    byColumn[column + j] = best;
    byRow[row + i] = best;
    if (best > before && width <= half) push(across, j, i);
    if (best > above) push(down, 0, j);
    if (symmetric && j < i) {
      byColumn[row + i] = best;
      byRow[column + j] = best;
      if (best > above && height <= half) push(across, i, j);
    }
  }
}

function push(steps: StepLists, list: number, mark: number): void {
  steps.marks[list * steps.length + steps.counts[list]!] = mark;
  steps.counts[list]! += 1;
}

/** The best of two blocks along one line of the table, the first of them at most `half` long. */
function joined(
  values: Float64Array,
  line: number,
  rest: Int16Array,
  restLine: number,
  steps: StepLists,
  list: number,
  marks: Float64Array,
  half: number,
  known: number,
  most: number,
): number {
  let best = known;
  const from = list * steps.length;
  const to = from + steps.counts[list]!;
  for (let s = from; s < to && best < most; s += 1) {
    const p = steps.marks[s]!;
    if (marks[p]! > half) break;
    const value = values[line + p]! + values[line + rest[restLine + p]!]!;
    if (value > best) best = value;
  }
  return best;
}

function traceBlock(table: FillTable, lays: readonly Lay[], column: number, row: number): Assembly {
  const { rows, byColumn } = table;
  const value = byColumn[column * rows + row]!;
  let i = column;
  let j = row;
  while (byColumn[(i - 1) * rows + j] === value) i -= 1;
  while (byColumn[i * rows + j - 1] === value) j -= 1;
  const [width, height] = [table.x.marks[i]!, table.y.marks[j]!];
  const lay = lays.findIndex((one) => one.value === value && one.width <= width && one.height <= height);
  return lay >= 0
    ? { width: lays[lay]!.width, height: lays[lay]!.height, lay }
    : traceCut(table, lays, i, j, value);
}

/** Finds a cut that gives the value, as near to the middle as there is one, so that the tree stays flat. */
function traceCut(table: FillTable, lays: readonly Lay[], i: number, j: number, value: number): Assembly {
  const { columns, rows, byColumn, restX, restY, x, y } = table;
  for (let p = floorIndex(x.marks, x.marks[i]! / 2); p > 0; p -= 1) {
    const rest = restX[i * columns + p]!;
    if (byColumn[p * rows + j]! + byColumn[rest * rows + j]! !== value) continue;
    return join('x', traceBlock(table, lays, p, j), traceBlock(table, lays, rest, j));
  }
  for (let p = floorIndex(y.marks, y.marks[j]! / 2); p > 0; p -= 1) {
    const rest = restY[j * rows + p]!;
    if (byColumn[i * rows + p]! + byColumn[i * rows + rest]! !== value) continue;
    return join('y', traceBlock(table, lays, i, p), traceBlock(table, lays, i, rest));
  }
  throw new Error(`invalid fill table: ${value} at ${i}, ${j}`);
}

/** The parts of an assembly, one entry for each copy. */
export function copiesIn(assembly: Assembly, lays: readonly Lay[]): number[] {
  if ('lay' in assembly) return [lays[assembly.lay]!.part];
  return [...copiesIn(assembly.first, lays), ...copiesIn(assembly.second, lays)];
}

/** Two blocks side by side (`x`) or one below the other (`y`). */
export const join = (along: 'x' | 'y', first: Assembly, second: Assembly): Assembly => ({
  along,
  first,
  second,
  width: along === 'x' ? first.width + second.width : Math.max(first.width, second.width),
  height: along === 'y' ? first.height + second.height : Math.max(first.height, second.height),
});
