/**
 * A sheet of paper as it really is: sides that measure other than it is sold by, a strip of it that can't be used, and
 * what is left to cut from. Knows nothing of pads and plans.
 */
import { type Length, subtract } from './length.ts';
import type { Print } from './print.ts';
import type { Size } from './size.ts';

/** Of a sheet lying with its print upright. */
export const SHEET_EDGES = ['top', 'right', 'bottom', 'left'] as const;

export type SheetEdge = (typeof SHEET_EDGES)[number];

/** A strip along one edge that can't be used: a line of print, a glued edge. It is cut off before anything else. */
export interface Strip {
  readonly edge: SheetEdge;
  readonly depth: Length;
}

/** `sheet` is the size it is sold by, its height along the print; `measured` the sides that were found to differ. */
export interface SheetAsIs {
  readonly sheet: Size;
  readonly measured: Partial<Size>;
  readonly strip: Strip | null;
}

/** The whole sheet: each side as measured, else as it is sold. */
export const wholeSheet = ({ sheet, measured }: Omit<SheetAsIs, 'strip'>): Size => ({
  ...sheet,
  ...measured,
});

/** What can be cut from: the whole sheet without its strip, which may leave a side of nothing or less. */
export function usableSheet({ strip, ...rest }: SheetAsIs): Size {
  const whole = wholeSheet(rest);
  if (!strip) return whole;
  const side = sideAcross(strip);
  return { ...whole, [side]: subtract(whole[side], strip.depth) };
}

/** The side of the sheet that its strip makes shorter. */
export const sideAcross = ({ edge }: Strip): 'width' | 'height' =>
  edge === 'left' || edge === 'right' ? 'width' : 'height';

/**
 * How the print lies on what can be used. A border is measured from the printed sheet's bottom edge, so a strip there
 * takes its depth off it; where nothing of the border is left the paper still has an up.
 */
export function usablePrint(print: Print, strip: Strip | null): Print {
  if (print.direction !== 'one edge' || strip?.edge !== 'bottom') return print;
  const border = subtract(print.border, strip.depth);
  return border > 0 ? { direction: 'one edge', border } : { direction: 'upright' };
}
