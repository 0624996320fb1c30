/** The plain numbers of orders and plans as the lengths that they are: both count 25 nm. Knows nothing of cutting. */
import { length } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';
import type { Rectangle } from './stash.ts';

interface PlainSize {
  readonly width: number;
  readonly height: number;
}

export const sizeOf = ({ width, height }: PlainSize): Size => ({
  width: length(width),
  height: length(height),
});

export const rectangleOf = ({
  x,
  y,
  ...size
}: PlainSize & { readonly x: number; readonly y: number }): Rectangle => ({
  x: length(x),
  y: length(y),
  ...sizeOf(size),
});
