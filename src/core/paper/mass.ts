/** What a cut piece of paper weighs. Knows no envelopes, cards or post: only sizes and weights. */
import type { Mass } from '#shared/mass.ts';
import type { Size } from '#shared/size.ts';
import { massOfArea, type PaperWeight } from './weight.ts';

/** So many equal rectangles together: the product is exact, and rounded once at the end. */
export const massOfCut = (size: Size, weight: PaperWeight, copies = 1): Mass =>
  massOfArea(BigInt(size.width) * BigInt(size.height) * BigInt(copies), weight);

/** A piece of any shape, from its area in square units of length, rounded to the nearest whole square unit. */
export const massOfShape = (area: number, weight: PaperWeight): Mass =>
  massOfArea(BigInt(Math.round(area)), weight);
