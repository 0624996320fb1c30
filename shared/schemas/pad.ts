/** The form of a pad of paper. Which kinds there are and how a label's weight is read is handed in; knows no shelf. */
import { z } from 'zod';
import type { Units } from '../length.ts';
import { choiceField, countField, lengthField, noteField, wordsField } from './fields.ts';

/** More than one shelf holds; the ledger's own limit lies higher. */
export const MOST_SHEETS = 10_000;

export const padForm = <Kind extends string>(
  units: Units,
  kinds: readonly Kind[],
  weight: z.ZodType<number | null>,
) =>
  z
    .object({
      name: wordsField('the pad a name', 80),
      kind: choiceField(kinds),
      width: lengthField(units),
      height: lengthField(units),
      weight,
      low: countField(0, MOST_SHEETS),
      source: noteField(120),
      note: noteField(),
    })
    .transform(({ width, height, weight: grammage, low: lowMark, ...rest }) => ({
      ...rest,
      sheet: { width, height },
      grammage,
      lowMark,
    }));

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
