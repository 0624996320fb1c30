/**
 * The form of a pad of paper. Which kinds and common sizes there are and how a label's weight is read is handed in;
 * knows no shelf.
 */
import { z } from 'zod';
import type { Problem } from '../checked.ts';
import type { Units } from '../length.ts';
import { type MoneyTyped, readMoney } from '../money.ts';
import type { Size } from '../size.ts';
import {
  choiceField,
  countField,
  ifAny,
  lengthField,
  noteField,
  readField,
  whenMissing,
  wordsField,
} from './fields.ts';
import { asIsFields, asIsProblems, readAsIs } from './sheet.ts';

/** More than one shelf holds; the ledger's own limit lies higher. */
export const MOST_SHEETS = 10_000;

/** A sheet of none of the common sizes, whose sides are typed; what is meant where nothing is chosen. */
export const OWN_SIZE = 'own';

interface PadContext {
  readonly sizes: ReadonlyMap<string, Size>;
  readonly chosen: string | undefined;
  /** The sign of her money; empty until she said one. */
  readonly currency: string;
}

export const padForm = <Kind extends string>(
  units: Units,
  kinds: readonly Kind[],
  weight: z.ZodType<number | null>,
  { sizes, chosen, currency }: PadContext,
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
      price: ifAny(readField(readMoney)),
      priceSheets: ifAny(countField(1, MOST_SHEETS)),
    })
    .transform((typed, context) => {
      const { width, height, weight: grammage, low: lowMark, name, kind, source, note } = typed;
      const asIs = readAsIs({ width, height }, typed);
      for (const { field, message } of asIsProblems(asIs, typed, units)) {
        context.addIssue({ code: 'custom', path: [field], message });
      }
      for (const { field, message } of priceProblems(typed, currency)) {
        context.addIssue({ code: 'custom', path: [field], message });
      }
      const { price, priceSheets: sheets } = typed;
      const priced = price && sheets ? { hundredths: price.hundredths, sheets } : null;
      return { name, kind, source, note, ...asIs, grammage, lowMark, price: priced, sign: price?.sign ?? '' };
    });
};

/** A price is for a number of sheets, in the one money of the book. */
function priceProblems(
  { price, priceSheets }: { price?: MoneyTyped | undefined; priceSheets?: number | undefined },
  currency: string,
): Problem[] {
  if (!price) return priceSheets ? [{ field: 'price', message: 'Say the price of these sheets.' }] : [];
  if (currency !== '' && price.sign !== '' && price.sign !== currency) {
    const message = `Your prices are in ${currency}; the sign is changed under Tools.`;
    return [{ field: 'price', message }];
  }
  return priceSheets ? [] : [{ field: 'priceSheets', message: 'Say how many sheets that was for.' }];
}

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
