/**
 * Finished cards measured for their bulk. Verbs: `addBulk(db, bulk, at)`, `listBulks(db)`, the newest first, and
 * `removeBulk(db, id)`.
 */
import { BULKS_AT_MOST, type BulkMeasured } from '#core/paper/bulk-measured.ts';
import type { Database } from './database.ts';

interface StoredBulk extends BulkMeasured {
  readonly id: number;
  readonly at: string;
}

export async function addBulk(
  db: Database,
  { least, most, measured }: BulkMeasured,
  at: string,
): Promise<void> {
  await db.insertInto('bulks').values({ at, least, most, measured }).execute();
}

/** Those that still count. */
export const listBulks = (db: Database): Promise<StoredBulk[]> =>
  db.selectFrom('bulks').selectAll().orderBy('id', 'desc').limit(BULKS_AT_MOST).execute();

/** A slip of the ruler or of the pen. */
export async function removeBulk(db: Database, id: number): Promise<void> {
  await db.deleteFrom('bulks').where('id', '=', id).execute();
}
