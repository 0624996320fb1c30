/** The invariants of lessons and tags: every wording told is a lesson of its project, every lesson is told, every tag borne. */
import { sql } from 'kysely';
import { wordsOf } from '#core/project/retelling.ts';
import type { Database } from './database.ts';

export async function checkLessons(db: Database): Promise<string[]> {
  const lessons = await db.selectFrom('lessons').selectAll().orderBy('id').execute();
  const told = await tellings(db);
  const kept = new Set(lessons.map((row) => key(row.project_id, row.envelope_id !== null, row)));
  const sources = new Set(told.map(({ key, envelope }) => `${key} ${envelope}`));
  const missing = new Set(told.filter(({ key }) => !kept.has(key)).map(({ project }) => project));
  return [
    ...[...missing].map((project) => `something told of project ${project} is not among its lessons`),
    ...lessons
      .filter(
        (row) => !sources.has(`${key(row.project_id, row.envelope_id !== null, row)} ${row.envelope_id}`),
      )
      .map(({ id }) => `lesson ${id} is not what was told`),
    ...(await idleTags(db)),
  ];
}

interface Words {
  readonly words: string;
  readonly saved_by: string;
}

const key = (project: number, ofEnvelope: boolean, { words, saved_by }: Words): string =>
  JSON.stringify([project, ofEnvelope, words, saved_by]);

async function tellings(
  db: Database,
): Promise<{ readonly key: string; readonly project: number; readonly envelope: number | null }[]> {
  const outcomes = await db
    .selectFrom('outcomes')
    .innerJoin('envelopes', 'envelopes.id', 'envelope_id')
    .select(['project_id', 'envelope_id', 'wrong', 'saved_by'])
    .execute();
  const projects = await db.selectFrom('projects').select(['id', 'lesson']).execute();
  return [
    ...outcomes.map((row) => ({ ...row, envelope: row.envelope_id as number | null })),
    ...projects.map(({ id, lesson }) => ({ project_id: id, envelope: null, wrong: lesson, saved_by: '' })),
  ].flatMap(({ project_id: project, envelope, wrong, saved_by }) => {
    const words = wordsOf({ wrong, savedBy: saved_by });
    if (!words) return [];
    return [
      { project, envelope, key: key(project, envelope !== null, { ...words, saved_by: words.savedBy }) },
    ];
  });
}

async function idleTags(db: Database): Promise<string[]> {
  const { rows } = await sql<{ name: string }>`SELECT name FROM tags
    WHERE NOT EXISTS (SELECT 1 FROM project_tags WHERE tag_id = tags.id)`.execute(db);
  return rows.map(({ name }) => `no project bears the tag ${name}`);
}
