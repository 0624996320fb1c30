/** Adds the maker's own post to the settings: whose size classes she sees first. Frozen once landed. */
import { type Kysely, sql } from 'kysely';

export async function up(db: Kysely<unknown>): Promise<void> {
  await sql`ALTER TABLE settings ADD COLUMN post TEXT NOT NULL DEFAULT 'us'
    CHECK (post IN ('us', 'uk', 'canada', 'australia', 'germany', 'abroad'))`.execute(db);
}
