/** The forms of the tools page: units and habits, notchers, drawn cards. Knows no envelope and no database. */
import { z } from 'zod';
import { inches, type Units } from '../length.ts';
import { LARGEST_CORRECTION, LARGEST_INSET } from '../notcher.ts';
import { WANTED_FITS } from '../outcome.ts';
import {
  choiceField,
  ifAny,
  lengthField,
  lengthOrZeroField,
  optionalLengthField,
  optionalSignedLengthField,
  tickField,
  wordsField,
} from './fields.ts';

const STEPS = { '8': 8, '16': 16, '32': 32 } as const;

/** The names the unit choice carries: inches to a fraction, or millimetres. */
export const UNIT_CHOICES = ['8', '16', '32', 'mm'] as const;

/** Which posts there are is handed in. */
export const settingsForm = <Post extends string>(units: Units, posts: readonly Post[]) =>
  z.object({
    units: choiceField(UNIT_CHOICES).transform(
      (choice): Units => (choice === 'mm' ? { unit: 'mm' } : { unit: 'in', step: STEPS[choice] }),
    ),
    keepAtLeast: lengthField(units, inches(12)),
    longestCut: lengthField(units),
    wantedFit: choiceField(WANTED_FITS),
    post: choiceField(posts),
    currency: currencyField,
  });

/** Left alone where a form does not ask for it. */
const currencyField = z
  .string()
  .optional()
  .transform((typed, context) => {
    const sign = typed?.trim();
    if (sign === undefined || /^[^\d\s.,-]{0,4}$/u.test(sign)) return sign;
    context.addIssue({ code: 'custom', message: 'Write up to four letters or a sign, like £ or kr.' });
    return z.NEVER;
  });

export const notcherForm = (units: Units) =>
  z.object({
    name: wordsField('the tool a name', 60),
    kind: choiceField(['notcher', 'ruler'] as const, 'notcher'),
    graduation: lengthField(units, inches(1)),
    largestSheet: lengthField(units),
    turning: choiceField(['clockwise', 'anticlockwise'] as const, 'anticlockwise'),
    inset: optionalLengthField(units, LARGEST_INSET),
    zeroOffset: optionalSignedLengthField(units, LARGEST_CORRECTION),
    chosen: tickField,
  });

/** What is left empty is learned. */
export const fitsForm = (units: Units) => {
  const limit = ifAny(lengthOrZeroField(units, inches(2)));
  return z
    .object({ snug: limit, easy: limit, loose: limit })
    .superRefine(({ snug, easy, loose }, context) => {
      const beside = (path: string, message: string) =>
        context.addIssue({ code: 'custom', path: [path], message });
      if (snug !== undefined && easy !== undefined && easy < snug)
        beside('easy', 'Easy can’t begin before snug.');
      const below = easy ?? snug;
      if (below !== undefined && loose !== undefined && loose < below)
        beside('loose', 'Loose can’t begin before the others.');
    });
};

export const cardSizeForm = (units: Units) =>
  z.object({
    name: wordsField('the card a name', 60),
    width: lengthField(units),
    height: lengthField(units),
    bulk: lengthOrZeroField(units, inches(3)),
  });
