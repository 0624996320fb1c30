/**
 * A whole book as one open archive: a zip whose `archive.json` holds every row. Verb: `writeArchive(db, at)`, which answers
 * with a stream. What its fields are is told in shared/ARCHIVE.md; restore.ts reads it.
 */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Readable } from 'node:stream';
import SQLite from 'better-sqlite3';
import { sql } from 'kysely';
import yazl from 'yazl';
import { ARCHIVED } from './archive-tables.ts';
import type { Database } from './database.ts';

const FORMAT = 'creasebook archive';
export const VERSION = 1;
export const CONTENTS = 'archive.json';

/** Of the book as it is now: a copy is read while it is sent, so that nothing waits and it never lies in memory whole. */
export async function writeArchive(db: Database, at: string): Promise<NodeJS.ReadableStream> {
  const folder = await mkdtemp(path.join(tmpdir(), 'creasebook-'));
  const file = path.join(folder, 'book.db');
  await sql`VACUUM INTO ${file}`.execute(db);
  const zip = new yazl.ZipFile();
  const json = Readable.from(contents(file, at));
  json.on('error', (error) => zip.emit('error', error));
  json.on('close', () => rm(folder, { recursive: true, force: true }));
  zip.addReadStream(json, CONTENTS, { mtime: new Date(at), mode: 0o644 });
  zip.end();
  return zip.outputStream;
}

function* contents(file: string, at: string): Generator<string> {
  const db = new SQLite(file, { readonly: true });
  try {
    const { uid } = db.prepare('SELECT uid FROM book').get() as { uid: string };
    const { schema } = db.prepare('SELECT max(name) AS schema FROM kysely_migration').get() as {
      schema: string;
    };
    const head = { format: FORMAT, version: VERSION, schema, book: uid, at };
    yield `${JSON.stringify(head).slice(0, -1)},"tables":{`;
    let before = '\n';
    for (const name of [...ARCHIVED.map((table) => table.name), 'origins']) {
      yield `${before}${JSON.stringify(name)}:[`;
      yield* rowsOf(db, name);
      yield '\n]';
      before = ',\n';
    }
    yield '}}\n';
  } finally {
    db.close();
  }
}

function* rowsOf(db: SQLite.Database, table: string): Generator<string> {
  let before = '\n';
  for (const row of db.prepare(`SELECT * FROM "${table}" ORDER BY 1, 2`).iterate()) {
    yield `${before}${JSON.stringify(row)}`;
    before = ',\n';
  }
}
