/** What an archive's text must be before a row of it is looked at. Knows its frame, not its tables. */
import { z } from 'zod';

const cell = z.union([z.string(), z.number(), z.null()]);

const archive = z.object({
  format: z.literal('creasebook archive'),
  version: z.int().positive(),
  schema: z.string().regex(/^\d{4}_[a-z_]+$/),
  book: z.string().regex(/^[0-9a-f]{32}$/),
  at: z.string(),
  tables: z.record(z.string().regex(/^[a-z_]+$/), z.array(z.record(z.string().regex(/^[a-z_]+$/), cell))),
});

export type Archive = z.infer<typeof archive>;

/** Undefined where the text is not an archive of ours. */
export function readArchive(text: string): Archive | undefined {
  try {
    return archive.safeParse(JSON.parse(text)).data;
  } catch {
    return undefined;
  }
}
