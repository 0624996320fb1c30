/** What the search box and its filters ask. What makes no sense in an address asks for nothing. */
import { z } from 'zod';
import { FOLD_NAMES } from '../fold.ts';
import { FITS } from '../outcome.ts';
import { PAPER_KINDS } from '../paper-kind.ts';
import { choiceField, countField } from './fields.ts';

const optional = <T extends z.ZodType>(field: T) => field.optional().catch(undefined);

/** `kind` and `size` are checked against the words for them where they are read. */
export const findQuery = z.object({
  q: z.string().catch('').default(''),
  kind: optional(z.string()),
  size: optional(z.string()),
  fold: optional(choiceField(FOLD_NAMES)),
  fit: optional(choiceField(FITS)),
  paper: optional(choiceField(PAPER_KINDS)),
  /** A year and a month, as in 2026-03. */
  month: optional(z.string().regex(/^\d{4}-(0[1-9]|1[0-2])$/)),
  tag: optional(
    z
      .string()
      .max(80)
      .transform((tag) => tag.trim() || undefined),
  ),
  more: optional(countField(1, 500)),
});

export type FindQuery = z.infer<typeof findQuery>;
