/** A design's own low mark, what a pad cost, and what the year's sums are read by. Frozen once landed. */
import { type Kysely, sql } from 'kysely';

export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of [...columns, ...indexes]) await statement.execute(db);
}

/** `price` in hundredths of the money that `currency` is the sign of, for so many sheets. */
const columns = [
  sql`ALTER TABLE designs ADD COLUMN own_low_mark INTEGER CHECK (own_low_mark >= 0)`,
  sql`ALTER TABLE pads ADD COLUMN price INTEGER CHECK (price BETWEEN 0 AND 100000000)`,
  sql`ALTER TABLE pads ADD COLUMN price_sheets INTEGER CHECK ((price IS NULL) = (price_sheets IS NULL)
    AND (price_sheets IS NULL OR price_sheets BETWEEN 1 AND 10000))`,
  sql`ALTER TABLE settings ADD COLUMN currency TEXT NOT NULL DEFAULT '' CHECK (length(currency) <= 4)`,
];

const indexes = [
  sql`CREATE INDEX movements_by_day ON movements (at, kind)`,
  sql`CREATE INDEX movements_of_use ON movements (design_id, at) WHERE kind = 'cut'`,
  sql`CREATE INDEX offcuts_by_age ON offcuts (id) WHERE count > 0`,
  sql`CREATE INDEX cuts_by_day ON cuts (at)`,
  sql`CREATE INDEX outcomes_by_day ON outcomes (at)`,
  sql`CREATE INDEX spoiled_parts_by_day ON spoiled_parts (at)`,
];
