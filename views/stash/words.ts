/** The stash in words: which way a print runs, what a pad is. Knows no markup. */
import type { Design, Offcut, Pad } from '#core/project/stash.ts';
import { printLength, printSize, typedLength, type Units } from '#shared/length.ts';
import type { Print } from '#shared/print.ts';
import type { Size } from '#shared/size.ts';

/** `patterned · 12 × 12″ · 216 g/m²` */
export const padFacts = (pad: Pad, units: Units): string =>
  [
    pad.kind,
    printSize(pad.sheet, units),
    ...(pad.grammage === null ? [] : [printGrammage(pad.grammage)]),
  ].join(' · ');

export const printGrammage = (grammage: number): string => `${Math.round(grammage)} g/m²`;

export function sayPrint(print: Print, units: Units): string {
  if (print.direction === 'any way') return 'print may lie any way';
  if (print.direction === 'upright') return 'print stands upright';
  return `border ${printLength(print.border, units)} deep along the bottom edge`;
}

/** `upright`, `upright, with the border`; nothing where it does not matter. */
export function sayStanding(offcut: Pick<Offcut, 'design' | 'border'>): string {
  if (offcut.design.print.direction === 'any way') return '';
  return offcut.border ? 'upright, with the border' : 'upright';
}

/** `Meadow, Fern` would be two things: the pad comes after, in brackets where there is room. */
export const fullName = (design: Design): string => `${design.name} (${design.pad.name})`;

/** Where to ask which card an envelope from this paper would hold. */
export const askHolding = ({ width, height }: Size, units: Units): string =>
  `/holding?${new URLSearchParams({ width: typedLength(width, units), height: typedLength(height, units) })}`;
