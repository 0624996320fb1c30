/** Where her fits begin, where she says so herself; and the order in which fits were felt. Frozen once landed. */
import { type Kysely, sql } from 'kysely';

export async function up(db: Kysely<unknown>): Promise<void> {
  for (const column of columns) await sql`ALTER TABLE settings ADD COLUMN ${column}`.execute(db);
  await sql`CREATE INDEX outcomes_felt ON outcomes (at, envelope_id) WHERE felt IS NOT NULL`.execute(db);
}

/** A limit that is NULL is learned from fits felt later than `fits_since`. */
const columns = [
  sql`pinned_snug INTEGER CHECK (pinned_snug BETWEEN 0 AND 400000000)`,
  sql`pinned_easy INTEGER CHECK (pinned_easy BETWEEN coalesce(pinned_snug, 0) AND 400000000)`,
  sql`pinned_loose INTEGER CHECK (pinned_loose BETWEEN coalesce(pinned_easy, pinned_snug, 0) AND 400000000)`,
  sql`fits_since TEXT CHECK (fits_since LIKE '____-__-__T__:__:%Z')`,
];
