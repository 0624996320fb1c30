/**
 * Puts a backup in the place of the book, with the book as it was kept aside among the backups. Verb:
 * `restoreBackup(folder, file, at)`. The book is replaced by one rename, so that it is the old one or the new one at any moment.
 */
import { copyFile, mkdir, rename, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import SQLite from 'better-sqlite3';
import { troubleOf } from '#shared/trouble.ts';
import { backupName, backupsIn } from './backups.ts';
import { bookIn, stateOf } from './book-state.ts';

export type BackupRestored =
  | { readonly refused: string }
  /** Where the book that was there lies now, if there was one. */
  | { readonly keptAside: string | undefined };

/** Refuses while another program has the book open. `at` is now. */
export async function restoreBackup(folder: string, file: string, at: string): Promise<BackupRestored> {
  await mkdir(backupsIn(folder), { recursive: true });
  const fresh = `${bookIn(folder)}-restored`;
  try {
    if (!(await there(file))) return { refused: `There is no file ${path.resolve(file)}. ${NOTHING}` };
    for (const part of PARTS) await rm(fresh + part, { force: true });
    for (const part of ['', '-wal']) if (await there(file + part)) await copyFile(file + part, fresh + part);
    const { is } = await stateOf(fresh);
    if (is !== 'current' && is !== 'earlier')
      return { refused: `${path.resolve(file)} can’t be restored: it is ${is}. ${NOTHING}` };
    foldIn(fresh);
    if (!(await there(bookIn(folder)))) {
      await rename(fresh, bookIn(folder));
      return { keptAside: undefined };
    }
    if (isHeld(bookIn(folder)))
      return {
        refused: `${path.resolve(bookIn(folder))} is open in another program: stop it first. ${NOTHING}`,
      };
    const keptAside = await keepAside(folder, at);
    await rename(fresh, bookIn(folder));
    return { keptAside };
  } finally {
    for (const part of PARTS) await rm(fresh + part, { force: true });
  }
}

const NOTHING = 'Nothing was changed.';
const PARTS = ['', '-wal', '-shm'];

const there = (file: string): Promise<boolean> =>
  stat(file).then(
    (found) => found.isFile(),
    () => false,
  );

/** Leaves the file alone with all that was written ahead of it; SQLite does so only where nobody else has it open. */
function foldIn(file: string): void {
  const book = new SQLite(file, { timeout: 500 });
  try {
    book.pragma('journal_mode = DELETE');
  } finally {
    book.close();
  }
}

/** A damaged book can't be folded in; nobody has it open then, or they could not read it either. */
function isHeld(file: string): boolean {
  try {
    foldIn(file);
    return false;
  } catch (problem) {
    return troubleOf(problem) === 'busy';
  }
}

/** Copied first and moved never: a stop in between leaves the book where it was. */
async function keepAside(folder: string, at: string): Promise<string> {
  const kept = path.join(backupsIn(folder), backupName(at, 'before-restore'));
  for (const part of PARTS) {
    const from = bookIn(folder) + part;
    if (await there(from)) await copyFile(from, kept + part);
  }
  for (const part of ['-wal', '-shm']) await rm(bookIn(folder) + part, { force: true });
  return kept;
}
