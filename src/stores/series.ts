/** Projects that belong together. Verbs: `addSeries(db, series)`, `listSeries(db)`, `readSeries(db, id)`, `editSeries(db, id, series)`. */
import type { Series } from '#core/project/journal.ts';
import type { Database } from './database.ts';

export type NewSeries = Omit<Series, 'id'>;

/** Undefined when another series has that name. */
export const addSeries = (db: Database, { name, note }: NewSeries): Promise<Series | undefined> =>
  db
    .insertInto('series')
    .values({ name, note })
    .onConflict((clash) => clash.column('name').doNothing())
    .returningAll()
    .executeTakeFirst();

export const listSeries = (db: Database): Promise<Series[]> =>
  db.selectFrom('series').selectAll().orderBy('name').execute();

export const readSeries = (db: Database, id: number): Promise<Series | undefined> =>
  db.selectFrom('series').selectAll().where('id', '=', id).executeTakeFirst();

/** The name stays as it is when another series has it. */
export const editSeries = (
  db: Database,
  id: number,
  { name, note }: NewSeries,
): Promise<Series | undefined> =>
  db
    .updateTable('series')
    .set((by) => ({
      note,
      name: by
        .case()
        .when(
          by.exists(
            by
              .selectFrom('series as other')
              .select('other.id')
              .where('other.name', '=', name)
              .where('other.id', '<>', id),
          ),
        )
        .then(by.ref('series.name'))
        .else(name)
        .end(),
    }))
    .where('id', '=', id)
    .returningAll()
    .executeTakeFirst();
