/** Cutting plans as they were asked for and found, with the steps ticked off and the parts spoiled. Frozen once landed. */
import { type Kysely, sql } from 'kysely';

export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of [plans, planTicks, spoiledParts, ...indexes, ...sound]) await statement.execute(db);
}

/**
 * `batch` is what the maker asked for; `cutting` the order and pieces that the planner was given. Neither `plan` nor
 * `fault` is there while it is looked for.
 */
const plans = sql`CREATE TABLE plans (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  project_id INTEGER NOT NULL REFERENCES projects (id),
  instead_of INTEGER REFERENCES plans (id),
  asked_at TEXT NOT NULL CHECK (asked_at LIKE '____-__-__T__:__:%Z'),
  trial INTEGER NOT NULL CHECK (trial IN (0, 1)),
  batch TEXT NOT NULL CHECK (json_valid(batch)),
  cutting TEXT NOT NULL CHECK (json_valid(cutting)),
  plan TEXT CHECK (json_valid(plan)),
  fault TEXT CHECK (length(fault) > 0),
  cut_id INTEGER UNIQUE REFERENCES cuts (id),
  CHECK (plan IS NULL OR fault IS NULL),
  CHECK (cut_id IS NULL OR plan IS NOT NULL),
  CHECK (instead_of IS NULL OR instead_of < id)
) STRICT`;

/** A step is the number of a setting on the cut sheet, from 0. */
const planTicks = sql`CREATE TABLE plan_ticks (
  plan_id INTEGER NOT NULL REFERENCES plans (id),
  step INTEGER NOT NULL CHECK (step BETWEEN 0 AND 9999),
  PRIMARY KEY (plan_id, step)
) STRICT, WITHOUT ROWID`;

/** A part that was cut and cannot be used; envelopes have a record of their own. */
const spoiledParts = sql`CREATE TABLE spoiled_parts (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  plan_id INTEGER NOT NULL REFERENCES plans (id),
  part TEXT NOT NULL CHECK (length(trim(part)) > 0),
  at TEXT NOT NULL CHECK (at LIKE '____-__-__T__:__:%Z'),
  wrong TEXT NOT NULL CHECK (length(trim(wrong)) > 0)
) STRICT`;

const indexes = [
  sql`CREATE INDEX plans_of_project ON plans (project_id)`,
  sql`CREATE INDEX spoiled_parts_of_plan ON spoiled_parts (plan_id)`,
];

const sound = [
  sql`CREATE TRIGGER plans_never_change BEFORE UPDATE ON plans
    WHEN NEW.cutting <> OLD.cutting OR NEW.batch <> OLD.batch OR NEW.project_id <> OLD.project_id
      OR NEW.plan IS NOT OLD.plan AND OLD.plan IS NOT NULL
    BEGIN SELECT RAISE(ABORT, 'a plan is made once and never changed'); END`,
  sql`CREATE TRIGGER plans_are_cut_for_their_project BEFORE UPDATE OF cut_id ON plans
    WHEN NEW.cut_id IS NOT NULL
      AND NEW.project_id IS NOT (SELECT project_id FROM cuts WHERE id = NEW.cut_id)
    BEGIN SELECT RAISE(ABORT, 'the cut is of another project'); END`,
];
