/**
 * The maker's own drawn cards. Verbs: `addCardSize(db, card)`, `listCardSizes(db)`, `readCardSize(db, id)`,
 * `editCardSize(db, id, card)`, `removeCardSize(db, id)`.
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
    .returningAll()
    .executeTakeFirstOrThrow();
}

export const listCardSizes = (db: Database): Promise<CardSize[]> =>
  db.selectFrom('card_sizes').selectAll().orderBy('id').execute();

export const readCardSize = (db: Database, id: number): Promise<CardSize | undefined> =>
  db.selectFrom('card_sizes').selectAll().where('id', '=', id).executeTakeFirst();

export const editCardSize = (
  db: Database,
  id: number,
  { name, width, height, bulk }: NewCardSize,
): Promise<CardSize | undefined> =>
  db
    .updateTable('card_sizes')
    .set({ name, width, height, bulk })
    .where('id', '=', id)
    .returningAll()
    .executeTakeFirst();

/** Whether there was one to remove. */
export async function removeCardSize(db: Database, id: number): Promise<boolean> {
  const { numDeletedRows } = await db.deleteFrom('card_sizes').where('id', '=', id).executeTakeFirst();
  return numDeletedRows > 0n;
}
