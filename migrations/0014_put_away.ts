/** What is put away or deleted leaves the lists and keeps its row; and envelopes written down without paper. Frozen once landed. */
import { type Kysely, sql } from 'kysely';

export async function up(db: Kysely<unknown>): Promise<void> {
  for (const table of TABLES)
    await sql`ALTER TABLE ${sql.table(table)} ADD COLUMN put_away_at TEXT
      CHECK (put_away_at LIKE '____-__-__T__:__:%Z')`.execute(db);
  await sql`ALTER TABLE envelopes ADD COLUMN kept INTEGER NOT NULL DEFAULT 0
    CHECK (kept = 0 OR kept = 1 AND cut_id IS NULL AND state = 'made')`.execute(db);
  for (const statement of [projectsAway, ...chosenStays]) await statement.execute(db);
}

const TABLES = ['projects', 'pads', 'designs', 'card_sizes', 'notchers', 'series'];

const projectsAway = sql`CREATE INDEX projects_put_away ON projects (put_away_at) WHERE put_away_at IS NOT NULL`;

const chosenStays = [
  sql`CREATE TRIGGER notchers_in_use_stay BEFORE UPDATE OF put_away_at ON notchers
    WHEN NEW.put_away_at IS NOT NULL AND EXISTS (SELECT 1 FROM settings WHERE notcher_id = NEW.id)
    BEGIN SELECT RAISE(ABORT, 'the tool in use is not put away'); END`,
  sql`CREATE TRIGGER notchers_put_away_are_not_used BEFORE UPDATE OF notcher_id ON settings
    WHEN EXISTS (SELECT 1 FROM notchers WHERE id = NEW.notcher_id AND put_away_at IS NOT NULL)
    BEGIN SELECT RAISE(ABORT, 'the tool in use is not put away'); END`,
];
