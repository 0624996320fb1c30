/** What is asked about paper: a weight and what is cut from it, or a card by its layers. How a weight reads is handed in. */
import { z } from 'zod';
import { inches, type Units } from '../length.ts';
import {
  choiceField,
  countField,
  ifAny,
  lengthField,
  lengthOrZeroField,
  optionalLengthField,
  whenMissing,
} from './fields.ts';
import { massField, massUnit } from './post.ts';

export const paperForm = <Weight>(units: Units, weight: z.ZodType<Weight>) =>
  z.object({
    weight,
    width: optionalLengthField(units),
    height: optionalLengthField(units),
    copies: whenMissing(1, countField(1, 10_000)),
  });

export const GRAINS = ['not known', 'along the fold', 'across the fold'] as const;

/** A weight left empty is a layer that isn't there. */
export const layersForm = <Weight>(units: Units, weight: z.ZodType<Weight>) => {
  const optionalWeight = ifAny(weight);
  return z.object({
    width: lengthField(units),
    height: lengthField(units),
    base: weight,
    grain: choiceField(GRAINS, 'not known'),
    layer1: optionalWeight,
    layer2: optionalWeight,
    layer3: optionalWeight,
    inside: optionalWeight,
    raisedBy: whenMissing(inches(0), lengthOrZeroField(units, inches(3))),
    extra: ifAny(massField(massUnit(units))),
  });
};

/** How thick the card turned out. */
export const bulkForm = (units: Units) => z.object({ measured: lengthField(units) });
