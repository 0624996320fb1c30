/**
 * Looking over the shelf. Verbs: `browseShelf(db, query)` for the newest offcuts of one design or pad, `searchShelf(db,
 * query)` for those alike by size, design, kind and place, `tallyPlaces(db)` and `listAtPlaces(db, slices)` for the list
 * to print, `kindsOnShelf(db)`, `tallyShelf(db)`. Changes nothing, and knows no blanks: what a recipe may be cut from is searched elsewhere.
 */
import { type RawBuilder, type Selectable, sql } from 'kysely';
import { type Alike, alikeIn } from '#core/stash/alike.ts';
import type { Design, Offcut } from '#core/stash/stash.ts';
import { type Length, length } from '#shared/length.ts';
import { PAPER_KINDS, type PaperKind } from '#shared/paper-kind.ts';
import type { ShelfOrder } from '#shared/shelf-order.ts';
import type { Database } from './database.ts';
import { designsAway, listDesigns } from './designs.ts';
import { listOffcuts, toOffcut } from './offcuts.ts';
import { remembered } from './remembered.ts';
import type { Tables } from './tables.ts';

/** The newest of one design or pad, put away or not; designs that are `known` already are not read again. */
export async function browseShelf(
  db: Database,
  of: { readonly design?: number | undefined; readonly pad?: number | undefined; readonly limit: number },
  known: readonly Design[] = [],
): Promise<Offcut[]> {
  const { design, pad, limit } = of;
  const rows = await db
    .selectFrom('offcuts')
    .innerJoin('designs', 'designs.id', 'offcuts.design_id')
    .select('offcuts.id')
    .where('count', '>', 0)
    .$if(design !== undefined, (query) => query.where('design_id', '=', design!))
    .$if(design === undefined, (query) => query.where('designs.put_away_at', 'is', null))
    .$if(pad !== undefined, (query) => query.where('pad_id', '=', pad!))
    .orderBy('offcuts.id', 'desc')
    .limit(limit)
    .execute();
  return offcutsOf(db, rows, known);
}

export interface ShelfQuery {
  /** Either may be left out; a print that may lie any way is also tried turned. */
  readonly width?: Length | undefined;
  readonly height?: Length | undefined;
  readonly designs?: readonly number[] | undefined;
  readonly kind?: PaperKind | undefined;
  readonly places?: readonly string[] | undefined;
  readonly order: ShelfOrder;
  readonly from: number;
  readonly limit: number;
}

export interface ShelfFound {
  readonly alike: readonly Alike[];
  /** How many there are to page through, 0 beyond the last; no more than `COUNTED_AT_MOST` are counted. */
  readonly counted: number;
}

export const COUNTED_AT_MOST = 1_000;

/** What is alike stands once, where its newest stands. Only what is still there, without what is put away. */
export async function searchShelf(db: Database, query: ShelfQuery): Promise<ShelfFound> {
  const found = sql`FROM ${query.order === 'design' ? BY_DESIGN : BY_OFFCUT} CROSS JOIN pads ON pads.id = designs.pad_id
    WHERE ${conditions(query)} AND NOT EXISTS (SELECT 1 FROM offcuts AS newer INDEXED BY offcuts_alike
      WHERE newer.count > 0 AND newer.id > one.id AND ${ALIKE('newer')} ${at(query, 'newer')})`;
  const { rows } = await sql<{ id: number; counted: number }>`
    SELECT one.id, (SELECT count(*) FROM (SELECT 1 ${found} LIMIT ${COUNTED_AT_MOST})) AS counted ${found}
    ORDER BY ${ORDERS[query.order]} LIMIT ${query.limit} OFFSET ${query.from}`.execute(db);
  const ids = rows.map(({ id }) => id);
  const alike = new Map((await alikeTo(db, ids, query)).map((one) => [one.offcuts[0].id, one]));
  return { alike: ids.map((id) => alike.get(id)!), counted: rows[0]?.counted ?? 0 };
}

async function alikeTo(db: Database, ids: readonly number[], query: ShelfQuery): Promise<Alike[]> {
  if (ids.length === 0) return [];
  const { rows } = await sql<Selectable<Tables['offcuts']>>`
    SELECT other.* FROM offcuts AS one CROSS JOIN offcuts AS other INDEXED BY offcuts_alike
      WHERE one.id IN (${sql.join([...ids])})
      AND other.count > 0 AND ${ALIKE('other')} ${at(query, 'other')} ORDER BY other.id DESC`.execute(db);
  const designs = await listDesigns(db, { ids: [...new Set(rows.map((row) => row.design_id))] });
  const byId = new Map(designs.map((design) => [design.id, design]));
  return alikeIn(rows.map((row) => toOffcut(row, byId)));
}

/** What comes first is gone through in its order until enough is found. */
const BY_OFFCUT = sql`offcuts AS one CROSS JOIN designs ON designs.id = one.design_id`;
const BY_DESIGN = sql`designs CROSS JOIN offcuts AS one ON one.design_id = designs.id`;

const ALIKE = (other: string): RawBuilder<unknown> =>
  sql`${sql.ref(other)}.design_id = one.design_id AND ${sql.ref(other)}.width = one.width
    AND ${sql.ref(other)}.height = one.height AND ${sql.ref(other)}.border = one.border`;

const at = ({ places }: ShelfQuery, offcut: string): RawBuilder<unknown> =>
  places === undefined ? sql`` : sql`AND ${sql.ref(offcut)}.place IN (${sql.join([...places])})`;

function conditions(query: ShelfQuery): RawBuilder<unknown> {
  const { width = length(0), height = length(0), designs, kind } = query;
  const all = [
    sql`one.count > 0`,
    sql`designs.put_away_at IS NULL AND pads.put_away_at IS NULL`,
    ...(width * height > 0 ? [sql`one.width * one.height >= ${width * height}`] : []),
    ...(width > 0 || height > 0
      ? [
          sql`(one.width >= ${width} AND one.height >= ${height}
            OR one.width >= ${height} AND one.height >= ${width} AND designs.direction = 'any way')`,
        ]
      : []),
    ...(designs === undefined ? [] : [sql`one.design_id IN (${sql.join([...designs])})`]),
    ...(kind === undefined ? [] : [sql`pads.kind = ${kind}`]),
  ];
  return sql`${sql.join(all, sql` AND `)} ${at(query, 'one')}`;
}

const ORDERS: Record<ShelfOrder, RawBuilder<unknown>> = {
  newest: sql`one.id DESC`,
  smallest: sql`one.width * one.height, one.id DESC`,
  largest: sql`one.width * one.height DESC, one.id DESC`,
  place: sql`one.place, one.width * one.height DESC, one.id DESC`,
  design: sql`designs.name COLLATE NOCASE, designs.id, one.id DESC`,
};

async function offcutsOf(
  db: Database,
  rows: readonly { readonly id: number }[],
  known: readonly Design[],
): Promise<Offcut[]> {
  const ids = rows.map(({ id }) => id);
  const offcuts = new Map((await listOffcuts(db, { ids }, known)).map((offcut) => [offcut.id, offcut]));
  return ids.map((id) => offcuts.get(id)!);
}

/** How many kinds of offcut lie at a place; `''` is none. */
export interface PlaceTally {
  readonly place: string;
  readonly offcuts: number;
}

/** Places in the order of their names and numbers, what has none last. */
export const tallyPlaces = (db: Database): Promise<PlaceTally[]> =>
  remembered(db, 'places', async () => {
    const rows = await db
      .selectFrom('offcuts')
      .select(({ fn }) => ['place', fn.countAll<number>().as('offcuts')])
      .where('count', '>', 0)
      .where('design_id', 'not in', designsAway(db))
      .groupBy('place')
      .execute();
    return rows.sort(
      (one, other) =>
        Number(one.place === '') - Number(other.place === '') || BY_NUMBER.compare(one.place, other.place),
    );
  });

const BY_NUMBER = new Intl.Collator('en', { numeric: true });

/** A part of what lies at one place, the largest first. */
export interface Slice {
  readonly place: string;
  readonly from: number;
  readonly limit: number;
}

export async function listAtPlaces(db: Database, slices: readonly Slice[]): Promise<Offcut[]> {
  if (slices.length === 0) return [];
  const each = slices.map(
    ({ place, from, limit }) => sql`SELECT * FROM (SELECT id FROM offcuts WHERE place = ${place} AND count > 0
      AND design_id NOT IN (${designsAway(db)}) ORDER BY width * height DESC, id DESC LIMIT ${limit} OFFSET ${from})`,
  );
  const { rows } = await sql<{ id: number }>`${sql.join(each, sql` UNION ALL `)}`.execute(db);
  return offcutsOf(db, rows, []);
}

/** The kinds of paper of which a sheet or an offcut is there. */
export async function kindsOnShelf(db: Database): Promise<PaperKind[]> {
  const each = PAPER_KINDS.map(
    (
      kind,
    ) => sql`SELECT ${kind} AS kind WHERE EXISTS (SELECT 1 FROM pads JOIN designs ON designs.pad_id = pads.id
      WHERE pads.kind = ${kind} AND pads.put_away_at IS NULL AND designs.put_away_at IS NULL AND (designs.sheets > 0
        OR EXISTS (SELECT 1 FROM offcuts WHERE offcuts.design_id = designs.id AND offcuts.count > 0)))`,
  );
  const { rows } = await sql<{ kind: PaperKind }>`${sql.join(each, sql` UNION ALL `)}`.execute(db);
  return rows.map(({ kind }) => kind);
}

export interface ShelfTally {
  /** With sheets left. */
  readonly pads: number;
  readonly sheets: number;
  readonly offcuts: number;
}

/** Without what is put away. */
export const tallyShelf = (db: Database): Promise<ShelfTally> =>
  remembered(db, 'shelf', async () => {
    const { rows } = await sql<ShelfTally>`
      WITH there AS (SELECT id, pad_id, sheets FROM designs WHERE id NOT IN (${designsAway(db)}))
      SELECT count(DISTINCT CASE WHEN sheets > 0 THEN pad_id END) AS pads, coalesce(sum(sheets), 0) AS sheets,
        coalesce((SELECT sum(count) FROM offcuts WHERE count > 0 AND design_id NOT IN (${designsAway(db)})), 0)
          AS offcuts
      FROM there`.execute(db);
    return rows[0]!;
  });
