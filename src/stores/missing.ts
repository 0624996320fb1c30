/** Parts that the last plan of an unfinished project found no paper for. Verb: `listMissing(db, limit)`, the last changed project first. */
import { sql } from 'kysely';
import type { MissingPart } from '#core/stash/shopping.ts';
import type { Database } from './database.ts';

export async function listMissing(db: Database, limit: number): Promise<MissingPart[]> {
  const { rows } = await sql<MissingPart>`
    SELECT projects.id AS project, title, missing.value ->> '$.part' AS part, missing.value ->> '$.copies' AS copies,
      asked.value ->> '$.width' AS width, asked.value ->> '$.height' AS height
    FROM projects JOIN plans ON plans.id = (SELECT max(id) FROM plans WHERE project_id = projects.id)
    JOIN json_each(plans.plan, '$.unplaced') AS missing
    JOIN json_each(plans.cutting, '$.order.parts') AS asked ON asked.value ->> '$.id' = missing.value ->> '$.part'
    WHERE finished_at IS NULL AND projects.put_away_at IS NULL AND plans.plan IS NOT NULL
    ORDER BY changed_at DESC, projects.id LIMIT ${limit}`.execute(db);
  return rows;
}
