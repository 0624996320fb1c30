/**
 * Puts the rows of one book into another: a row is known by the book it began in and its number there, so that what came
 * before is not brought twice. What is here stays as it is. Knows no files; restore.ts holds it in a transaction.
 */
import { sql } from 'kysely';
import { pencilCode } from '#shared/ids.ts';
import { renumberJson } from './archive-ids.ts';
import { ARCHIVED, type ArchivedTable } from './archive-tables.ts';
import type { Database } from './database.ts';
import { type Cell, insertRow, type Row } from './rows.ts';

/** What came of one table's rows: those brought, those that are here as they came, those that differ here and stay. */
export interface MergedTable {
  readonly table: string;
  readonly added: number;
  readonly same: number;
  /** By what a reader knows them. */
  readonly differ: readonly string[];
}

export interface Merged {
  readonly tables: readonly MergedTable[];
  /** Offcuts whose code was taken here: what is pencilled on them, and what they are called now. */
  readonly recoded: readonly { readonly was: string; readonly is: string }[];
}

interface Merging {
  readonly from: Database;
  readonly into: Database;
  /** The numbers here, by table and number there. */
  readonly numbers: ReadonlyMap<string, Map<number, number>>;
  readonly books: { readonly from: string; readonly into: string };
  readonly recoded: { was: string; is: string }[];
}

/** In the caller's transaction on `into`. Throws what the database refuses. */
export async function merge(from: Database, into: Database): Promise<Merged> {
  const keepsNumbers = await isEmpty(into);
  if (keepsNumbers)
    for (const own of ['settings', 'notchers']) await sql`DELETE FROM ${sql.table(own)}`.execute(into);
  const merging: Merging = {
    from,
    into,
    numbers: new Map(ARCHIVED.map(({ name }) => [name, new Map()])),
    books: { from: await bookOf(from), into: await bookOf(into) },
    recoded: [],
  };
  const tables: MergedTable[] = [];
  for (const table of ARCHIVED) tables.push(await mergeTable(merging, table));
  return { tables, recoded: merging.recoded };
}

/** Nothing in it but the tool and the settings that every book begins with. */
async function isEmpty(db: Database): Promise<boolean> {
  for (const { name } of ARCHIVED) {
    const beginsWith = name === 'notchers' || name === 'settings' ? 1 : 0;
    if ((await countOf(db, name)) > beginsWith) return false;
  }
  return true;
}

async function mergeTable(merging: Merging, table: ArchivedTable): Promise<MergedTable> {
  const { from, into } = merging;
  const numbers = merging.numbers.get(table.name)!;
  const known = table.key ? undefined : await knownRows(merging, table);
  let [added, same] = [0, 0];
  const differ: string[] = [];
  for (const row of await allRows(from, table.name)) {
    const brought = translated(merging, table, row);
    const here = await counterpart(into, table, { brought, number: known?.(row['id'] as number) });
    if (here) {
      if (!table.key) numbers.set(row['id'] as number, here['id'] as number);
      if (agree(table, brought, here)) same += 1;
      else differ.push(nameOf(table, here));
    } else if (await bring(merging, table, brought)) added += 1;
    else differ.push(nameOf(table, brought));
  }
  return { table: table.name, added, same, differ };
}

/** The row with the numbers of this book wherever it names another; its own number stays that of its book. */
function translated({ numbers }: Merging, table: ArchivedTable, row: Row): Row {
  const renumber = (of: string, number: number): number => {
    const here = numbers.get(of)?.get(number);
    if (here === undefined) throw new Error(`invalid archive: ${table.name} names ${of} ${number}`);
    return here;
  };
  const changed: Record<string, Cell> = { ...row };
  for (const [column, of] of Object.entries(table.names)) {
    const number = row[column];
    if (typeof number === 'number') changed[column] = renumber(of, number);
  }
  for (const column of table.json ?? []) {
    const json = row[column];
    if (typeof json === 'string') changed[column] = renumberJson(json, renumber);
  }
  return changed;
}

/** The number here of each row of a table that has been here before. */
async function knownRows(
  { from, into, books }: Merging,
  { name }: ArchivedTable,
): Promise<(number: number) => number | undefined> {
  const there = new Map((await originsIn(from, name)).map((one) => [one.row, one]));
  const here = await originsIn(into, name);
  const cameHere = new Map(here.map((one) => [`${one.book} ${one.number}`, one.row]));
  const strangers = new Set(here.map(({ row }) => row));
  return (number) => {
    const began = there.get(number) ?? { book: books.from, number };
    if (began.book !== books.into) return cameHere.get(`${began.book} ${began.number}`);
    return strangers.has(began.number) ? undefined : began.number;
  };
}

const originsIn = (db: Database, of: string) =>
  db.selectFrom('origins').select(['row', 'book', 'number']).where('of', '=', of).execute();

async function counterpart(
  into: Database,
  table: ArchivedTable,
  { brought, number }: { brought: Row; number: number | undefined },
): Promise<Row | undefined> {
  if (table.key) return rowWhere(into, table.name, pick(brought, table.key));
  const known = number === undefined ? undefined : await rowWhere(into, table.name, { id: number });
  if (known || !table.alike) return known;
  return rowWhere(into, table.name, pick(brought, [table.alike]));
}

/** False where a rule of this book keeps the row out that another row here already fulfils. */
async function bring(merging: Merging, table: ArchivedTable, row: Row): Promise<boolean> {
  const { into, numbers } = merging;
  const there = row['id'] as number;
  const numbered = table.key ? {} : { id: await freeNumber(merging, table, there) };
  try {
    const free = { ...row, ...zero(table), ...numbered };
    const here = await insertRow(into, table.name, { ...free, ...(await freed(merging, table, free)) });
    if (table.key) return true;
    numbers.get(table.name)!.set(there, here);
    await keepOrigin(merging, table.name, { there, here });
    return true;
  } catch (problem) {
    if (isTwin(problem)) return false;
    throw problem;
  }
}

/** Its own where it is free, so that addresses and pencilled codes stay; else one that neither book has used. */
async function freeNumber(
  { from, into }: Merging,
  { name, inOrder }: ArchivedTable,
  number: number,
): Promise<number> {
  const last = await lastNumber(into, name);
  if (number > last) return number;
  if (inOrder) return last + 1;
  const taken = await rowWhere(into, name, { id: number });
  return taken ? Math.max(await lastNumber(from, name), last) + 1 : number;
}

async function keepOrigin(
  { from, into, books }: Merging,
  of: string,
  { there, here }: { readonly there: number; readonly here: number },
): Promise<void> {
  const came = await from
    .selectFrom('origins')
    .select(['book', 'number'])
    .where('of', '=', of)
    .where('row', '=', there)
    .executeTakeFirst();
  const { book, number } = came ?? { book: books.from, number: there };
  if (book === books.into && number === here) return;
  await into.insertInto('origins').values({ of, row: here, book, number }).execute();
}

/** What follows from a new number: an offcut's code, and an envelope's place among those of its project. */
async function freed({ into, recoded }: Merging, { name }: ArchivedTable, row: Row): Promise<Row> {
  if (name === 'offcuts') {
    const code = pencilCode(row['id'] as number);
    if (code !== row['code']) recoded.push({ was: `${row['code']}`, is: code });
    return { code };
  }
  if (name !== 'envelopes' || !(await rowWhere(into, name, pick(row, ['project_id', 'number'])))) return {};
  const { rows } = await sql<{ last: number }>`SELECT max(number) AS last FROM envelopes
    WHERE project_id = ${row['project_id']}`.execute(into);
  return { number: rows[0]!.last + 1 };
}

const zero = ({ summed = [] }: ArchivedTable): Row => Object.fromEntries(summed.map((column) => [column, 0]));

function agree({ summed = [], key }: ArchivedTable, brought: Row, here: Row): boolean {
  const left = new Set([...summed, ...(key ? [] : ['id'])]);
  return Object.keys(here).every((column) => left.has(column) || brought[column] === here[column]);
}

const nameOf = ({ called, key = ['id'] }: ArchivedTable, row: Row): string =>
  called ? `${row[called]}` : key.map((column) => row[column]).join(' ');

const pick = (row: Row, columns: readonly string[]): Row =>
  Object.fromEntries(columns.map((column) => [column, row[column]!]));

async function rowWhere(db: Database, table: string, equal: Row): Promise<Row | undefined> {
  const conditions = Object.entries(equal).map(([column, value]) => sql`${sql.ref(column)} = ${value}`);
  const { rows } =
    await sql<Row>`SELECT * FROM ${sql.table(table)} WHERE ${sql.join(conditions, sql` AND `)}`.execute(db);
  return rows[0];
}

const allRows = async (db: Database, table: string): Promise<Row[]> =>
  (await sql<Row>`SELECT * FROM ${sql.table(table)} ORDER BY 1, 2`.execute(db)).rows;

const countOf = async (db: Database, table: string): Promise<number> =>
  (await sql<{ rows: number }>`SELECT count(*) AS rows FROM ${sql.table(table)}`.execute(db)).rows[0]!.rows;

const lastNumber = async (db: Database, table: string): Promise<number> =>
  (await sql<{ last: number | null }>`SELECT max(id) AS last FROM ${sql.table(table)}`.execute(db)).rows[0]!
    .last ?? 0;

const bookOf = async (db: Database): Promise<string> =>
  (await db.selectFrom('book').select('uid').executeTakeFirstOrThrow()).uid;

const isTwin = (problem: unknown): boolean =>
  problem instanceof Error && 'code' in problem && /UNIQUE|PRIMARYKEY/.test(`${problem.code}`);
