/**
 * The judge of fills: a fill is replayed as the plan of a one-piece order, and what it claims to be worth is counted.
 * Shares with the search what a fill is made of and nothing else.
 */
import type { Problem } from '#shared/checked.ts';
import { areaOf } from '#shared/size.ts';
import { checkPlan, shelfValue } from '../check.ts';
import type { PlannedCuts } from '../cuts.ts';
import type { Limits, Order, Piece } from '../order.ts';
import type { Fill } from './fill.ts';
import type { FillGoal, FillPart } from './wants.ts';

/** What the fill was asked for: area, and no limits, when absent. */
export interface FillAsked extends Limits {
  readonly goal?: FillGoal;
}

/** Every way in which the fill breaks the piece, the parts, the limits or its own figures; empty for a sound one. */
export function checkFill(
  piece: Piece,
  parts: readonly FillPart[],
  fill: Fill,
  { goal = 'area', ...limits }: FillAsked = {},
): Problem[] {
  const cut =
    fill.rectangles.length > 0
      ? checkPlan(...onePiecePlan(piece, parts, fill, limits))
      : checkUncut(piece, fill, limits.keepAtLeast);
  const value = countedValue(parts, fill, goal);
  const slack = SLACK * Math.max(1, value);
  const figures = [
    [Math.abs(fill.value - value) <= slack, 'value', `The fill says ${fill.value}; counting gives ${value}.`],
    [fill.value <= fill.bound + slack, 'bound', 'The fill beats its own bound.'],
    [!fill.proved || fill.value >= fill.bound, 'proved', 'The fill is called proved below its bound.'],
  ] as const;
  return [...cut, ...figures.flatMap(([holds, field, message]) => (holds ? [] : [{ field, message }]))];
}

/** Sums of areas and values may differ in their last digits. */
const SLACK = 1e-9;

/** Where nothing comes out of it, the piece stays as it is. */
function checkUncut({ id, width, height }: Piece, fill: Fill, keepAtLeast = 0): Problem[] {
  const whole = { x: 0, y: 0, width, height };
  const kept = Math.min(width, height) >= keepAtLeast;
  const expected = {
    piece: id,
    leftovers: kept ? [whole] : [],
    cuts: kept ? { leftover: true } : { waste: true },
  };
  return Object.entries(expected).flatMap(([field, one]) =>
    JSON.stringify(fill[field as keyof typeof expected]) === JSON.stringify(one)
      ? []
      : [{ field, message: 'Nothing is cut, and yet the piece does not stay as it is.' }],
  );
}

function countedValue(parts: readonly FillPart[], { rectangles }: Fill, goal: FillGoal): number {
  const values = new Map(parts.map(({ id, value = 0 }) => [id, value]));
  const worth = { area: areaOf, count: () => 1, wish: ({ part }: Placed) => values.get(part) ?? 0 }[goal];
  return rectangles.reduce((sum, one) => sum + worth(one), 0);
}

type Placed = Fill['rectangles'][number];

/** Parts without a number of copies are ordered as often as they were cut. */
function onePiecePlan(
  piece: Piece,
  parts: readonly FillPart[],
  fill: Fill,
  limits: Limits,
): [Order, Piece[], PlannedCuts] {
  const cut = new Map<string, number>();
  for (const { part } of fill.rectangles) cut.set(part, (cut.get(part) ?? 0) + 1);
  const order = { parts: parts.map((part) => ({ ...part, copies: part.copies ?? cut.get(part.id) ?? 0 })) };
  const area = areaOf(piece);
  const sheet = piece.kind === 'sheet';
  const { keepAtLeast = 0 } = limits;
  const plan: PlannedCuts = {
    placed: fill.rectangles.length,
    unplaced: order.parts
      .map(({ id, copies }) => ({ part: id, copies: copies - (cut.get(id) ?? 0), remedies: [] }))
      .filter(({ copies }) => copies > 0),
    newSheets: sheet ? 1 : 0,
    newSheetArea: sheet ? area : 0,
    offcutAreaUsed: sheet ? 0 : area,
    worthLost: fill.leftovers.reduce(
      (lost, one) => lost - shelfValue(one, { keepAtLeast }),
      shelfValue(piece, { keepAtLeast }),
    ),
    bounds: { unplaced: 0, newSheetArea: 0 },
    proved: false,
    timeMs: fill.timeMs,
    limits: fill.limits,
    used: [fill],
  };
  return [{ ...order, ...limits }, [piece], plan];
}
