/** How one typed field becomes a checked value, with messages in the reader's words. Knows no form as a whole. */
import { z } from 'zod';
import type { Checked } from '../checked.ts';
import { readId } from '../ids.ts';
import { inches, type Length, printLength, readSignedLength, type Units } from '../length.ts';
import { LONGEST_PAPER, readSide } from '../size-typed.ts';

const text = z.string().optional().default('');

/** A length above zero, in the reader's units unless it names its own. */
export const lengthField = (units: Units, atMost: Length = LONGEST_PAPER): z.ZodType<Length> =>
  text.transform((typed, context) => {
    const length = take(readSide(typed, units), context);
    if (length === undefined) return z.NEVER;
    if (length <= 0) return fail(context, 'This has to be more than zero.');
    if (length > atMost) return fail(context, `That is more than ${printLength(atMost, units)}.`);
    return length;
  });

/** A length that may be nothing, such as a card's bulk; an empty field is zero. */
export const lengthOrZeroField = (units: Units, atMost: Length = LONGEST_PAPER): z.ZodType<Length> =>
  text.transform((typed, context) => {
    const length = typed.trim() === '' ? inches(0) : take(readSide(typed, units), context);
    if (length === undefined) return z.NEVER;
    if (length > atMost) return fail(context, `That is more than ${printLength(atMost, units)}.`);
    return length;
  });

/** A correction in either direction, or nothing at all. */
export const optionalSignedLengthField = (units: Units, atMost: Length): z.ZodType<Length | undefined> =>
  text.transform((typed, context) => {
    if (typed.trim() === '') return undefined;
    const length = take(readSignedLength(typed, units), context);
    if (length === undefined) return z.NEVER;
    if (Math.abs(length) > atMost)
      return fail(context, `A correction is at most ${printLength(atMost, units)}.`);
    return length;
  });

/** A length or nothing at all. */
export const optionalLengthField = (units: Units, atMost?: Length): z.ZodType<Length | undefined> =>
  ifAny(lengthField(units, atMost));

/** A whole number from `least` to `most`. */
export const countField = (least: number, most: number): z.ZodType<number> =>
  text.transform((typed, context) => {
    const trimmed = typed.trim();
    if (!/^\d{1,9}$/.test(trimmed)) return fail(context, `Type a whole number from ${least} to ${most}.`);
    const count = Number(trimmed);
    if (count < least || count > most) return fail(context, `Type a whole number from ${least} to ${most}.`);
    return count;
  });

/** Some words, trimmed. */
export const wordsField = (what: string, most = 120): z.ZodType<string> =>
  text.transform((typed, context) => {
    const trimmed = typed.trim();
    if (trimmed === '') return fail(context, `Give ${what}.`);
    return trimmed.length > most ? fail(context, `Keep this under ${most} characters.`) : trimmed;
  });

/** Words that may be left out. */
export const noteField = (most = 2000): z.ZodType<string> =>
  text.transform((typed, context) =>
    typed.length > most ? fail(context, `Keep this under ${most} characters.`) : typed.trim(),
  );

/** One of the choices offered. */
export const choiceField = <T extends string>(choices: readonly T[], otherwise?: T): z.ZodType<T> =>
  text.transform((typed, context) => {
    const found = choices.find((choice) => choice === typed) ?? (typed === '' ? otherwise : undefined);
    return found ?? fail(context, `Choose one of: ${choices.join(', ')}.`);
  });

/** A ticked box. */
export const tickField: z.ZodType<boolean> = text.transform((typed) => typed === 'on' || typed === 'yes');

/** The number of a row, as links and hidden fields carry it. */
export const idField: z.ZodType<number> = text.transform(
  (typed, context) => readId(typed) ?? fail(context, 'Choose one from the list.'),
);

/** The field, or this value where a link leaves it out altogether. */
export const whenMissing = <T>(value: T, field: z.ZodType<T>): z.ZodType<T> =>
  z
    .string()
    .optional()
    .transform((typed, context) => {
      return typed === undefined ? value : through(field, typed, context);
    });

/** The field, or nothing where it is left empty. */
export const ifAny = <T>(field: z.ZodType<T>): z.ZodType<T | undefined> =>
  text.transform((typed, context) => (typed.trim() === '' ? undefined : through(field, typed, context)));

/** As a reader of text has it, with its own words for what it can't read. */
export const readField = <T>(read: (typed: string) => Checked<T>): z.ZodType<T> =>
  text.transform((typed, context) => {
    const found = read(typed);
    return found.ok ? found.value : fail(context, found.problems[0]!.message);
  });

function through<T>(field: z.ZodType<T>, typed: string, context: z.RefinementCtx): T {
  const read = field.safeParse(typed);
  return read.success ? read.data : fail(context, read.error.issues[0]!.message);
}

function take(read: ReturnType<typeof readSide>, context: z.RefinementCtx): Length | undefined {
  if (read.ok) return read.value.length;
  context.addIssue({ code: 'custom', message: read.problems[0]!.message });
  return undefined;
}

function fail(context: z.RefinementCtx, message: string): never {
  context.addIssue({ code: 'custom', message });
  return z.NEVER;
}
