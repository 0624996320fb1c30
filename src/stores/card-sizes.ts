/**
 * The maker's own drawn cards. Verbs: `addCardSize(db, card)`, `listCardSizes(db)`, `readCardSize(db, id)`,
 * `editCardSize(db, id, card)`. They are put away in put-away.ts.
 */
import type { CardSize } from '#core/project/journal.ts';
import type { Database } from './database.ts';

export type NewCardSize = Omit<CardSize, 'id'>;

export async function addCardSize(
  db: Database,
  { name, width, height, bulk }: NewCardSize,
): Promise<CardSize> {
  return db
    .insertInto('card_sizes')
    .values({ name, width, height, bulk })
    .returning(COLUMNS)
    .executeTakeFirstOrThrow();
}

export const listCardSizes = (db: Database): Promise<CardSize[]> =>
  db.selectFrom('card_sizes').select(COLUMNS).where('put_away_at', 'is', null).orderBy('id').execute();

export const readCardSize = (db: Database, id: number): Promise<CardSize | undefined> =>
  db.selectFrom('card_sizes').select(COLUMNS).where('id', '=', id).executeTakeFirst();

export const editCardSize = (
  db: Database,
  id: number,
  { name, width, height, bulk }: NewCardSize,
): Promise<CardSize | undefined> =>
  db
    .updateTable('card_sizes')
    .set({ name, width, height, bulk })
    .where('id', '=', id)
    .returning(COLUMNS)
    .executeTakeFirst();

const COLUMNS = ['id', 'name', 'width', 'height', 'bulk'] as const;
