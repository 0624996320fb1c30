/**
 * Brings an archive into a book, empty or full. Verb: `restore(db, file, { dryRun })`: all of it or nothing, and on a dry run
 * nothing. Checks an archive in a book of its own first; merge.ts puts the two together, archive.ts writes what this reads.
 */
import { sql } from 'kysely';
import { type Archive, readArchive } from '#shared/schemas/archive.ts';
import { CONTENTS, VERSION } from './archive.ts';
import { ARCHIVED } from './archive-tables.ts';
import { checkData } from './checks.ts';
import { closeDatabase, type Database, knowsSchema, migrate, openDatabase, transact } from './database.ts';
import { type Merged, merge } from './merge.ts';
import { insertRow } from './rows.ts';
import { textInZip } from './zipped.ts';

export type Restored = { readonly refused: string } | Merged;

/** `file` is a zip. A refusal is one sentence; nothing was written then. */
export async function restore(
  db: Database,
  file: string,
  { dryRun }: { readonly dryRun: boolean },
): Promise<Restored> {
  const read = await archiveIn(file);
  if ('refused' in read) return read;
  const staged = await stage(read.archive);
  if ('refused' in staged) return staged;
  try {
    return await transact(db, async (db) => {
      const merged = await merge(staged.book, db);
      const [broken] = await checkData(db);
      if (broken)
        throw new Undone({ refused: `Together with this book it would not hold: ${broken}. ${NOTHING}` });
      if (dryRun) throw new Undone(merged);
      return merged;
    });
  } catch (problem) {
    if (problem instanceof Undone) return problem.answer;
    if (isConstraint(problem)) return { refused: `This book can’t take it: ${problem.message}. ${NOTHING}` };
    throw problem;
  } finally {
    await closeDatabase(staged.book);
  }
}

const NOTHING = 'Nothing was written.';

/** Carries an answer out of a transaction that is not to be kept. */
class Undone extends Error {
  readonly answer: Restored;

  constructor(answer: Restored) {
    super('undone');
    this.answer = answer;
  }
}

async function archiveIn(file: string): Promise<{ archive: Archive } | { refused: string }> {
  const held = await textInZip(file, CONTENTS);
  if ('refused' in held) return held;
  const archive = readArchive(held.text);
  if (!archive) return { refused: `${CONTENTS} in that zip is not what Creasebook writes. ${NOTHING}` };
  if (archive.version > VERSION || !knowsSchema(archive.schema)) {
    return {
      refused: `That archive comes from a newer Creasebook. Bring this one up to date first. ${NOTHING}`,
    };
  }
  return { archive };
}

/** A book in memory that holds just the archive, brought up to date; whoever asked closes it. */
async function stage(archive: Archive): Promise<{ book: Database } | { refused: string }> {
  const book = openDatabase(':memory:');
  try {
    await migrate(book, archive.schema);
    await transact(book, (db) => fill(db, archive));
    await migrate(book);
    const [broken] = await checkData(book);
    if (!broken) return { book };
    await closeDatabase(book);
    return { refused: `That archive does not hold together: ${broken}. ${NOTHING}` };
  } catch (problem) {
    await closeDatabase(book);
    return { refused: `That archive does not hold together: ${(problem as Error).message}. ${NOTHING}` };
  }
}

async function fill(db: Database, { tables, book }: Archive): Promise<void> {
  for (const empty of ['settings', 'notchers']) await sql`DELETE FROM ${sql.table(empty)}`.execute(db);
  for (const { name, summed = [] } of ARCHIVED) {
    const zero = Object.fromEntries(summed.map((column) => [column, 0]));
    for (const row of tables[name] ?? []) await insertRow(db, name, { ...row, ...zero });
  }
  for (const row of tables['origins'] ?? []) await insertRow(db, 'origins', row);
  await sql`UPDATE book SET uid = ${book}`.execute(db);
}

const isConstraint = (problem: unknown): problem is Error =>
  problem instanceof Error && 'code' in problem && `${problem.code}`.startsWith('SQLITE_CONSTRAINT');
