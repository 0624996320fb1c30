/**
 * Opens the book in a folder, or says in the reader's words why it can't be opened and what to do; what can't be opened is
 * left as it lies. Verb: `openBook(folder, at)`. Knows what may be wrong with a file, no rows.
 */
import { mkdir, rename, rm } from 'node:fs/promises';
import path from 'node:path';
import { troubleOf } from '#shared/trouble.ts';
import { backUp, newestBackup } from './backups.ts';
import { bookIn, stateOf, type Unfit } from './book-state.ts';
import { closeDatabase, type Database, migrate, openDatabase } from './database.ts';

export type Opened = { readonly db: Database } | { readonly refused: string };

/** Made where there is none, and brought up to date, with a backup of it before; `at` is now. */
export async function openBook(folder: string, at: string): Promise<Opened> {
  const file = bookIn(folder);
  try {
    await mkdir(folder, { recursive: true });
    const state = await stateOf(file);
    if (state.is === 'newer') return refuse(folder, 'newer', state.schema);
    if (state.is === 'missing' && (await newestBackup(folder))) return refuse(folder, 'lost');
    if (state.is === 'missing') await make(file);
    else if (state.is !== 'current' && state.is !== 'earlier') return refuse(folder, state.is);
    if (state.is === 'earlier') await backUp(folder, at, 'before-update');
    return { db: await upToDate(file) };
  } catch (problem) {
    return refuse(folder, troubleOf(problem) ?? 'half-migrated', (problem as Error).message);
  }
}

/** Under another name until it is whole: a book of no bytes is never one of ours. */
async function make(file: string): Promise<void> {
  const aside = `${file}-new`;
  for (const old of [aside, `${aside}-wal`, `${aside}-shm`]) await rm(old, { force: true });
  await closeDatabase(await upToDate(aside));
  await rename(aside, file);
}

async function upToDate(file: string): Promise<Database> {
  const db = openDatabase(file);
  try {
    await migrate(db);
    return db;
  } catch (problem) {
    await closeDatabase(db);
    throw problem;
  }
}

async function refuse(folder: string, is: Unfit, detail = ''): Promise<{ refused: string }> {
  const said = WHY[is](path.resolve(bookIn(folder)), detail);
  if (!MENDED_BY_BACKUP.has(is)) return { refused: said };
  const newest = await newestBackup(folder);
  const way = newest
    ? `The newest backup: npm run backup -- restore ${newest}`
    : 'There is no backup in the folder backups/ beside it.';
  return { refused: `${said}\n${way}` };
}

const MENDED_BY_BACKUP = new Set<Unfit>(['lost', 'half-migrated', 'damaged', 'no database', 'empty']);

const WHY: Record<Unfit, (file: string, detail: string) => string> = {
  busy: (file) => `Another program is holding ${file}. Close it there, and start again.`,
  full: (file) => `There is no room left on the disk that holds ${file}. Make some, and start again.`,
  'read-only': (file) =>
    `Creasebook can’t keep its data in ${path.dirname(file)}: it may not write there. Let it, or name another folder: CREASEBOOK_DATA=folder npm start`,
  unreachable: (file, detail) =>
    `Creasebook can’t keep its data in ${path.dirname(file)}. ${detail}.\nName a folder that it may write to: CREASEBOOK_DATA=folder npm start`,
  gone: (file) => `${file} was moved while it was open. Put it back, and start again.`,
  damaged: (file) =>
    `${file} is damaged: parts of it can’t be read as they were written. It was left as it is.`,
  'no database': (file) => `${file} is not a book: it holds something else. It was left as it is.`,
  empty: (file) =>
    `${file} holds nothing at all, not even an empty book: something has emptied it. It was left as it is. To begin a new book, move that file away.`,
  lost: (file) =>
    `There is no ${file}, though backups of it lie beside it. To begin a new book, move the folder backups/ away.`,
  'not ours': (file) =>
    `${file} belongs to another program. It was left as it is: move it away, or name another folder: CREASEBOOK_DATA=folder npm start`,
  newer: (file, schema) =>
    `${file} was written by a newer Creasebook (${schema}). It was left as it is. Bring this one up to date, and start again.`,
  'half-migrated': (file, detail) =>
    `${file} could not be brought up to date, as if an update of an earlier Creasebook had stopped halfway (${detail}). It was left as it was.`,
};
