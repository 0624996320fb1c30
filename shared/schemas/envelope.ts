/** What the envelopes page asks: the card, how it should sit, and what the maker chose so far. Knows no solver. */
import { z } from 'zod';
import { FINISHES, FOLD_NAMES } from '../fold.ts';
import { inches, type Length, type Units } from '../length.ts';
import { WANTED_FITS, type WantedFit } from '../outcome.ts';
import { FRONT_LIES } from '../print.ts';
import {
  choiceField,
  countField,
  idField,
  ifAny,
  lengthField,
  lengthOrZeroField,
  optionalLengthField,
  whenMissing,
} from './fields.ts';
import { finishFields } from './finish.ts';

export const FINISH_SHAPES = ['as proposed', ...FINISHES] as const;

/** Every field but width and height may be missing: a link from a drawn card carries only its size. */
export const envelopeForm = (units: Units, defaults: { bulk: Length; fit: WantedFit }) =>
  z.object({
    width: lengthField(units),
    height: lengthField(units),
    bulk: whenMissing(defaults.bulk, lengthOrZeroField(units, inches(3))),
    fit: choiceField(WANTED_FITS, defaults.fit),
    boxWidth: optionalLengthField(units),
    boxHeight: optionalLengthField(units),
    copies: whenMissing(1, countField(1, 500)),
    front: choiceField(['any', ...FRONT_LIES] as const, 'any'),
    fold: z.enum(FOLD_NAMES).optional().catch(undefined),
    cutWidth: optionalLengthField(units),
    cutHeight: optionalLengthField(units),
    square: optionalLengthField(units),
    start: optionalLengthField(units),
    ...finishFields(units, FINISH_SHAPES),
    design: ifAny(idField),
    look: z.string().max(40).optional(),
    project: ifAny(idField),
  });

export type EnvelopeAsked = z.infer<ReturnType<typeof envelopeForm>>;
