/** What is asked of measures to be kept without taking paper: the envelope, whether and when it was made, how it came out. */
import { z } from 'zod';
import type { Length, Units } from '../length.ts';
import { FITS, type WantedFit } from '../outcome.ts';
import { readSize } from '../size-typed.ts';
import { envelopeForm } from './envelope.ts';
import { choiceField, idField, ifAny, noteField, readField } from './fields.ts';

/** `made` by her, or `not yet`: to be made, or seen elsewhere. */
const CAME = ['made', 'not yet'] as const;

/** `today` and the day it was made on are `2026-03-01`; without a tool it was made on one she doesn't keep here. */
export const keptForm = (units: Units, defaults: { bulk: Length; fit: WantedFit }, today: string) =>
  envelopeForm(units, defaults).extend({
    came: choiceField(CAME, 'made'),
    day: dayField(today),
    felt: choiceField(['', ...FITS], ''),
    pocket: ifAny(readField((text) => readSize(text, units))),
    tool: ifAny(idField),
    title: noteField(120),
    notes: noteField(4000),
  });

export type KeptAsked = z.infer<ReturnType<typeof keptForm>>;

/** A day of the calendar, today where nothing is typed, none that is still to come. */
const dayField = (today: string): z.ZodType<string> =>
  z
    .string()
    .optional()
    .default('')
    .transform((typed, context) => {
      const day = typed.trim() === '' ? today : typed.trim();
      const message = !isDay(day)
        ? 'Write the day like 2026-03-01.'
        : day > today
          ? 'That day is still to come.'
          : undefined;
      if (message === undefined) return day;
      context.addIssue({ code: 'custom', message });
      return z.NEVER;
    });

const isDay = (text: string): boolean =>
  /^[12]\d{3}-\d\d-\d\d$/.test(text) && new Date(`${text}T00:00:00Z`).toJSON()?.startsWith(text) === true;
