/** The stash in words: which way a print runs, what a pad is. Knows no markup. */
import type { Design, Offcut, Pad } from '#core/stash/stash.ts';
import { printExact, printExactSize, printLength, typedLength, type Units } from '#shared/length.ts';
import type { Print } from '#shared/print.ts';
import { usableSheet, wholeSheet } from '#shared/sheet.ts';
import type { Size } from '#shared/size.ts';

/** `patterned · 12 × 12″ · 216 g/m²` */
export const padFacts = (pad: Pad, units: Units): string =>
  [
    pad.kind,
    printExactSize(pad.sheet, units),
    ...(pad.grammage === null ? [] : [printGrammage(pad.grammage)]),
  ].join(' · ');

/** How its sheets differ from the size they are sold by; undefined where nothing was said of it. */
export function sayAsIs(pad: Pad, units: Units): string | undefined {
  const measures = Object.keys(pad.measured).length > 0;
  if (!measures && !pad.strip) return undefined;
  return [
    ...(measures ? [`A sheet really measures ${printExactSize(wholeSheet(pad), units)}.`] : []),
    ...(pad.strip
      ? [
          `${printExact(pad.strip.depth, units)} along its ${pad.strip.edge} edge can’t be used and is cut off first: ${printExactSize(usableSheet(pad), units)} is left.`,
        ]
      : []),
  ].join(' ');
}

export const printGrammage = (grammage: number): string => `${Math.round(grammage)} g/m²`;

export function sayPrint(print: Print, units: Units): string {
  if (print.direction === 'any way') return 'print may lie any way';
  if (print.direction === 'upright') return 'print stands upright';
  return `border ${printLength(print.border, units)} deep along the bottom edge`;
}

/** As `sayPrint`, also where the strip that can't be used takes some of the border. */
export function sayPrintOf(
  { print, wholePrint }: Pick<Design, 'print' | 'wholePrint'>,
  units: Units,
): string {
  if (!wholePrint) return sayPrint(print, units);
  return print.direction === 'one edge'
    ? `${sayPrint(wholePrint, units)}, ${printExact(print.border, units)} of it above the strip that can’t be used`
    : `${sayPrint(print, units)}; its border lies in the strip that can’t be used`;
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
