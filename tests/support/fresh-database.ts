/** A migrated and empty data file, made once in a process and copied for whoever wants one. Knows no rows. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import { closeDatabase, type Database, migrate, openDatabase } from '#stores/database.ts';

let made: Promise<Buffer> | undefined;

/** The bytes of the file; migrating takes some thirty times longer than copying. */
export function freshFile(): Promise<Buffer> {
  made ??= makeFile();
  return made;
}

export const freshDatabase = async (): Promise<Database> => openDatabase(await freshFile());

async function makeFile(): Promise<Buffer> {
  const folder = mkdtempSync(join(tmpdir(), 'creasebook-fresh-'));
  const file = join(folder, 'creasebook.db');
  const db = openDatabase(file);
  await migrate(db);
  // What writes ahead keeps a second file, and can't be opened from memory.
  await sql`PRAGMA journal_mode = DELETE`.execute(db);
  await closeDatabase(db);
  const bytes = readFileSync(file);
  rmSync(folder, { recursive: true });
  return bytes;
}
