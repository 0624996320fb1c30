/**
 * Looking over the shelf. Verbs: `browseShelf(db, query)` finds offcuts by size, design, kind and place,
 * `listPlaces(db)`, `tallyShelf(db)`. Changes nothing, and knows no blanks: what a recipe may be cut from is searched
 * elsewhere.
 */
import { sql } from 'kysely';
import type { Design, Offcut } from '#core/stash/stash.ts';
import { type Length, length } from '#shared/length.ts';
import type { PaperKind } from '#shared/paper-kind.ts';
import type { Database } from './database.ts';
import { designsAway } from './designs.ts';
import { listOffcuts } from './offcuts.ts';

export interface ShelfQuery {
  /** Either may be left out; a print that may lie any way is also tried turned. */
  readonly width?: Length | undefined;
  readonly height?: Length | undefined;
  readonly design?: number | undefined;
  readonly pad?: number | undefined;
  readonly kind?: PaperKind | undefined;
  readonly place?: string | undefined;
  readonly limit: number;
}

/**
 * The smallest that will do first where a size is asked for, else newest first. Only what is still there; designs that
 * are `known` already are not read again.
 */
export async function browseShelf(
  db: Database,
  query: ShelfQuery,
  known: readonly Design[] = [],
): Promise<Offcut[]> {
  const { width = length(0), height = length(0), design, pad, kind, place, limit } = query;
  const sized = width > 0 || height > 0;
  const rows = await db
    .selectFrom('offcuts')
    .innerJoin('designs', 'designs.id', 'offcuts.design_id')
    .innerJoin('pads', 'pads.id', 'designs.pad_id')
    .select('offcuts.id')
    .where('count', '>', 0)
    .$if(design === undefined, (query) => query.where('designs.put_away_at', 'is', null))
    .$if(design === undefined && pad === undefined, (query) => query.where('pads.put_away_at', 'is', null))
    .$if(sized, (query) =>
      query.where((by) =>
        by.or([
          by.and([by('offcuts.width', '>=', width), by('offcuts.height', '>=', height)]),
          by.and([
            by('offcuts.width', '>=', height),
            by('offcuts.height', '>=', width),
            by('direction', '=', 'any way'),
          ]),
        ]),
      ),
    )
    .$if(design !== undefined, (query) => query.where('design_id', '=', design!))
    .$if(pad !== undefined, (query) => query.where('pad_id', '=', pad!))
    .$if(kind !== undefined, (query) => query.where('kind', '=', kind!))
    .$if(place !== undefined, (query) => query.where('place', '=', place!))
    .$if(sized, (query) => query.orderBy(sql`offcuts.width * offcuts.height`))
    .orderBy('offcuts.id', 'desc')
    .limit(limit)
    .execute();
  const ids = rows.map((row) => row.id);
  const offcuts = new Map((await listOffcuts(db, { ids }, known)).map((offcut) => [offcut.id, offcut]));
  return ids.map((id) => offcuts.get(id)!);
}

/** Where offcuts were ever put, by name. */
export async function listPlaces(db: Database): Promise<string[]> {
  const rows = await db
    .selectFrom('offcuts')
    .select('place')
    .distinct()
    .where('place', '<>', '')
    .orderBy('place')
    .execute();
  return rows.map((row) => row.place);
}

export interface ShelfTally {
  readonly pads: number;
  readonly sheets: number;
  readonly offcuts: number;
}

/** Without what is put away. */
export async function tallyShelf(db: Database): Promise<ShelfTally> {
  const row = await db
    .selectNoFrom((by) => [
      by
        .selectFrom('pads')
        .where('put_away_at', 'is', null)
        .select((by) => by.fn.countAll<number>().as('n'))
        .as('pads'),
      by
        .selectFrom('designs')
        .where('id', 'not in', designsAway(db))
        .select((by) => by.fn.coalesce(by.fn.sum<number>('sheets'), by.lit(0)).as('n'))
        .as('sheets'),
      by
        .selectFrom('offcuts')
        .where('design_id', 'not in', designsAway(db))
        .select((by) => by.fn.coalesce(by.fn.sum<number>('count'), by.lit(0)).as('n'))
        .as('offcuts'),
    ])
    .executeTakeFirstOrThrow();
  return { pads: row.pads ?? 0, sheets: row.sheets ?? 0, offcuts: row.offcuts ?? 0 };
}
