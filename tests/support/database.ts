/** A fresh data file in memory for one test. Knows no rows. */
import { onTestFinished } from 'vitest';
import { type Database, migrate, openDatabase } from '#stores/database.ts';

/** Migrated and empty; closed when the test ends. */
export async function emptyDatabase(): Promise<Database> {
  const db = openDatabase(':memory:');
  onTestFinished(() => db.destroy());
  await migrate(db);
  return db;
}
