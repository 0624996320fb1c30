/** The other way round: a piece of paper, and how a card should sit in what is folded from it. */
import { z } from 'zod';
import type { Units } from '../length.ts';
import { WANTED_FITS, type WantedFit } from '../outcome.ts';
import { choiceField, lengthField } from './fields.ts';

export const holdingForm = (units: Units, fit: WantedFit) =>
  z.object({
    width: lengthField(units),
    height: lengthField(units),
    fit: choiceField(WANTED_FITS, fit),
  });
