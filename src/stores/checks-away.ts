/** The invariants of what is put away and of envelopes kept without paper. Reads rows only. */
import { sql } from 'kysely';
import type { Database } from './database.ts';

export async function checkAway(db: Database): Promise<string[]> {
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
    'the tool in use is put away, tool',
    sql<{ id: number }>`SELECT id FROM notchers
      WHERE put_away_at IS NOT NULL AND id IN (SELECT notcher_id FROM settings)`,
  ],
  [
    'kept without paper, yet from a cut or not made, envelope',
    sql<{ id: number }>`SELECT id FROM envelopes
      WHERE kept = 1 AND (cut_id IS NOT NULL OR state <> 'made')`,
  ],
] as const;
