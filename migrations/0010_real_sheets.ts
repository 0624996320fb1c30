/** What a pad's sheets really measure and the strip of them that can't be used, where she says so. Frozen once landed. */
import { type Kysely, sql } from 'kysely';

export async function up(db: Kysely<unknown>): Promise<void> {
  for (const column of columns) await sql`ALTER TABLE pads ADD COLUMN ${column}`.execute(db);
}

/** `width` and `height` stay those it is sold by; a strip leaves some of the side that it takes from. */
const columns = [
  sql`measured_width INTEGER CHECK (measured_width BETWEEN 1 AND 400000000)`,
  sql`measured_height INTEGER CHECK (measured_height BETWEEN 1 AND 400000000)`,
  sql`strip_edge TEXT CHECK (strip_edge IN ('top', 'right', 'bottom', 'left'))`,
  sql`strip_depth INTEGER CHECK ((strip_edge IS NULL) = (strip_depth IS NULL) AND (strip_depth IS NULL OR
    strip_depth BETWEEN 1 AND -1 + CASE WHEN strip_edge IN ('left', 'right')
      THEN coalesce(measured_width, width) ELSE coalesce(measured_height, height) END))`,
];
