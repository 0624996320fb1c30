/** The index by which the shelf is searched, shorter side first; it carries all that ranking asks. Frozen once landed. */
import { type Kysely, sql } from 'kysely';

export async function up(db: Kysely<unknown>): Promise<void> {
  await sql`DROP INDEX offcuts_on_shelf`.execute(db);
  await sql`CREATE INDEX offcuts_on_shelf
    ON offcuts (min(width, height), width, height, design_id, border, count) WHERE count > 0`.execute(db);
}
