/** What keeps the book from being read or written, told from the code of an error. Knows no file and no page. */

export type Trouble = 'busy' | 'full' | 'read-only' | 'damaged' | 'gone' | 'unreachable';

/** By how the codes of SQLite and of the operating system begin; the first that matches counts. */
const CODES: readonly (readonly [begins: string, trouble: Trouble])[] = [
  ['SQLITE_BUSY', 'busy'],
  ['SQLITE_LOCKED', 'busy'],
  ['SQLITE_FULL', 'full'],
  ['SQLITE_IOERR_SHMSIZE', 'full'],
  ['ENOSPC', 'full'],
  ['EDQUOT', 'full'],
  ['SQLITE_READONLY_DBMOVED', 'gone'],
  ['BOOK_GONE', 'gone'],
  ['SQLITE_READONLY', 'read-only'],
  ['EACCES', 'read-only'],
  ['EPERM', 'read-only'],
  ['EROFS', 'read-only'],
  ['SQLITE_CORRUPT', 'damaged'],
  ['SQLITE_NOTADB', 'damaged'],
  ['SQLITE_IOERR', 'unreachable'],
  ['SQLITE_CANTOPEN', 'unreachable'],
  ['ENOTDIR', 'unreachable'],
  ['EEXIST', 'unreachable'],
  ['EIO', 'unreachable'],
];

/** Undefined for an error that has another cause. */
export function troubleOf(problem: unknown): Trouble | undefined {
  if (!(problem instanceof Error) || !('code' in problem)) return undefined;
  return CODES.find(([begins]) => `${problem.code}`.startsWith(begins))?.[1];
}
