/** The maker's settings, tools and drawn cards, and the forms already sent. Frozen once landed. */
import { type Kysely, sql } from 'kysely';

export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of [notchers, settings, cardSizes, submissions]) await statement.execute(db);
  await sql`INSERT INTO notchers (id, name, kind, graduation, largest_sheet, turning)
    VALUES (1, 'My notcher', 'notcher', 127000, 12192000, 'clockwise')`.execute(db);
  await sql`INSERT INTO settings (id, unit, step, keep_at_least, longest_cut, wanted_fit, notcher_id)
    VALUES (1, 'in', 16, 762000, 12192000, 'easy', 1)`.execute(db);
}

/** An inset or zero offset that is NULL is learned from outcomes later than `learning_since`. */
const notchers = sql`CREATE TABLE notchers (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  name TEXT NOT NULL CHECK (length(trim(name)) > 0),
  kind TEXT NOT NULL CHECK (kind IN ('notcher', 'ruler')),
  pinned_inset INTEGER CHECK (pinned_inset BETWEEN 0 AND 400000000),
  pinned_zero_offset INTEGER CHECK (pinned_zero_offset BETWEEN -400000000 AND 400000000),
  learning_since TEXT CHECK (learning_since LIKE '____-__-__T__:__:%Z'),
  graduation INTEGER NOT NULL CHECK (graduation > 0),
  largest_sheet INTEGER NOT NULL CHECK (largest_sheet BETWEEN 1 AND 400000000),
  turning TEXT NOT NULL CHECK (turning IN ('clockwise', 'anticlockwise'))
) STRICT`;

const settings = sql`CREATE TABLE settings (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  unit TEXT NOT NULL CHECK (unit IN ('in', 'mm')),
  step INTEGER NOT NULL CHECK (step IN (8, 16, 32)),
  keep_at_least INTEGER NOT NULL CHECK (keep_at_least BETWEEN 1 AND 400000000),
  longest_cut INTEGER NOT NULL CHECK (longest_cut BETWEEN 1 AND 400000000),
  wanted_fit TEXT NOT NULL CHECK (wanted_fit IN ('snug', 'easy', 'loose')),
  notcher_id INTEGER NOT NULL REFERENCES notchers (id)
) STRICT`;

const cardSizes = sql`CREATE TABLE card_sizes (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  name TEXT NOT NULL CHECK (length(trim(name)) > 0),
  width INTEGER NOT NULL CHECK (width BETWEEN 1 AND 400000000),
  height INTEGER NOT NULL CHECK (height BETWEEN 1 AND 400000000),
  bulk INTEGER NOT NULL CHECK (bulk BETWEEN 0 AND 400000000)
) STRICT`;

const submissions = sql`CREATE TABLE submissions (
  token TEXT PRIMARY KEY CHECK (length(token) BETWEEN 8 AND 100),
  at TEXT NOT NULL CHECK (at LIKE '____-__-__T__:__:%Z'),
  location TEXT NOT NULL
) STRICT, WITHOUT ROWID`;
