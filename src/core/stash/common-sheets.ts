/** The sheets that most pads have, by the name under which they are chosen. Knows the sizes only through the standards. */
import { SHEETS } from '#core/envelope/sizes.ts';
import type { Size } from '#shared/size.ts';

/** Height along the print, as such sheets usually lie. */
export const COMMON_SHEETS: ReadonlyMap<string, Size> = new Map(
  ['12 × 12', '8 × 8', '6 × 6', 'Letter', 'ISO A4'].map((name) => [
    name.replace(/^ISO /, ''),
    sheetNamed(name),
  ]),
);

/** Under which name these sheets are chosen, if any. */
export const commonName = ({ width, height }: Size): string | undefined =>
  [...COMMON_SHEETS].find(([, size]) => size.width === width && size.height === height)?.[0];

function sheetNamed(wanted: string): Size {
  const { width, height } = SHEETS.find(({ name }) => name === wanted)!;
  return { width, height };
}
