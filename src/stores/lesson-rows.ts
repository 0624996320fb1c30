/** Lessons between their rows and their values, with the project and the envelope that taught them. Writes nothing. */
import type { Selectable } from 'kysely';
import type { Lesson } from '#core/project/lessons.ts';
import type { Database } from './database.ts';
import type { Tables } from './tables.ts';

export const lessonRows = (db: Database) =>
  db
    .selectFrom('lessons')
    .innerJoin('projects', 'projects.id', 'lessons.project_id')
    .leftJoin('envelopes', 'envelopes.id', 'lessons.envelope_id')
    .selectAll('lessons')
    .select(['projects.title', 'envelopes.number']);

type Row = Selectable<Tables['lessons']> & { readonly title: string; readonly number: number | null };

export const toLesson = (row: Row): Lesson => ({
  id: row.id,
  project: { id: row.project_id, title: row.title },
  envelope: row.number,
  words: row.words,
  savedBy: row.saved_by,
  step: row.step,
  chosen: row.chosen === 1,
  always: row.always === 1,
  features: {
    part: row.part,
    design: row.design_id,
    kind: row.paper_kind,
    tool: row.notcher_id,
    size: row.size_class,
    fold: row.fold,
  },
});
