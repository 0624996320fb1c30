/**
 * Indexes for a long shelf: offcuts by size, by place and beside those alike; designs by name; what is put away; pockets
 * of a tool, the newest first. Frozen once landed.
 */
import { type Kysely, sql } from 'kysely';

export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of statements) await statement.execute(db);
}

const statements = [
  sql`CREATE INDEX offcuts_alike ON offcuts (design_id, width, height, border, id) WHERE count > 0`,
  sql`CREATE INDEX offcuts_by_area ON offcuts (width * height, id) WHERE count > 0`,
  sql`CREATE INDEX offcuts_by_place ON offcuts (place, width * height, id) WHERE count > 0`,
  sql`CREATE INDEX designs_by_name ON designs (name COLLATE NOCASE, id)`,
  sql`CREATE INDEX designs_put_away ON designs (id) WHERE put_away_at IS NOT NULL`,
  sql`CREATE INDEX pads_put_away ON pads (id) WHERE put_away_at IS NOT NULL`,
  sql`CREATE INDEX pads_of_kind ON pads (kind)`,
  sql`DROP INDEX outcomes_of_notcher`,
  sql`CREATE INDEX outcomes_of_notcher ON outcomes (notcher_id, at, envelope_id)`,
];
