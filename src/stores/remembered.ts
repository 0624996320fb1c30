/**
 * What is derived from the whole book and asked for by many pages, worked out once for as long as nobody writes. Verb:
 * `remembered(db, name, read)`. The book's version is SQLite's own: `data_version` moves with every commit of another
 * connection, the count of changes with every row this one writes, so that no writer has to know what is remembered, and
 * several servers may share one file. Asked inside a transaction, which may yet be undone, it remembers nothing.
 */
import { type Database, versionOf } from './database.ts';

interface Kept {
  readonly version: string;
  readonly value: Promise<unknown>;
}

const books = new WeakMap<Database, Map<string, Kept>>();

export function remembered<T>(db: Database, name: string, read: () => Promise<T>): Promise<T> {
  const version = versionOf(db);
  if (version === undefined) return read();
  const book = books.get(db) ?? new Map<string, Kept>();
  books.set(db, book);
  const kept = book.get(name);
  if (kept?.version === version) return kept.value as Promise<T>;
  const value = read();
  book.set(name, { version, value });
  value.catch(() => book.delete(name));
  return value;
}
