/** What the envelopes page asks: the card, how it should sit, and what the maker chose so far. Knows no solver. */
import { z } from 'zod';
import { inches, type Length, type Units } from '../length.ts';
import { WANTED_FITS, type WantedFit } from '../outcome.ts';
import { FRONT_LIES } from '../print.ts';
import {
  choiceField,
  countField,
  idField,
  lengthField,
  lengthOrZeroField,
  optionalLengthField,
  whenMissing,
} from './fields.ts';

export const FINISH_SHAPES = ['as proposed', 'pointed', 'straight', 'tapered', 'rounded'] as const;

const FOLDS = ['diagonal', 'side-seam', 'two-piece'] as const;

/** A flap's finish as typed: a depth told from the score, and the taper or the radius. */
const finishFields = (units: Units) => ({
  shape: choiceField(FINISH_SHAPES, 'as proposed'),
  depth: optionalLengthField(units),
  more: optionalLengthField(units),
});

const optionalId = z.union([z.literal('').transform(() => undefined), idField]).optional();

/** Every field but width and height may be missing: a link from a drawn card carries only its size. */
export function envelopeForm(units: Units, defaults: { bulk: Length; fit: WantedFit }) {
  const c = finishFields(units);
  const d = finishFields(units);
  return z.object({
    width: lengthField(units),
    height: lengthField(units),
    bulk: whenMissing(defaults.bulk, lengthOrZeroField(units, inches(3))),
    fit: choiceField(WANTED_FITS, defaults.fit),
    boxWidth: optionalLengthField(units),
    boxHeight: optionalLengthField(units),
    copies: whenMissing(1, countField(1, 500)),
    front: choiceField(['any', ...FRONT_LIES] as const, 'any'),
    fold: z.enum(FOLDS).optional().catch(undefined),
    cutWidth: optionalLengthField(units),
    cutHeight: optionalLengthField(units),
    square: optionalLengthField(units),
    start: optionalLengthField(units),
    cShape: c.shape,
    cDepth: c.depth,
    cMore: c.more,
    dShape: d.shape,
    dDepth: d.depth,
    dMore: d.more,
    design: optionalId,
    look: z.string().max(40).optional(),
    project: optionalId,
  });
}

export type EnvelopeAsked = z.infer<ReturnType<typeof envelopeForm>>;
