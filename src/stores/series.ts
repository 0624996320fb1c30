/**
 * Projects that belong together. Verbs: `addSeries(db, series)`, `seriesNamed(db, name)`, `listSeries(db)`,
 * `browseSeries(db, { from, limit })`, `readSeries(db, id)`, `editSeries(db, id, series)`.
 */
import type { Series, SeriesTold } from '#core/project/journal.ts';
import { type Database, transact } from './database.ts';

export type NewSeries = Omit<Series, 'id'>;

/** Undefined when another series has that name. */
export const addSeries = (db: Database, { name, note }: NewSeries): Promise<Series | undefined> =>
  db
    .insertInto('series')
    .values({ name, note })
    .onConflict((clash) => clash.column('name').doNothing())
    .returning(COLUMNS)
    .executeTakeFirst();

/** Begun where there is none of that name; one that was put away comes back. */
export function seriesNamed(db: Database, name: string): Promise<Series> {
  return transact(db, async (db) => {
    const added = await addSeries(db, { name, note: '' });
    if (added) return added;
    return db
      .updateTable('series')
      .set({ put_away_at: null })
      .where('name', '=', name)
      .returning(COLUMNS)
      .executeTakeFirstOrThrow();
  });
}

export const listSeries = (db: Database): Promise<Series[]> =>
  db.selectFrom('series').select(COLUMNS).where('put_away_at', 'is', null).orderBy('name').execute();

/** By name; `from` says how many to pass over. */
export const browseSeries = (
  db: Database,
  { from = 0, limit }: { readonly from?: number; readonly limit: number },
): Promise<SeriesTold[]> =>
  counted(db).where('put_away_at', 'is', null).orderBy('name').offset(from).limit(limit).execute();

export const readSeries = (db: Database, id: number): Promise<SeriesTold | undefined> =>
  counted(db).where('series.id', '=', id).executeTakeFirst();

/** Undefined where there is none, `taken` where another has that name: nothing is written then. */
export function editSeries(
  db: Database,
  id: number,
  { name, note }: NewSeries,
): Promise<Series | 'taken' | undefined> {
  return transact(db, async (db) => {
    const other = await db
      .selectFrom('series')
      .select('id')
      .where('name', '=', name)
      .where('id', '<>', id)
      .executeTakeFirst();
    if (other) return 'taken';
    return db
      .updateTable('series')
      .set({ name, note })
      .where('id', '=', id)
      .returning(COLUMNS)
      .executeTakeFirst();
  });
}

const COLUMNS = ['series.id', 'series.name', 'series.note'] as const;

const counted = (db: Database) =>
  db
    .selectFrom('series')
    .select(COLUMNS)
    .select((by) => [
      by
        .selectFrom('projects')
        .select((by) => by.fn.countAll<number>().as('count'))
        .whereRef('series_id', '=', 'series.id')
        .where('projects.put_away_at', 'is', null)
        .$asScalar()
        .$notNull()
        .as('projects'),
      by
        .selectFrom('envelopes')
        .innerJoin('projects', 'projects.id', 'envelopes.project_id')
        .select((by) => by.fn.countAll<number>().as('count'))
        .whereRef('series_id', '=', 'series.id')
        .where('projects.put_away_at', 'is', null)
        .where('envelopes.state', '=', 'made')
        .where((by) => by.or([by('cut_id', 'is not', null), by('kept', '=', 1)]))
        .$asScalar()
        .$notNull()
        .as('made'),
    ]);
