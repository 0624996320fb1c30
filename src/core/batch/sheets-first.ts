/**
 * What is to be done with a plan's sheets before its first cut: a side to check once, a strip to cut off. Joins plans and
 * pads; plans nothing.
 */
import { spareOf } from '#core/cutting/trimmer/spare.ts';
import type { Design, Pad } from '#core/stash/stash.ts';
import { inches, type Length } from '#shared/length.ts';
import { type SheetEdge, type Strip, sideAcross, usableSheet, wholeSheet } from '#shared/sheet.ts';
import type { FoundPlan } from './planned.ts';

/** A side of one sheet to measure. `spare` is what it could be shorter by on the sheet that is used up most. */
export interface SideToCheck {
  readonly pad: Pad;
  readonly side: 'width' | 'height';
  /** By which it was planned. */
  readonly measure: Length;
  readonly spare: number;
}

/** With less to spare than this a sheet that is a little short loses a part. */
const HARDLY_ANY = inches(1 / 16);

type Designs = ReadonlyMap<number, Pick<Design, 'pad'>>;

/** Sides that measure other than they are sold by, and those of which the parts need all but less than 1/16 in. */
export function sidesToCheck(plan: FoundPlan, designs: Designs): SideToCheck[] {
  return sheetsByPad(plan, designs).flatMap(({ pad, sheets }) =>
    (['width', 'height'] as const).flatMap((side) => {
      const measure = wholeSheet(pad)[side];
      const spare = Math.min(...sheets.map((sheet) => sheet[side]));
      return measure !== pad.sheet[side] || spare < HARDLY_ANY ? [{ pad, side, measure, spare }] : [];
    }),
  );
}

/** A strip to cut off each of so many sheets: the `fence` edge, opposite the strip, lies to the fence at `set`. */
export interface StripFirst {
  readonly pad: Pad;
  readonly strip: Strip;
  readonly sheets: number;
  readonly fence: SheetEdge;
  readonly set: Length;
  /** How long the cut is. */
  readonly length: Length;
}

export function stripsFirst(plan: FoundPlan, designs: Designs): StripFirst[] {
  return sheetsByPad(plan, designs).flatMap(({ pad, sheets }) => {
    const { strip } = pad;
    if (!strip) return [];
    const side = sideAcross(strip);
    const [usable, length] = [usableSheet(pad), wholeSheet(pad)[side === 'width' ? 'height' : 'width']];
    return [{ pad, strip, sheets: sheets.length, fence: OPPOSITE[strip.edge], set: usable[side], length }];
  });
}

const OPPOSITE: Record<SheetEdge, SheetEdge> = { left: 'right', right: 'left', top: 'bottom', bottom: 'top' };

/** The pads that sheets are taken of, and what each of these sheets has to spare. */
function sheetsByPad({ plan, pieces }: FoundPlan, designs: Designs) {
  const byId = new Map(pieces.map((piece) => [piece.id, piece]));
  const found = new Map<number, { pad: Pad; sheets: ReturnType<typeof spareOf>[] }>();
  for (const { piece: id, cuts } of plan.used) {
    const piece = byId.get(id)!;
    const pad = piece.kind === 'sheet' ? designs.get(piece.ref.design)?.pad : undefined;
    if (!pad) continue;
    const known = found.get(pad.id) ?? { pad, sheets: [] };
    known.sheets.push(spareOf(cuts, piece));
    found.set(pad.id, known);
  }
  return [...found.values()];
}
