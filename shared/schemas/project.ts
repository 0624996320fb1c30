/** What the journal's forms ask: a title for an idea, the words of a project, which projects to show. */
import { z } from 'zod';
import { LONGEST_TAG, readTag, readTags } from '../tags.ts';
import { choiceField, countField, idField, noteField, readField, wordsField } from './fields.ts';

const LONGEST_TITLE = 120;

export const newIdea = z.object({ title: wordsField('it a title', LONGEST_TITLE) });

/** Any of them may be missing. */
export const projectWords = z.object({
  title: wordsField('it a title', LONGEST_TITLE).optional(),
  quantity: countField(1, 500).optional(),
  notes: noteField(4000).optional(),
  lesson: noteField(600).optional(),
  series: noteField(80).optional(),
  tags: readField(readTags).optional(),
});

export type ProjectWords = z.infer<typeof projectWords>;

export const seriesWords = z.object({ name: wordsField('it a name', 80), note: noteField(600) });

/** One tag: a comma would make two of it. */
export const tagWords = z.object({
  name: wordsField('it a name', LONGEST_TAG)
    .transform(readTag)
    .refine((name) => !name.includes(','), 'A tag has no comma.'),
});

/** Which page of a list: how many rows to pass over. */
export const pageQuery = z.object({ from: countField(0, 1_000_000).catch(0).default(0) });

const SHOWN = ['idea', 'planned', 'cut', 'made'] as const;

/** A query that makes no sense shows everything. */
export const journalQuery = z.object({
  q: z.string().max(100).catch('').default(''),
  state: choiceField(SHOWN).optional().catch(undefined),
  series: idField.optional().catch(undefined),
  tag: z.string().max(LONGEST_TAG).optional().catch(undefined),
  more: countField(1, 10_000).optional().catch(undefined),
});

export type JournalQuery = z.infer<typeof journalQuery>;
