/** How a blank is laid down so that its print comes out as a look has it, and that in words. Knows no fold. */
import type { Print } from '#shared/print.ts';
import type { Placement } from './fold.ts';
import type { Side } from './recipe.ts';

/** `quarters`: clockwise quarter turns of the top of the print from the tool's far edge. */
export function placementOf(faceDown: Placement['faceDown'], quarters: number, print: Print): Placement {
  if (print.direction === 'any way') return { faceDown };
  if (print.direction === 'upright') return { faceDown, towards: { what: 'top', side: TOWARDS[quarters]! } };
  return { faceDown, towards: { what: 'border', side: TOWARDS[(quarters + 2) % 4]! } };
}

/** `print down, border to the right`. */
export function placementWords({ faceDown, towards }: Placement): string {
  const face = faceDown === 'print' ? 'print down' : 'print up';
  if (!towards) return face;
  const what = towards.what === 'border' ? 'border' : 'top of the print';
  return `${face}, ${what} ${WHERE[towards.side]}`;
}

/** As the sheet lies before the maker. */
export const WHERE: Record<Side, string> = {
  top: 'away from you',
  right: 'to the right',
  bottom: 'towards you',
  left: 'to the left',
};

const TOWARDS: readonly Side[] = ['top', 'right', 'bottom', 'left'];
