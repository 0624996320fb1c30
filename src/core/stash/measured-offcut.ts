/** What an offcut can be, by the paper it is of. Knows no words. */
import { length } from '#shared/length.ts';
import { wholeSheet } from '#shared/sheet.ts';
import { holds, type Size, turned } from '#shared/size.ts';
import type { Design, NewOffcut } from './stash.ts';

/**
 * The largest that it can be, where it is said to be larger; undefined where it is not. A print with an up is measured as
 * it stands; any other may be turned to go onto its sheet. One sheet was measured and the offcut may be of another, so
 * that each side may be as long as sold or as measured, whichever is more.
 */
export function exceeded(size: Size, { pad, print }: Pick<Design, 'pad' | 'print'>): Size | undefined {
  const { width, height } = wholeSheet(pad);
  const largest = {
    width: length(Math.max(width, pad.sheet.width)),
    height: length(Math.max(height, pad.sheet.height)),
  };
  const fits = holds(largest, size) || (print.direction === 'any way' && holds(largest, turned(size)));
  return fits ? undefined : largest;
}

/** Only a print with a border on one edge can still have it. */
export const borderedOnly = (offcut: NewOffcut, { print }: Pick<Design, 'print'>): NewOffcut => ({
  ...offcut,
  border: offcut.border && print.direction === 'one edge',
});
