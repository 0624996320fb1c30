/** How thick finished cards were measured beside what their layers were reckoned to. Frozen once landed. */
import { type Kysely, sql } from 'kysely';

export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of statements) await statement.execute(db);
}

/** `bulk_correction` is added to what layers are reckoned to; 0 where she took none. */
const statements = [
  sql`CREATE TABLE bulks (
    id INTEGER PRIMARY KEY,
    at TEXT NOT NULL CHECK (at LIKE '____-__-__T__:__:%Z'),
    least INTEGER NOT NULL CHECK (least >= 0),
    most INTEGER NOT NULL CHECK (most >= least),
    measured INTEGER NOT NULL CHECK (measured BETWEEN 1 AND 400000000)
  ) STRICT`,
  sql`ALTER TABLE settings ADD COLUMN bulk_correction INTEGER NOT NULL DEFAULT 0
    CHECK (bulk_correction BETWEEN -31750 AND 31750)`,
];
