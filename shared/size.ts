/** A width and a height, and the few questions every module asks of them. Knows nothing of what the rectangle is. */
import { type Length, length } from './length.ts';

export interface Size {
  readonly width: Length;
  readonly height: Length;
}

/** The same rectangle after a quarter turn. */
export const turned = (size: Size): Size => ({ width: size.height, height: size.width });

/** Whether `inner` lies inside `outer` without turning; touching edges count as inside. */
export const holds = (outer: Size, inner: Size): boolean =>
  inner.width <= outer.width && inner.height <= outer.height;

export const shorter = (size: Size): Length => length(Math.min(size.width, size.height));

export const longer = (size: Size): Length => length(Math.max(size.width, size.height));

/** In square units, as a plain number. */
export const areaOf = ({ width, height }: { readonly width: number; readonly height: number }): number =>
  width * height;
