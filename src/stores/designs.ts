/**
 * Designs of a pad, with the sheets left of each. Verbs: `addDesign(db, { pad, design, sheets, at })`,
 * `listDesigns(db, filter)`, `listSheetKinds(db)`, `readDesign(db, id)`, `editDesign(db, id, design)`,
 * `markDesign(db, id, lowMark)`. Counts move in movements.ts only.
 */
import { type Selectable, sql } from 'kysely';
import type { Design, NewDesign, Pad } from '#core/stash/stash.ts';
import type { Print } from '#shared/print.ts';
import { usablePrint } from '#shared/sheet.ts';
import { type Database, transact } from './database.ts';
import { record } from './ledger.ts';
import { LOW_AT } from './low-sql.ts';
import type { Tables } from './tables.ts';

export interface DesignFilter {
  readonly pad?: number;
  readonly pads?: readonly number[];
  readonly ids?: readonly number[];
  /** Only those with sheets left. */
  readonly left?: boolean;
  /** Only those with sheets or offcuts left. */
  readonly onShelf?: boolean;
  /** Also those put away, by themselves or with their pad; those that `ids` name are always found. */
  readonly away?: boolean;
}

/** With the sheets bought, 0 for a design of which only offcuts are left. Undefined when there is no such pad. */
export function addDesign(
  db: Database,
  { pad, design, sheets, at }: { pad: number; design: NewDesign; sheets: number; at: string },
): Promise<Design | undefined> {
  return transact(db, async (db) => {
    const found = await db.selectFrom('pads').select('id').where('id', '=', pad).executeTakeFirst();
    if (!found) return undefined;
    const { id } = await db
      .insertInto('designs')
      .values({ pad_id: pad, ...toRow(design) })
      .returning('id')
      .executeTakeFirstOrThrow();
    const piece = { design: id, offcut: null };
    if (sheets > 0) await record(db, { at, kind: 'bought', piece, delta: sheets });
    return readDesign(db, id);
  });
}

/** In the order in which they were added. */
export async function listDesigns(
  db: Database,
  { pad, pads, ids, left, onShelf, away = ids !== undefined }: DesignFilter = {},
): Promise<Design[]> {
  if (ids?.length === 0 || pads?.length === 0) return [];
  const rows = await db
    .selectFrom('designs')
    .innerJoin('pads', 'pads.id', 'designs.pad_id')
    .selectAll('designs')
    .select(PAD_COLUMNS)
    .$if(!away, (query) => query.where('designs.put_away_at', 'is', null))
    .$if(!away && pad === undefined, (query) => query.where('pads.put_away_at', 'is', null))
    .select(LOW_AT.as('low_at'))
    .$if(pad !== undefined, (query) => query.where('pad_id', '=', pad!))
    .$if(pads !== undefined, (query) => query.where('pad_id', 'in', pads!))
    .$if(ids !== undefined, (query) => query.where('designs.id', 'in', ids!))
    .$if(left === true, (query) => query.where('sheets', '>', 0))
    .$if(onShelf === true, (query) =>
      query.where((by) =>
        by.or([
          by('sheets', '>', 0),
          by.exists(
            by
              .selectFrom('offcuts')
              .select('offcuts.id')
              .whereRef('design_id', '=', 'designs.id')
              .where('count', '>', 0),
          ),
        ]),
      ),
    )
    .orderBy('designs.id')
    .execute();
  return rows.map((row) => toDesign(row, toPad({ ...row, id: row.pad_id, name: row.pad_name })));
}

/** Designs whose sheets are alike for whoever cuts them: paper, size and print. `first` is the one added first. */
export interface SheetKind {
  readonly first: Design;
  /** Of all of them, as they were added. */
  readonly ids: readonly number[];
}

/** Of the sheets on the shelf, in the order in which the first of each kind was added. */
export async function listSheetKinds(db: Database): Promise<SheetKind[]> {
  const rows = await db
    .selectFrom('designs')
    .innerJoin('pads', 'pads.id', 'designs.pad_id')
    .selectAll('designs')
    .select(PAD_COLUMNS)
    .select([sql<number>`min(designs.id)`.as('first'), sql<string>`json_group_array(designs.id)`.as('ids')])
    .where('sheets', '>', 0)
    .where('designs.put_away_at', 'is', null)
    .where('pads.put_away_at', 'is', null)
    .groupBy(ALIKE)
    .orderBy('first')
    .execute();
  return rows.map((row) => ({
    first: toDesign({ ...row, low_at: null }, toPad({ ...row, id: row.pad_id, name: row.pad_name })),
    ids: (JSON.parse(row.ids) as number[]).sort((one, other) => one - other),
  }));
}

/** SQLite takes the other columns of a group from the row that has its least id. */
const ALIKE = [
  'kind',
  'width',
  'height',
  'measured_width',
  'measured_height',
  'strip_edge',
  'strip_depth',
  'direction',
  'border',
] as const;

export async function readDesign(db: Database, id: number): Promise<Design | undefined> {
  const [design] = await listDesigns(db, { ids: [id] });
  return design;
}

export async function editDesign(db: Database, id: number, design: NewDesign): Promise<Design | undefined> {
  await db.updateTable('designs').set(toRow(design)).where('id', '=', id).execute();
  return readDesign(db, id);
}

/** Put away, by themselves or with their pad: what is left of them is not to be searched. */
export const designsAway = (db: Database) =>
  db
    .selectFrom('designs')
    .where('put_away_at', 'is not', null)
    .select('id')
    .union(
      db
        .selectFrom('pads')
        .innerJoin('designs', 'designs.pad_id', 'pads.id')
        .where('pads.put_away_at', 'is not', null)
        .select('designs.id'),
    );

/** Null gives it back its share of the pad's. */
export async function markDesign(db: Database, id: number, lowMark: number | null): Promise<void> {
  await db.updateTable('designs').set({ own_low_mark: lowMark }).where('id', '=', id).execute();
}

/** Of the pad beside its design: what both have bears another name here. */
const PAD_COLUMNS = [
  'pads.name as pad_name',
  'kind',
  'width',
  'height',
  'measured_width',
  'measured_height',
  'strip_edge',
  'strip_depth',
  'grammage',
  'low_mark',
  'price',
  'price_sheets',
  'source',
  'note',
] as const;

export const toPad = (row: Selectable<Tables['pads']>): Pad => ({
  id: row.id,
  name: row.name,
  kind: row.kind,
  sheet: { width: row.width, height: row.height },
  measured: {
    ...(row.measured_width !== null && { width: row.measured_width }),
    ...(row.measured_height !== null && { height: row.measured_height }),
  },
  strip: row.strip_edge === null ? null : { edge: row.strip_edge, depth: row.strip_depth! },
  grammage: row.grammage,
  lowMark: row.low_mark,
  source: row.source,
  note: row.note,
  price: row.price === null ? null : { hundredths: row.price, sheets: row.price_sheets! },
});

function toDesign(row: Selectable<Tables['designs']> & { low_at: number | null }, pad: Pad): Design {
  const wholePrint = toPrint(row);
  const print = usablePrint(wholePrint, pad.strip);
  return {
    id: row.id,
    pad,
    name: row.name,
    print,
    ...(print !== wholePrint && { wholePrint }),
    doubleSided: row.double_sided === 1,
    swatch: JSON.parse(row.swatch),
    sheets: row.sheets,
    lowMark: row.own_low_mark,
    lowAt: row.low_at,
  };
}

const toPrint = ({ direction, border }: Selectable<Tables['designs']>): Print =>
  direction === 'one edge' ? { direction, border: border! } : { direction };

const toRow = ({ name, print, doubleSided, swatch, lowMark = null }: NewDesign) => ({
  name,
  direction: print.direction,
  border: print.direction === 'one edge' ? print.border : null,
  double_sided: doubleSided ? (1 as const) : (0 as const),
  swatch: JSON.stringify(swatch),
  own_low_mark: lowMark,
});
