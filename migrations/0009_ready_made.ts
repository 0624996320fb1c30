/**
 * Ready-made envelopes and their own ledger, under the rules of the stash's: lines are only ever added, every count is
 * the sum of its movements, none goes below zero. A mistake is put right by counting again. Frozen once landed.
 */
import { type Kysely, sql } from 'kysely';

export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of [readyMade, movements, ...indexes, ...appendOnly, ...counts])
    await statement.execute(db);
}

/** Width and height are those it is sold by, lying with its opening on a long side or not. */
const readyMade = sql`CREATE TABLE ready_made (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  name TEXT NOT NULL CHECK (length(trim(name)) > 0),
  width INTEGER NOT NULL CHECK (width BETWEEN 1 AND 400000000),
  height INTEGER NOT NULL CHECK (height BETWEEN 1 AND 400000000),
  note TEXT NOT NULL,
  count INTEGER NOT NULL DEFAULT 0 CHECK (count >= 0)
) STRICT`;

/** A count that changes nothing is still a line: it was looked at. */
const movements = sql`CREATE TABLE ready_made_movements (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  at TEXT NOT NULL CHECK (at LIKE '____-__-__T__:__:%Z'),
  kind TEXT NOT NULL CHECK (kind IN ('bought', 'counted', 'used')),
  ready_made_id INTEGER NOT NULL REFERENCES ready_made (id),
  delta INTEGER NOT NULL CHECK (delta BETWEEN -1000000 AND 1000000),
  project_id INTEGER REFERENCES projects (id),
  CHECK (CASE kind WHEN 'bought' THEN delta > 0 WHEN 'used' THEN delta < 0 ELSE 1 END),
  CHECK (project_id IS NULL OR kind = 'used')
) STRICT`;

const indexes = [
  sql`CREATE INDEX ready_made_movements_of_one ON ready_made_movements (ready_made_id, delta)`,
  sql`CREATE INDEX ready_made_movements_of_project ON ready_made_movements (project_id)
    WHERE project_id IS NOT NULL`,
];

/** The last one stops INSERT OR REPLACE, which removes a line without firing DELETE triggers. */
const appendOnly = [
  sql`CREATE TRIGGER ready_made_movements_never_change BEFORE UPDATE ON ready_made_movements
    BEGIN SELECT RAISE(ABORT, 'the ledger is append-only'); END`,
  sql`CREATE TRIGGER ready_made_movements_never_go BEFORE DELETE ON ready_made_movements
    BEGIN SELECT RAISE(ABORT, 'the ledger is append-only'); END`,
  sql`CREATE TRIGGER ready_made_movements_never_replaced BEFORE INSERT ON ready_made_movements
    WHEN EXISTS (SELECT 1 FROM ready_made_movements WHERE id = NEW.id)
    BEGIN SELECT RAISE(ABORT, 'the ledger is append-only'); END`,
];

const counts = [
  sql`CREATE TRIGGER ready_made_movements_count AFTER INSERT ON ready_made_movements
    BEGIN UPDATE ready_made SET count = count + NEW.delta WHERE id = NEW.ready_made_id; END`,
  ...(['INSERT', 'UPDATE OF count'] as const).map(
    (event) => sql`CREATE TRIGGER ${sql.ref(`ready_made_are_counted_on_${event.slice(0, 6).toLowerCase()}`)}
    AFTER ${sql.raw(event)} ON ready_made
    WHEN NEW.count <> (SELECT coalesce(sum(delta), 0) FROM ready_made_movements WHERE ready_made_id = NEW.id)
    BEGIN SELECT RAISE(ABORT, 'a count is the sum of its movements'); END`,
  ),
];
