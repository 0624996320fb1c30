/**
 * What lies where a book should lie, found out without changing a byte. Verb: `stateOf(file)`. Knows files and schemas, no
 * rows; book.ts opens what this has looked at.
 */
import { access, constants, open, stat } from 'node:fs/promises';
import path from 'node:path';
import SQLite from 'better-sqlite3';
import { type Trouble, troubleOf } from '#shared/trouble.ts';
import { isNewest, knowsSchema } from './database.ts';

export type BookState =
  | { readonly is: 'missing' | 'current' | 'earlier' }
  | { readonly is: Exclude<Unfit, 'newer' | 'lost'> }
  | { readonly is: 'newer'; readonly schema: string };

export type Unfit = Trouble | 'empty' | 'no database' | 'not ours' | 'newer' | 'lost' | 'half-migrated';

export const bookIn = (folder: string): string => path.join(folder, 'creasebook.db');

const HEADER = 'SQLite format 3\0';

/** Looks at every page of the file, some 10 ms for each MB. */
export async function stateOf(file: string): Promise<BookState> {
  const there = await stat(file).catch(missing);
  if (!there) return { is: 'missing' };
  if (there.isFile() && there.size === 0) return { is: 'empty' };
  if (!there.isFile() || (await headOf(file)) !== HEADER) return { is: 'no database' };
  for (const one of [file, path.dirname(file)]) await access(one, constants.W_OK);
  const database = new SQLite(file, { readonly: true, timeout: 500 });
  try {
    return looked(database);
  } catch (problem) {
    const is = troubleOf(problem);
    if (!is) throw problem;
    return { is };
  } finally {
    database.close();
  }
}

function missing(problem: NodeJS.ErrnoException): undefined {
  if (problem.code !== 'ENOENT') throw problem;
}

async function headOf(file: string): Promise<string> {
  const handle = await open(file);
  try {
    const { buffer } = await handle.read(Buffer.alloc(HEADER.length), 0, HEADER.length, 0);
    return buffer.toString('latin1');
  } finally {
    await handle.close();
  }
}

function looked(database: SQLite.Database): BookState {
  if (database.pragma('quick_check(1)', { simple: true }) !== 'ok') return { is: 'damaged' };
  const tables = database.prepare<[], string>(TABLES).pluck().all();
  if (tables.length === 0) return { is: 'earlier' };
  if (!tables.includes('kysely_migration')) return { is: 'not ours' };
  const known = database.prepare<[], string>(MIGRATED).pluck().all();
  const newer = known.find((name) => !knowsSchema(name));
  if (newer !== undefined) return { is: 'newer', schema: newer };
  return { is: isNewest(known.at(-1)) ? 'current' : 'earlier' };
}

const TABLES = "SELECT name FROM sqlite_schema WHERE type = 'table'";
const MIGRATED = 'SELECT name FROM kysely_migration ORDER BY name';
