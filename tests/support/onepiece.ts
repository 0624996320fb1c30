/** A fill as the plan of a one-piece order, so that the judge of plans can replay it. Knows no search. */
import type { CutPlan } from '#core/cutting/cuts.ts';
import type { Fill } from '#core/cutting/fill.ts';
import type { Order, Piece } from '#core/cutting/order.ts';
import type { FillPart } from '#core/cutting/wants.ts';
import { regret } from '#core/cutting/worth.ts';

/** Parts without a number of copies are ordered as often as they were cut. */
export function onePiecePlan(
  piece: Piece,
  parts: readonly FillPart[],
  fill: Fill,
): [Order, Piece[], CutPlan] {
  const cut = new Map<string, number>();
  for (const { part } of fill.rectangles) cut.set(part, (cut.get(part) ?? 0) + 1);
  const order = { parts: parts.map((part) => ({ ...part, copies: part.copies ?? cut.get(part.id) ?? 0 })) };
  const area = piece.width * piece.height;
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
