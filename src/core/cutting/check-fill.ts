/**
 * The judge of fills: a fill is replayed as the plan of a one-piece order, and what it claims to be worth is counted.
 * Shares types with the search and nothing else.
 */
import type { Problem } from '#shared/checked.ts';
import { checkPlan } from './check.ts';
import type { CutPlan } from './cuts.ts';
import type { Fill } from './fill.ts';
import type { Order, Piece } from './order.ts';
import type { FillGoal, FillPart } from './wants.ts';
import { regret } from './worth.ts';

/** Every way in which the fill breaks the piece, the parts or its own figures; empty for a sound one. */
export function checkFill(
  piece: Piece,
  parts: readonly FillPart[],
  fill: Fill,
  goal: FillGoal = 'area',
): Problem[] {
  const cut = fill.rectangles.length > 0 ? checkPlan(...onePiecePlan(piece, parts, fill)) : [];
  const value = worthOf(parts, fill, goal);
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

function worthOf(parts: readonly FillPart[], { rectangles }: Fill, goal: FillGoal): number {
  const values = new Map(parts.map(({ id, value = 0 }) => [id, value]));
  const worth = { area: areaOf, count: () => 1, wish: ({ part }: Placed) => values.get(part) ?? 0 }[goal];
  return rectangles.reduce((sum, one) => sum + worth(one), 0);
}

type Placed = Fill['rectangles'][number];

const areaOf = ({ width, height }: { readonly width: number; readonly height: number }): number =>
  width * height;

/** Parts without a number of copies are ordered as often as they were cut. */
function onePiecePlan(piece: Piece, parts: readonly FillPart[], fill: Fill): [Order, Piece[], CutPlan] {
  const cut = new Map<string, number>();
  for (const { part } of fill.rectangles) cut.set(part, (cut.get(part) ?? 0) + 1);
  const order = { parts: parts.map((part) => ({ ...part, copies: part.copies ?? cut.get(part.id) ?? 0 })) };
  const area = areaOf(piece);
  const sheet = piece.kind === 'sheet';
  const plan: CutPlan = {
    placed: fill.rectangles.length,
    unplaced: order.parts
      .map(({ id, copies }) => ({ part: id, copies: copies - (cut.get(id) ?? 0), remedies: [] }))
      .filter(({ copies }) => copies > 0),
    newSheets: sheet ? 1 : 0,
    newSheetArea: sheet ? area : 0,
    offcutAreaUsed: sheet ? 0 : area,
    worthLost: regret(piece, fill.leftovers, fill.limits.keepAtLeast),
    settings: 0,
    bounds: { unplaced: 0, newSheetArea: 0 },
    proved: false,
    timeMs: fill.timeMs,
    limits: fill.limits,
    used: [fill],
  };
  return [{ ...order, ...fill.limits }, [piece], plan];
}
