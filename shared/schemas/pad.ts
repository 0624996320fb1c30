/**
 * The form of a pad of paper. Which kinds and common sizes there are and how a label's weight is read is handed in;
 * knows no shelf.
 */
import { z } from 'zod';
import type { Units } from '../length.ts';
import type { Size } from '../size.ts';
import { choiceField, countField, lengthField, noteField, whenMissing, wordsField } from './fields.ts';
import { asIsFields, asIsProblems, readAsIs } from './sheet.ts';

/** More than one shelf holds; the ledger's own limit lies higher. */
export const MOST_SHEETS = 10_000;

/** A sheet of none of the common sizes, whose sides are typed; what is meant where nothing is chosen. */
export const OWN_SIZE = 'own';

export const padForm = <Kind extends string>(
  units: Units,
  kinds: readonly Kind[],
  weight: z.ZodType<number | null>,
  { sizes, chosen }: { sizes: ReadonlyMap<string, Size>; chosen: string | undefined },
) => {
  const common = sizes.get(chosen ?? OWN_SIZE);
  const side = (of: 'width' | 'height') =>
    common
      ? z
          .string()
          .optional()
          .transform(() => common[of])
      : lengthField(units);
  return z
    .object({
      name: wordsField('the pad a name', 80),
      kind: choiceField(kinds),
      size: whenMissing(OWN_SIZE, choiceField([...sizes.keys(), OWN_SIZE])),
      width: side('width'),
      height: side('height'),
      ...asIsFields(units),
      weight,
      low: countField(0, MOST_SHEETS),
      source: noteField(120),
      note: noteField(),
    })
    .transform((typed, context) => {
      const { width, height, weight: grammage, low: lowMark, name, kind, source, note } = typed;
      const asIs = readAsIs({ width, height }, typed);
      for (const { field, message } of asIsProblems(asIs, typed, units)) {
        context.addIssue({ code: 'custom', path: [field], message });
      }
      return { name, kind, source, note, ...asIs, grammage, lowMark };
    });
};

/** Sheets bought of each design of a pad, by the design's number; an empty field is none, but not all may be. */
export const purchaseForm = (designs: readonly number[]) =>
  z
    .object(Object.fromEntries(designs.map((design) => [boughtField(design), boughtOfOne])))
    .transform((typed, context) => {
      const bought = designs.map((design) => ({ design, sheets: typed[boughtField(design)]! }));
      if (bought.some(({ sheets }) => sheets > 0)) return bought.filter(({ sheets }) => sheets > 0);
      context.addIssue({ code: 'custom', message: 'Say how many sheets, of one design at least.' });
      return z.NEVER;
    });

export const boughtField = (design: number): string => `bought-${design}`;

const boughtOfOne = z.preprocess(
  (typed) => (typed === undefined || typed === '' ? '0' : typed),
  countField(0, MOST_SHEETS),
);
