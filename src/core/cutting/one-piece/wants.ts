/**
 * What one piece is asked to give, as the search sees it: lengths on the parts' own grid, the ways each part may lie, and
 * a first bound. Knows no search; parts that cannot come from the piece stay out.
 */
import { areaOf } from '#shared/size.ts';
import { gridOf } from '../grid.ts';
import { mayTurn, type Part, type Piece, suits } from '../order.ts';
import { densestOf, type Lay } from './unlimited.ts';

/** A part as in an order, but without `copies` as many as fit. */
export interface FillPart extends Omit<Part, 'copies'> {
  readonly copies?: number;
  /** What a copy is worth when filling by wish; 0 when absent. */
  readonly value?: number;
}

/** What there is to be most of: area, number of copies, or the parts' values. */
export type FillGoal = 'area' | 'count' | 'wish';

/** Lengths in grid units, areas in square ones; of the piece a fraction may be left over. */
export interface Wants {
  readonly grid: number;
  readonly width: number;
  readonly height: number;
  readonly parts: readonly FillPart[];
  /** Their values are without the prices. */
  readonly lays: readonly Lay[];
  /** By part, at least 1. */
  readonly copies: readonly number[];
  /** By part, what a copy is worth more than its area: the dual of the few copies in the relaxation by area. */
  readonly prices: readonly number[];
  /** The parts are worth whole numbers. */
  readonly whole: boolean;
  /** Some part has fewer copies than could fit. */
  readonly runsShort: boolean;
  /** Parts or copies were left out because there are too many: no proof but by `bound`. */
  readonly partial: boolean;
  readonly longestCut: number;
  readonly density: number;
  /** No fill is worth more. */
  readonly bound: number;
}

// Untuned, taken as reasonable.
const MOST_PARTS = 1000;
const MOST_COPIES = 10_000;

/** Throws on lengths, copies or values that are no such numbers. */
export function wantsOf(piece: Piece, given: readonly FillPart[], goal: FillGoal, longestCut: number): Wants {
  checkNumbers(piece, given);
  const cuts = longestCut >= Math.min(piece.width, piece.height);
  const possible = given.filter(
    (part) => valueFor(part, goal) > 0 && canCome(part, piece) && (cuts || isWhole(part, piece)),
  );
  const parts = thinOut(possible);
  const grid = gridOf(parts.flatMap(({ width, height }) => [width, height]));
  const scale = goal === 'area' ? grid ** 2 : 1;
  const whole = possible.every((part) => Number.isInteger(valueFor(part, goal) / scale));
  const relaxed = fillByArea(possible, piece, goal);
  const prices = parts.map(
    (part) => Math.max(0, valueFor(part, goal) - relaxed.density * areaOf(part)) / scale,
  );
  const lays = parts.flatMap((part, index) =>
    laysOf(part, index, piece, grid, valueFor(part, goal) / scale - prices[index]!),
  );
  return {
    ...{ grid, width: piece.width / grid, height: piece.height / grid, parts, lays, prices },
    copies: parts.map((part) => Math.min(mostOf(part, piece), MOST_COPIES)),
    whole,
    runsShort: parts.some((part) => Math.min(wanted(part), MOST_COPIES) < roomFor(part, piece)),
    partial: parts.length < possible.length || parts.some((part) => mostOf(part, piece) > MOST_COPIES),
    longestCut: longestCut / grid,
    density: densestOf(lays),
    bound: whole ? Math.floor(relaxed.value / scale + 1e-6) : relaxed.value / scale,
  };
}

function checkNumbers(piece: Piece, parts: readonly FillPart[]): void {
  for (const { width, height } of [piece, ...parts]) {
    for (const side of [width, height]) {
      if (!Number.isSafeInteger(side) || side <= 0) throw new Error(`invalid length: ${side}`);
    }
  }
  for (const { copies = 0, value = 0 } of parts) {
    if (!Number.isSafeInteger(copies) || copies < 0) throw new Error(`invalid copies: ${copies}`);
    if (!Number.isFinite(value)) throw new Error(`invalid value: ${value}`);
  }
}

const canCome = (part: FillPart, piece: Piece): boolean =>
  !part.pin && wanted(part) > 0 && suits({ ...part, copies: 1 }, piece) && waysOf(part, piece).length > 0;

const isWhole = (part: FillPart, piece: Piece): boolean =>
  waysOf(part, piece).some(({ width, height }) => width === piece.width && height === piece.height);

const wanted = ({ copies = Infinity }: FillPart): number => copies;

const valueFor = (part: FillPart, goal: FillGoal): number => {
  if (goal === 'wish') return part.value ?? 0;
  return goal === 'area' ? part.width * part.height : 1;
};

/** Every so-manieth part where there are too many. */
const thinOut = (parts: readonly FillPart[]): FillPart[] => {
  const step = Math.max(1, parts.length / MOST_PARTS);
  return parts.filter((_, index) => Math.floor(index / step) > Math.floor((index - 1) / step));
};

const laysOf = (part: FillPart, index: number, piece: Piece, grid: number, value: number): Lay[] =>
  waysOf(part, piece).map(({ turned, width, height }) => ({
    ...{ part: index, turned, value },
    width: width / grid,
    height: height / grid,
  }));

function waysOf(part: FillPart, piece: Piece) {
  const { width, height } = part;
  const ways = [{ turned: false, width, height }];
  if (width !== height && mayTurn({ ...part, copies: 1 }, piece)) {
    ways.push({ turned: true, width: height, height: width });
  }
  return ways.filter((way) => way.width <= piece.width && way.height <= piece.height);
}

const mostOf = (part: FillPart, piece: Piece): number => Math.min(wanted(part), roomFor(part, piece));

/** How many copies have room as far as area goes. */
const roomFor = (part: FillPart, piece: Piece): number => Math.floor(areaOf(piece) / areaOf(part));

/**
 * The most that the area of the piece can be worth, filled with the most valuable parts first, and the value of the last
 * unit of area that is filled (Dantzig 1957).
 */
function fillByArea(
  parts: readonly FillPart[],
  piece: Piece,
  goal: FillGoal,
): { value: number; density: number } {
  const rated = parts.map((part) => ({ part, rate: valueFor(part, goal) / areaOf(part) }));
  let room = areaOf(piece);
  let value = 0;
  let density = 0;
  for (const { part, rate } of rated.sort((one, other) => other.rate - one.rate)) {
    if (room <= 0) break;
    const area = Math.min(room, wanted(part) * areaOf(part));
    room -= area;
    value += area * rate;
    density = rate;
  }
  return { value, density };
}
