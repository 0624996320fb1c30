/** What tells one book from another, and whose number a row had before it came here. Frozen once landed. */
import { type Kysely, sql } from 'kysely';

export async function up(db: Kysely<unknown>): Promise<void> {
  for (const statement of [book, own, origins]) await statement.execute(db);
}

const book = sql`CREATE TABLE book (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  uid TEXT NOT NULL CHECK (length(uid) = 32)
) STRICT`;

const own = sql`INSERT INTO book (id, uid) VALUES (1, lower(hex(randomblob(16))))`;

/** Only rows that came out of an archive: any other is known by this book's uid and its own number. */
const origins = sql`CREATE TABLE origins (
  of TEXT NOT NULL,
  row INTEGER NOT NULL,
  book TEXT NOT NULL CHECK (length(book) = 32),
  number INTEGER NOT NULL,
  PRIMARY KEY (of, row),
  UNIQUE (of, book, number)
) STRICT, WITHOUT ROWID`;
