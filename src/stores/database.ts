/** Opens, migrates and closes the data file, and joins nested verbs into one transaction. Knows no resource. */
import { access } from 'node:fs/promises';
import SQLite from 'better-sqlite3';
import {
  CompiledQuery,
  type DatabaseConnection,
  Kysely,
  Migrator,
  SqliteAdapter,
  SqliteDialect,
  SqliteDriver,
} from 'kysely';
import { migrations } from '#migrations/all.ts';
import type { Tables } from './tables.ts';

export type Database = Kysely<Tables>;

/**
 * `file` may be `:memory:`, or the bytes of a file to be opened in memory. The caller migrates it before use and closes it
 * with `db.destroy()`. A change is on the disk before it is acknowledged (FULL); NORMAL would spare some milliseconds, and a
 * power cut could lose the last changes.
 */
export function openDatabase(file: string | Buffer): Database {
  const database = new SQLite(file);
  database.pragma('journal_mode = WAL');
  database.pragma('synchronous = FULL');
  database.pragma('foreign_keys = ON');
  database.pragma(`busy_timeout = ${PATIENCE_MS}`);
  const db = new Kysely<Tables>({ dialect: new Dialect(database) });
  const version = database.prepare<[], string>(VERSION).pluck();
  versions.set(db, () => version.get()!);
  return db;
}

/** Everything else stands still while SQLite waits for another program, so it waits no longer than a person notices. */
const PATIENCE_MS = 500;

const VERSION = "SELECT data_version || '.' || total_changes() FROM pragma_data_version";
const versions = new WeakMap<Database, () => string>();

/** Another one whenever anybody has written to the book; undefined inside a transaction. */
export const versionOf = (db: Database): string | undefined => versions.get(db)?.();

/**
 * Brings the file to the newest schema, or to that of an older book, all of the way or not at all: throws what a migration
 * threw, or is killed, with nothing of any of them kept.
 */
export async function migrate(db: Database, upTo?: string): Promise<void> {
  const migrator = new Migrator({ db, provider: { getMigrations: async () => migrations } });
  const { error } = await (upTo === undefined ? migrator.migrateToLatest() : migrator.migrateTo(upTo));
  if (error) throw error;
}

/** Whether this program knows the schema of that name. */
export const knowsSchema = (name: string): boolean => Object.hasOwn(migrations, name);

export const isNewest = (name: string | undefined): boolean => name === Object.keys(migrations).at(-1);

/** Runs `verb` in the transaction that is already open, or in one of its own. */
export const transact = <T>(db: Database, verb: (db: Database) => Promise<T>): Promise<T> =>
  db.isTransaction ? verb(db) : db.transaction().execute(verb);

export const closeDatabase = (db: Database): Promise<void> => db.destroy();

/** A transaction takes its place in the queue before it reads, so that two servers on one file never act on old news. */
class Driver extends SqliteDriver {
  readonly #database: SQLite.Database;

  constructor(database: SQLite.Database) {
    super({ database });
    this.#database = database;
  }

  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    if (!this.#database.memory) await isThere(this.#database.name);
    await connection.executeQuery(CompiledQuery.raw('begin immediate'));
  }

  /** A full disk undoes the transaction by itself, and what went wrong is worth more than a complaint about that. */
  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    if (this.#database.inTransaction) await super.rollbackTransaction(connection);
  }
}

/** SQLite would go on writing to a file that nobody can find any more. */
async function isThere(file: string): Promise<void> {
  const gone = (): never => {
    throw Object.assign(new Error(`${file} is gone`), { code: 'BOOK_GONE' });
  };
  await access(file).catch(gone);
}

/** SQLite undoes a change of the schema like any other, though Kysely makes no use of it. */
class Adapter extends SqliteAdapter {
  override get supportsTransactionalDdl(): boolean {
    return true;
  }
}

class Dialect extends SqliteDialect {
  readonly #database: SQLite.Database;

  constructor(database: SQLite.Database) {
    super({ database });
    this.#database = database;
  }

  override createDriver(): Driver {
    return new Driver(this.#database);
  }

  override createAdapter(): Adapter {
    return new Adapter();
  }
}
