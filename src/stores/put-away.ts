/**
 * What left the lists and may come back. Verbs: `readStanding(db, ref)`, `putAway(db, ref, at)`, `bringBack(db, ref)`,
 * `listAway(db, { from, limit })`. The row stays whole, deleted or put away, so that every link and ledger line still
 * finds it; leaving it out of lists is each list's own part.
 */
import { type RawBuilder, sql } from 'kysely';
import { AWAY_KINDS, type AwayKind, type AwayRef, type NamedBy, type Standing } from '#shared/put-away.ts';
import { type Database, transact } from './database.ts';

type Table = 'projects' | 'pads' | 'designs' | 'card_sizes' | 'notchers' | 'series';

interface Source {
  readonly table: Table;
  readonly title?: string;
  /** Which rows of which table name it, in which column. */
  readonly named: readonly (readonly [by: NamedBy, table: string, column: string])[];
}

const SOURCES: Record<AwayKind, Source> = {
  projects: {
    table: 'projects',
    title: 'title',
    named: [
      ['ledger', 'cuts', 'project_id'],
      ['ledger', 'ready_made_movements', 'project_id'],
      ['envelopes', 'envelopes', 'project_id'],
      ['plans', 'plans', 'project_id'],
    ],
  },
  pads: { table: 'pads', named: [['designs', 'designs', 'pad_id']] },
  designs: {
    table: 'designs',
    named: [
      ['ledger', 'movements', 'design_id'],
      ['offcuts', 'offcuts', 'design_id'],
    ],
  },
  cards: { table: 'card_sizes', named: [] },
  tools: {
    table: 'notchers',
    named: [
      ['projects', 'projects', 'notcher_id'],
      ['outcomes', 'outcomes', 'notcher_id'],
    ],
  },
  series: { table: 'series', named: [['projects', 'projects', 'series_id']] },
};

/** Undefined when there is no such thing. */
export async function readStanding(db: Database, { kind, id }: AwayRef): Promise<Standing | undefined> {
  const { rows } = await sql<Row>`${standings(kind)} WHERE id = ${id}`.execute(db);
  return rows[0] && toStanding(rows[0]);
}

/** The tool in use stays: another has to be chosen first. Undefined when there is no such thing. */
export function putAway(
  db: Database,
  ref: AwayRef,
  at: string,
): Promise<Standing | { readonly refused: 'in use' } | undefined> {
  return transact(db, async (db) => {
    if (!(await readStanding(db, ref))) return undefined;
    if (ref.kind === 'tools' && (await isInUse(db, ref.id))) return { refused: 'in use' };
    await db
      .updateTable(SOURCES[ref.kind].table)
      .set({ put_away_at: at })
      .where('id', '=', ref.id)
      .where('put_away_at', 'is', null)
      .execute();
    return readStanding(db, ref);
  });
}

/** As it was. Undefined when there is no such thing. */
export function bringBack(db: Database, ref: AwayRef): Promise<Standing | undefined> {
  return transact(db, async (db) => {
    await db
      .updateTable(SOURCES[ref.kind].table)
      .set({ put_away_at: null })
      .where('id', '=', ref.id)
      .execute();
    return readStanding(db, ref);
  });
}

/** The last one first; `from` says how many to pass over. */
export async function listAway(
  db: Database,
  { from = 0, limit }: { readonly from?: number; readonly limit: number },
): Promise<Standing[]> {
  const all = AWAY_KINDS.map((kind) => sql`${standings(kind)} WHERE put_away_at IS NOT NULL`);
  const { rows } = await sql<Row>`${sql.join(all, sql` UNION ALL `)}
    ORDER BY at DESC, kind, id DESC LIMIT ${limit} OFFSET ${from}`.execute(db);
  return rows.map(toStanding);
}

interface Row extends AwayRef {
  readonly name: string;
  readonly at: string | null;
  /** JSON, null for each that does not. */
  readonly namedBy: string;
}

function standings(kind: AwayKind): RawBuilder<unknown> {
  const { table, title = 'name', named } = SOURCES[kind];
  const by = named.map(
    ([by, from, column]) => sql`CASE WHEN EXISTS (
      SELECT 1 FROM ${sql.table(from)} WHERE ${sql.ref(`${from}.${column}`)} = ${sql.ref(`${table}.id`)})
      THEN ${by} END`,
  );
  return sql`SELECT ${kind} AS kind, id, ${sql.ref(title)} AS name, put_away_at AS at,
    json_array(${by.length === 0 ? sql`` : sql.join(by)}) AS "namedBy" FROM ${sql.table(table)}`;
}

const toStanding = ({ namedBy, ...row }: Row): Standing => ({
  ...row,
  namedBy: [...new Set((JSON.parse(namedBy) as (NamedBy | null)[]).filter((by) => by !== null))],
});

const isInUse = async (db: Database, id: number): Promise<boolean> =>
  (await db.selectFrom('settings').select('id').where('notcher_id', '=', id).execute()).length > 0;
