/**
 * The stash ledger and the rules that hold whatever the code does: lines are only ever added, every count is the sum
 * of its movements, none goes below zero, a movement is reversed once and exactly. Frozen once landed.
 */
import { type Kysely, sql } from 'kysely';

export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of [movements, ...indexes, ...appendOnly, ...sound, ...counts])
    await statement.execute(db);
}

/** `offcut_id` NULL moves sheets of the design. A count that changes nothing is still a line: it was looked at. */
const movements = sql`CREATE TABLE movements (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  at TEXT NOT NULL CHECK (at LIKE '____-__-__T__:__:%Z'),
  kind TEXT NOT NULL CHECK (
    kind IN ('bought', 'counted', 'cut', 'left over', 'spoiled', 'binned', 'put back', 'withdrawn')),
  design_id INTEGER NOT NULL REFERENCES designs (id),
  offcut_id INTEGER REFERENCES offcuts (id),
  delta INTEGER NOT NULL CHECK (delta BETWEEN -1000000 AND 1000000),
  project_id INTEGER REFERENCES projects (id),
  cut_id INTEGER REFERENCES cuts (id),
  reverses INTEGER UNIQUE REFERENCES movements (id),
  note TEXT NOT NULL,
  CHECK (CASE WHEN kind IN ('bought', 'left over', 'put back') THEN delta > 0
              WHEN kind IN ('cut', 'spoiled', 'binned', 'withdrawn') THEN delta < 0 ELSE 1 END),
  CHECK ((kind IN ('put back', 'withdrawn')) = (reverses IS NOT NULL)),
  CHECK (kind NOT IN ('cut', 'left over') OR cut_id IS NOT NULL),
  CHECK (kind <> 'left over' OR offcut_id IS NOT NULL)
) STRICT`;

const indexes = [
  sql`CREATE INDEX movements_of_offcut ON movements (offcut_id, delta) WHERE offcut_id IS NOT NULL`,
  sql`CREATE INDEX movements_of_sheets ON movements (design_id, delta) WHERE offcut_id IS NULL`,
  sql`CREATE INDEX movements_of_cut ON movements (cut_id) WHERE cut_id IS NOT NULL`,
];

/** The last one stops INSERT OR REPLACE, which removes a line without firing DELETE triggers. */
const appendOnly = [
  sql`CREATE TRIGGER movements_never_change BEFORE UPDATE ON movements
    BEGIN SELECT RAISE(ABORT, 'the ledger is append-only'); END`,
  sql`CREATE TRIGGER movements_never_go BEFORE DELETE ON movements
    BEGIN SELECT RAISE(ABORT, 'the ledger is append-only'); END`,
  sql`CREATE TRIGGER movements_never_replaced BEFORE INSERT ON movements
    WHEN EXISTS (SELECT 1 FROM movements WHERE id = NEW.id OR reverses = NEW.reverses)
    BEGIN SELECT RAISE(ABORT, 'the ledger is append-only'); END`,
];

const sound = [
  sql`CREATE TRIGGER movements_name_their_design BEFORE INSERT ON movements
    WHEN NEW.offcut_id IS NOT NULL
      AND NEW.design_id IS NOT (SELECT design_id FROM offcuts WHERE id = NEW.offcut_id)
    BEGIN SELECT RAISE(ABORT, 'the offcut is of another design'); END`,
  sql`CREATE TRIGGER movements_reverse_exactly BEFORE INSERT ON movements
    WHEN NEW.reverses IS NOT NULL AND NOT EXISTS (
      SELECT 1 FROM movements WHERE id = NEW.reverses AND reverses IS NULL AND delta = -NEW.delta
        AND design_id = NEW.design_id AND offcut_id IS NEW.offcut_id AND cut_id IS NEW.cut_id)
    BEGIN SELECT RAISE(ABORT, 'a reversal must mirror the movement it reverses'); END`,
  sql`CREATE TRIGGER offcuts_keep_their_design BEFORE UPDATE OF design_id ON offcuts
    WHEN NEW.design_id <> OLD.design_id
    BEGIN SELECT RAISE(ABORT, 'an offcut keeps its design'); END`,
  sql`CREATE TRIGGER cuts_never_go BEFORE DELETE ON cuts
    BEGIN SELECT RAISE(ABORT, 'a cut is undone, not removed'); END`,
  sql`CREATE TRIGGER cuts_are_undone_once BEFORE UPDATE ON cuts
    WHEN OLD.undone_at IS NOT NULL OR NEW.pieces <> OLD.pieces OR NEW.project_id <> OLD.project_id
    BEGIN SELECT RAISE(ABORT, 'a cut is undone once and never changed'); END`,
];

const counts = [
  sql`CREATE TRIGGER movements_count_offcuts AFTER INSERT ON movements WHEN NEW.offcut_id IS NOT NULL
    BEGIN UPDATE offcuts SET count = count + NEW.delta WHERE id = NEW.offcut_id; END`,
  sql`CREATE TRIGGER movements_count_sheets AFTER INSERT ON movements WHEN NEW.offcut_id IS NULL
    BEGIN UPDATE designs SET sheets = sheets + NEW.delta WHERE id = NEW.design_id; END`,
  ...(['INSERT', 'UPDATE OF count'] as const).map(
    (event) => sql`CREATE TRIGGER ${sql.ref(`offcuts_are_counted_on_${event.slice(0, 6).toLowerCase()}`)}
    AFTER ${sql.raw(event)} ON offcuts
    WHEN NEW.count <> (SELECT coalesce(sum(delta), 0) FROM movements WHERE offcut_id = NEW.id)
    BEGIN SELECT RAISE(ABORT, 'a count is the sum of its movements'); END`,
  ),
  ...(['INSERT', 'UPDATE OF sheets'] as const).map(
    (event) => sql`CREATE TRIGGER ${sql.ref(`sheets_are_counted_on_${event.slice(0, 6).toLowerCase()}`)}
    AFTER ${sql.raw(event)} ON designs
    WHEN NEW.sheets <> (SELECT coalesce(sum(delta), 0) FROM movements
      WHERE design_id = NEW.id AND offcut_id IS NULL)
    BEGIN SELECT RAISE(ABORT, 'a count is the sum of its movements'); END`,
  ),
];
