/** Remembers with each envelope which start it was made with, once a trial has changed it. Frozen once landed. */
import { type Kysely, sql } from 'kysely';

export async function up(db: Kysely<unknown>): Promise<void> {
  await sql`ALTER TABLE envelopes ADD COLUMN start_in_use INTEGER CHECK (start_in_use > 0)`.execute(db);
}
