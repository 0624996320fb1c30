/** How many sets are finished, and how many cards still wait for an envelope. Verb: `tallySets(db)`. */
import { sql } from 'kysely';
import type { Database } from './database.ts';

export interface SetTally {
  /** Envelopes made, and bought ones taken for a project. */
  readonly finished: number;
  /** Cards of projects begun that have neither yet; an idea promises no card. */
  readonly waiting: number;
}

export async function tallySets(db: Database): Promise<SetTally> {
  const { rows } = await sql<SetTally>`
    SELECT coalesce(sum(have), 0) AS finished,
      coalesce(sum(CASE WHEN begun THEN max(quantity - have, 0) ELSE 0 END), 0) AS waiting
    FROM (
      SELECT quantity, state IN ('planned', 'cut') AND card_width IS NOT NULL AND put_away_at IS NULL AS begun,
        (SELECT count(*) FROM envelopes
          WHERE project_id = projects.id AND envelopes.state = 'made' AND (cut_id IS NOT NULL OR kept = 1))
        - (SELECT coalesce(sum(delta), 0) FROM ready_made_movements WHERE project_id = projects.id) AS have
      FROM projects)`.execute(db);
  return rows[0]!;
}
