/** How a flap was or is to be finished, as it is typed: a shape, a depth from the score, the taper or radius. Knows no flap. */
import type { Length, Units } from '../length.ts';
import { choiceField, optionalLengthField } from './fields.ts';

/** As typed: `shape` is one of the form's own words where nothing else is asked for. */
export interface FinishTyped<Shape extends string> {
  readonly shape: Shape;
  readonly depth?: Length | undefined;
  readonly more?: Length | undefined;
}

/** Where a measure of a flap's finish is typed; the taper or the radius is *more* than the shape. */
export const finishField = (letter: string, part: 'Shape' | 'Depth' | 'More'): string =>
  `${letter.toLowerCase()}${part}`;

/** The fields of the two flaps that may be finished; the first of the shapes stands for none of her own. */
export const finishFields = <Shape extends string>(units: Units, shapes: readonly Shape[]) => ({
  cShape: choiceField(shapes, shapes[0]),
  cDepth: optionalLengthField(units),
  cMore: optionalLengthField(units),
  dShape: choiceField(shapes, shapes[0]),
  dDepth: optionalLengthField(units),
  dMore: optionalLengthField(units),
});
