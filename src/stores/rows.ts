/** Rows of any table, for what goes through all of them. Knows no resource. */
import { sql } from 'kysely';
import type { Database } from './database.ts';

export type Cell = string | number | null;
export type Row = Readonly<Record<string, Cell>>;

/** Answers with the number that the row got. */
export async function insertRow(db: Database, table: string, row: Row): Promise<number> {
  const columns = Object.keys(row).map((one) => sql.ref(one));
  const { insertId } = await sql`INSERT INTO ${sql.table(table)} (${sql.join(columns)})
    VALUES (${sql.join(Object.values(row))})`.execute(db);
  return Number(insertId ?? 0);
}
