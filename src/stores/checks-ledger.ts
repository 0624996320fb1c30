/** The ledger's invariants: sums, histories, reversals, codes, swatches. Reads rows only; shares no query with the verbs. */
import { sql } from 'kysely';
import { pencilCode } from '#shared/ids.ts';
import { unreadable } from '#shared/schemas/stored.ts';
import type { Database } from './database.ts';

export async function checkLedger(db: Database): Promise<string[]> {
  const failures: string[] = [];
  for (const [words, query] of RULES) {
    const { rows } = await query.execute(db);
    failures.push(...rows.map(({ id }) => `${words}: ${id}`));
  }
  return [...failures, ...(await checkCodes(db)), ...(await checkSwatches(db))];
}

/** Each query finds the rows that break the rule. */
const RULES = [
  [
    'sheets that are not the sum of their movements, design',
    sql<{ id: number }>`SELECT id FROM designs WHERE sheets <> (
      SELECT coalesce(sum(delta), 0) FROM movements WHERE design_id = designs.id AND offcut_id IS NULL)`,
  ],
  [
    'a count that is not the sum of its movements, offcut',
    sql<{ id: number }>`SELECT id FROM offcuts WHERE count <> (
      SELECT coalesce(sum(delta), 0) FROM movements WHERE offcut_id = offcuts.id)`,
  ],
  [
    'fewer than none at some time, movement',
    sql<{ id: number }>`SELECT id FROM (
      SELECT id, sum(delta) OVER (PARTITION BY design_id, offcut_id ORDER BY id) AS balance FROM movements)
      WHERE balance < 0`,
  ],
  [
    'an offcut of another design, movement',
    sql<{ id: number }>`SELECT movements.id FROM movements JOIN offcuts ON offcuts.id = offcut_id
      WHERE movements.design_id <> offcuts.design_id`,
  ],
  [
    'a reversal that does not mirror what it reverses, movement',
    sql<{
      id: number;
    }>`SELECT undoing.id FROM movements AS undoing JOIN movements AS line ON line.id = undoing.reverses
      WHERE undoing.delta <> -line.delta OR undoing.design_id <> line.design_id
        OR undoing.offcut_id IS NOT line.offcut_id OR undoing.cut_id IS NOT line.cut_id
        OR line.reverses IS NOT NULL OR undoing.id < line.id`,
  ],
  [
    'paper for a cut of another project, movement',
    sql<{ id: number }>`SELECT movements.id FROM movements JOIN cuts ON cuts.id = cut_id
      WHERE movements.project_id IS NOT cuts.project_id`,
  ],
  [
    'a cut whose lines are not undone as it is, cut',
    sql<{ id: number }>`SELECT DISTINCT cuts.id FROM cuts JOIN movements AS line ON line.cut_id = cuts.id
      LEFT JOIN movements AS undoing ON undoing.reverses = line.id
      WHERE line.reverses IS NULL AND (undoing.id IS NULL) <> (cuts.undone_at IS NULL)`,
  ],
] as const;

async function checkCodes(db: Database): Promise<string[]> {
  const rows = await db.selectFrom('offcuts').select(['id', 'code']).execute();
  return rows
    .filter(({ id, code }) => code !== pencilCode(id))
    .map(({ id }) => `a code that is not its own, offcut: ${id}`);
}

async function checkSwatches(db: Database): Promise<string[]> {
  const rows = await db.selectFrom('designs').select(['id', 'swatch']).execute();
  return rows
    .filter(({ swatch }) => unreadable('swatch', swatch) !== undefined)
    .map(({ id }) => `a swatch that cannot be read, design: ${id}`);
}
