/** The index of the search box against what it should hold, worked out anew from the rows themselves. Reads rows only. */
import { sql } from 'kysely';
import type { Database } from './database.ts';

const COLUMNS = sql.raw('id, kind, belongs, number, title, text, about, facets');

export async function checkFinds(db: Database): Promise<string[]> {
  const failures: string[] = [];
  for (const [words, query] of RULES) {
    const { rows } = await query.execute(db);
    failures.push(...rows.map(({ id }) => `${words}: ${id}`));
  }
  return [...failures, ...(await checkIndexes(db))];
}

const RULES = [
  [
    'not found as it is written, find',
    sql<{
      id: number;
    }>`SELECT id FROM (SELECT ${COLUMNS} FROM due_finds EXCEPT SELECT ${COLUMNS} FROM finds)`,
  ],
  [
    'found though it is not there, find',
    sql<{ id: number }>`SELECT id FROM (SELECT ${COLUMNS} FROM finds WHERE kind <> 'place'
      EXCEPT SELECT ${COLUMNS} FROM due_finds)`,
  ],
  [
    'a place on the shelf that is not found',
    sql<{ id: string }>`SELECT DISTINCT place AS id FROM offcuts WHERE count > 0 AND place <> ''
      AND place NOT IN (SELECT title FROM finds WHERE kind = 'place')`,
  ],
  [
    'a place found where nothing lies',
    sql<{ id: string }>`SELECT title AS id FROM finds WHERE kind = 'place'
      AND title NOT IN (SELECT place FROM offcuts WHERE count > 0)`,
  ],
  [
    'a measure that is not found, find',
    sql<{ id: number }>`SELECT DISTINCT find_id AS id FROM (
      SELECT * FROM due_measures EXCEPT SELECT kind, length, find_id, field, other FROM find_measures)`,
  ],
  [
    'a measure found that is not there, find',
    sql<{ id: number }>`SELECT DISTINCT find_id AS id FROM (
      SELECT kind, length, find_id, field, other FROM find_measures EXCEPT SELECT * FROM due_measures)`,
  ],
  [
    'lengths that are not those of its measures, find',
    sql<{ id: number }>`SELECT id FROM finds WHERE lengths <> coalesce((
      SELECT group_concat(DISTINCT char(57344) || 'lenx' || (length / 63500)) FROM find_measures WHERE find_id = id), '')`,
  ],
] as const;

const INDEXES = ['project', 'lesson', 'outcome', 'part', 'offcut', 'other'];

/** The index of words compared with its rows by SQLite itself. */
async function checkIndexes(db: Database): Promise<string[]> {
  const failures: string[] = [];
  for (const index of INDEXES) {
    const name = sql.ref(`find_words_${index}`);
    const check = sql`INSERT INTO ${name} (${name}, rank) VALUES ('integrity-check', 1)`.execute(db);
    await check.catch(() => failures.push(`the words of ${index} are not those of its rows`));
  }
  return failures;
}
