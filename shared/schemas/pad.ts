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
