/**
 * Every invariant of the data file, checked apart from the code that keeps it. Verbs: `checkData(db)`, which answers
 * with what fails, in plain words, and `countRows(db)`, how much was checked; they change nothing.
 */
import { sql } from 'kysely';
import { checkAway } from './checks-away.ts';
import { checkFinds } from './checks-finds.ts';
import { checkJournal } from './checks-journal.ts';
import { checkLedger } from './checks-ledger.ts';
import { checkLessons } from './checks-lessons.ts';
import { checkPads } from './checks-pads.ts';
import { checkPlans } from './checks-plans.ts';
import { checkReadyMade } from './checks-ready-made.ts';
import type { Database } from './database.ts';

export async function checkData(db: Database): Promise<string[]> {
  const checks = [
    checkFile,
    checkPads,
    checkLedger,
    checkJournal,
    checkLessons,
    checkPlans,
    checkReadyMade,
    checkAway,
    checkFinds,
  ];
  const failures: string[] = [];
  for (const check of checks) failures.push(...(await check(db)));
  return failures;
}

export async function countRows(
  db: Database,
): Promise<{ readonly movements: number; readonly offcuts: number; readonly projects: number }> {
  const count = async (table: 'movements' | 'offcuts' | 'projects'): Promise<number> => {
    const query = db.selectFrom(table).select(({ fn }) => fn.countAll<number>().as('rows'));
    return (await query.executeTakeFirstOrThrow()).rows;
  };
  return {
    movements: await count('movements'),
    offcuts: await count('offcuts'),
    projects: await count('projects'),
  };
}

async function checkFile(db: Database): Promise<string[]> {
  const pages = await sql<{ integrity_check: string }>`PRAGMA integrity_check`.execute(db);
  const orphans = await sql<{
    table: string;
    rowid: number;
    parent: string;
  }>`PRAGMA foreign_key_check`.execute(db);
  const { rows } = await sql<{ count: number }>`SELECT count(*) AS count FROM settings`.execute(db);
  return [
    ...pages.rows.map((row) => row.integrity_check).filter((line) => line !== 'ok'),
    ...orphans.rows.map(
      ({ table, rowid, parent }) => `${table} ${rowid} names a row of ${parent} that is not there`,
    ),
    ...(rows[0]?.count === 1 ? [] : ['there is not exactly one row of settings']),
  ];
}
