/** The form of one design of a pad: its name, how its print runs, what it looks like. Knows no shelf. */
import { z } from 'zod';
import type { Units } from '../length.ts';
import type { Print, PrintDirection } from '../print.ts';
import type { Size } from '../size.ts';
import { COLOUR, MOTIFS, type Swatch } from '../swatch.ts';
import { choiceField, countField, ifAny, lengthField, tickField, wordsField } from './fields.ts';
import { MOST_SHEETS } from './pad.ts';

/** Left empty it is the design's share of its pad's. */
const lowMark = ifAny(countField(0, MOST_SHEETS)).transform((mark) => mark ?? null);

export const lowMarkForm = z.object({ lowMark });

const PRINT_DIRECTIONS = ['any way', 'upright', 'one edge'] as const satisfies PrintDirection[];

/** One that is put right; `direction` as it was typed. */
export const designForm = (units: Units, sheet: Size, direction: string | undefined) =>
  z.intersection(
    z.object({
      name: wordsField('the design a name', 80),
      doubleSided: tickField,
      lowMark,
    }),
    z.intersection(
      printForm(units, sheet, direction),
      lookForm().transform((swatch) => ({ swatch })),
    ),
  );

/** A new one comes with its sheets; later the ledger counts them. */
export const newDesignForm = (units: Units, sheet: Size, direction: string | undefined) =>
  z.intersection(designForm(units, sheet, direction), z.object({ sheets: countField(0, MOST_SHEETS) }));

/** Only a print on one edge has a border to measure, which is no deeper than its sheet is high. */
export const printForm = (units: Units, sheet: Size, direction: string | undefined) =>
  z
    .object({
      direction: choiceField(PRINT_DIRECTIONS, 'any way'),
      border: direction === 'one edge' ? lengthField(units, sheet.height) : z.undefined().catch(undefined),
    })
    .transform(({ direction, border }): { print: Print } => ({
      print: direction === 'one edge' ? { direction, border: border! } : { direction },
    }));

export const lookForm = () =>
  z
    .object({
      motif: choiceField(MOTIFS),
      ground: colourField,
      inks: countField(1, 3),
      ink1: colourField,
      ink2: colourField,
      ink3: colourField,
    })
    .transform(
      ({ motif, ground, inks, ink1, ink2, ink3 }): Swatch => ({
        motif,
        ground,
        inks: [ink1, ink2, ink3].slice(0, inks),
      }),
    );

export const boughtForm = z.object({ bought: countField(1, MOST_SHEETS) });

export const recountForm = z.object({ counted: countField(0, MOST_SHEETS) });

/** Sheets that are gone without having been cut. */
export const lostForm = z.object({ lost: countField(1, MOST_SHEETS) });

const colourField = z
  .string()
  .optional()
  .transform((typed, context) => {
    const colour = (typed ?? '').trim().toLowerCase();
    if (COLOUR.test(colour)) return colour;
    context.addIssue({ code: 'custom', message: 'Write the colour like #a8432f.' });
    return z.NEVER;
  });
