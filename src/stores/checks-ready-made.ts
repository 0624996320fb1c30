/** The invariants of ready-made envelopes' ledger. Reads rows only; shares no query with the verbs. */
import { sql } from 'kysely';
import type { Database } from './database.ts';

export async function checkReadyMade(db: Database): Promise<string[]> {
  const failures: string[] = [];
  for (const [words, query] of RULES) {
    const { rows } = await query.execute(db);
    failures.push(...rows.map(({ id }) => `${words}: ${id}`));
  }
  return failures;
}

/** Each query finds the rows that break the rule. */
const RULES = [
  [
    'a count that is not the sum of its movements, ready-made envelope',
    sql<{ id: number }>`SELECT id FROM ready_made WHERE count <> (
      SELECT coalesce(sum(delta), 0) FROM ready_made_movements WHERE ready_made_id = ready_made.id)`,
  ],
  [
    'fewer than none at some time, ready-made movement',
    sql<{ id: number }>`SELECT id FROM (
      SELECT id, sum(delta) OVER (PARTITION BY ready_made_id ORDER BY id) AS balance FROM ready_made_movements)
      WHERE balance < 0`,
  ],
] as const;
