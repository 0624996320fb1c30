/** What lies on the shelf: pads, their designs, offcuts. Counts are guarded by the ledger. Frozen once landed. */
import { type Kysely, sql } from 'kysely';

export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of [pads, designs, offcuts, ...indexes]) await statement.execute(db);
}

const pads = sql`CREATE TABLE pads (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  name TEXT NOT NULL CHECK (length(trim(name)) > 0),
  kind TEXT NOT NULL CHECK (kind IN ('patterned', 'cardstock', 'plain', 'kraft', 'vellum', 'handmade')),
  width INTEGER NOT NULL CHECK (width BETWEEN 1 AND 400000000),
  height INTEGER NOT NULL CHECK (height BETWEEN 1 AND 400000000),
  grammage REAL CHECK (grammage > 0 AND grammage < 10000),
  low_mark INTEGER NOT NULL CHECK (low_mark >= 0),
  source TEXT NOT NULL,
  note TEXT NOT NULL
) STRICT`;

/** `height` of a pad's sheet runs along the print; a border lies along the bottom edge. */
const designs = sql`CREATE TABLE designs (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  pad_id INTEGER NOT NULL REFERENCES pads (id),
  name TEXT NOT NULL CHECK (length(trim(name)) > 0),
  direction TEXT NOT NULL CHECK (direction IN ('any way', 'upright', 'one edge')),
  border INTEGER CHECK (border > 0),
  double_sided INTEGER NOT NULL CHECK (double_sided IN (0, 1)),
  swatch TEXT NOT NULL CHECK (json_valid(swatch)),
  sheets INTEGER NOT NULL DEFAULT 0 CHECK (sheets >= 0),
  CHECK ((direction = 'one edge') = (border IS NOT NULL))
) STRICT`;

const offcuts = sql`CREATE TABLE offcuts (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  design_id INTEGER NOT NULL REFERENCES designs (id),
  width INTEGER NOT NULL CHECK (width BETWEEN 1 AND 400000000),
  height INTEGER NOT NULL CHECK (height BETWEEN 1 AND 400000000),
  border INTEGER NOT NULL CHECK (border IN (0, 1)),
  code TEXT NOT NULL UNIQUE CHECK (length(code) BETWEEN 2 AND 8),
  place TEXT NOT NULL,
  note TEXT NOT NULL,
  count INTEGER NOT NULL DEFAULT 0 CHECK (count >= 0)
) STRICT`;

const indexes = [
  sql`CREATE INDEX designs_of_pad ON designs (pad_id)`,
  sql`CREATE INDEX offcuts_of_design ON offcuts (design_id)`,
  sql`CREATE INDEX offcuts_on_shelf ON offcuts (width, height, border, design_id) WHERE count > 0`,
];
