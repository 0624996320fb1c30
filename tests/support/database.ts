/** A fresh data file in memory for one test. Knows no rows. */
import { onTestFinished } from 'vitest';
import type { Database } from '#stores/database.ts';
import { freshDatabase } from './fresh-database.ts';

/** Migrated and empty; closed when the test ends. */
export async function emptyDatabase(): Promise<Database> {
  const db = await freshDatabase();
  onTestFinished(() => db.destroy());
  return db;
}
