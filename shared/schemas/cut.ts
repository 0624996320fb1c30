/** What is taken from the shelf for an envelope: the question the envelopes page answered, and the piece chosen. */
import type { Length, Units } from '../length.ts';
import type { WantedFit } from '../outcome.ts';
import { envelopeForm } from './envelope.ts';
import { idField, ifAny } from './fields.ts';

/** Without an offcut a sheet of the design is taken. */
export const cutForm = (units: Units, defaults: { bulk: Length; fit: WantedFit }) =>
  envelopeForm(units, defaults).extend({
    design: idField,
    offcut: ifAny(idField).transform((id) => id ?? null),
  });
