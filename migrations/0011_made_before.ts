/** Finds a card made before by its size, and remembers which project another was made again from. Frozen once landed. */
import { type Kysely, sql } from 'kysely';

export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of [origin, madeAgain, byCard]) await statement.execute(db);
}

const origin = sql`ALTER TABLE projects ADD COLUMN made_again_from INTEGER
  REFERENCES projects (id) ON DELETE SET NULL`;

const madeAgain = sql`CREATE INDEX projects_made_again ON projects (made_again_from)
  WHERE made_again_from IS NOT NULL`;

/** Shorter side first: a card lies either way. */
const byCard = sql`CREATE INDEX projects_by_card
  ON projects (min(card_width, card_height), max(card_width, card_height), card_bulk)
  WHERE card_width IS NOT NULL`;
