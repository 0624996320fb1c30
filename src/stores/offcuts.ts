/**
 * Offcuts on the shelf. Verbs: `addOffcut(db, { design, offcut, count, at })`, `listOffcuts(db, filter)`,
 * `glimpseOffcuts(db, ids)`, `readOffcut(db, id)`, `findByCode(db, text)`, `editOffcut(db, id, offcut)`. Counts move in movements.ts only.
 */
import type { Selectable } from 'kysely';
import type { Design, NewOffcut, Offcut } from '#core/stash/stash.ts';
import { pencilCode, readPencilCode } from '#shared/ids.ts';
import type { Size } from '#shared/size.ts';
import { type Database, transact } from './database.ts';
import { designsAway, listDesigns } from './designs.ts';
import { record } from './ledger.ts';
import type { Tables } from './tables.ts';

export interface OffcutFilter {
  readonly ids?: readonly number[];
  readonly designs?: readonly number[];
  readonly place?: string;
  /** Only those still on the shelf, which is what is meant when absent. */
  readonly onShelf?: boolean;
  readonly limit?: number;
}

/** An offcut that she found or counted; undefined when there is no such design. */
export function addOffcut(
  db: Database,
  { design, offcut, count, at }: { design: number; offcut: NewOffcut; count: number; at: string },
): Promise<Offcut | undefined> {
  return transact(db, async (db) => {
    const found = await db.selectFrom('designs').select('id').where('id', '=', design).executeTakeFirst();
    if (!found) return undefined;
    const id = await insertOffcut(db, design, offcut);
    await record(db, { at, kind: 'counted', piece: { design, offcut: id }, delta: count });
    return readOffcut(db, id);
  });
}

/** Newest first, paper put away only where it is named; designs that are `known` already are not read again. */
export async function listOffcuts(
  db: Database,
  filter: OffcutFilter = {},
  known: readonly Design[] = [],
): Promise<Offcut[]> {
  const { ids, designs: ofDesigns, place, onShelf = true, limit } = filter;
  if (ids?.length === 0) return [];
  const rows = await db
    .selectFrom('offcuts')
    .selectAll()
    .$if(ids === undefined && ofDesigns === undefined, (query) =>
      query.where('design_id', 'not in', designsAway(db)),
    )
    .$if(ids !== undefined, (query) => query.where('id', 'in', ids!))
    .$if(ofDesigns !== undefined, (query) => query.where('design_id', 'in', ofDesigns!))
    .$if(place !== undefined, (query) => query.where('place', '=', place!))
    .$if(onShelf, (query) => query.where('count', '>', 0))
    .orderBy('id', 'desc')
    .$if(limit !== undefined, (query) => query.limit(limit!))
    .execute();
  const designs = new Map(known.map((design) => [design.id, design]));
  const unknown = new Set(rows.map((row) => row.design_id).filter((id) => !designs.has(id)));
  for (const design of await listDesigns(db, { ids: [...unknown] })) designs.set(design.id, design);
  return rows.map((row) => toOffcut(row, designs));
}

/** How large these are and where they lie, as far as they are there. */
export async function glimpseOffcuts(
  db: Database,
  ids: readonly number[],
): Promise<Map<number, Size & { readonly place: string }>> {
  if (ids.length === 0) return new Map();
  const rows = await db
    .selectFrom('offcuts')
    .select(['id', 'width', 'height', 'place'])
    .where('id', 'in', ids)
    .execute();
  return new Map(rows.map(({ id, ...offcut }) => [id, offcut]));
}

export async function readOffcut(db: Database, id: number): Promise<Offcut | undefined> {
  const [offcut] = await listOffcuts(db, { ids: [id], onShelf: false });
  return offcut;
}

/** By what is pencilled on its back, also when it is gone. */
export async function findByCode(db: Database, text: string): Promise<Offcut | undefined> {
  const code = readPencilCode(text);
  const found = await db.selectFrom('offcuts').select('id').where('code', '=', code).executeTakeFirst();
  return found && readOffcut(db, found.id);
}

/** Puts its size, border, place and note right; how many there are is counted again instead. */
export async function editOffcut(db: Database, id: number, offcut: NewOffcut): Promise<Offcut | undefined> {
  await db.updateTable('offcuts').set(toRow(offcut)).where('id', '=', id).execute();
  return readOffcut(db, id);
}

/** The row alone, still counting none: for verbs that record its movement next. */
export async function insertOffcut(db: Database, design: number, offcut: NewOffcut): Promise<number> {
  const { last } = await db
    .selectFrom('offcuts')
    .select(({ fn }) => fn.max<number | null>('id').as('last'))
    .executeTakeFirstOrThrow();
  const id = (last ?? 0) + 1;
  const row = { id, code: pencilCode(id), design_id: design, ...toRow(offcut) };
  await db.insertInto('offcuts').values(row).execute();
  return id;
}

export const toOffcut = (
  { id, code, design_id, width, height, border, place, note, count }: Selectable<Tables['offcuts']>,
  designs: ReadonlyMap<number, Design>,
): Offcut => ({
  ...{ id, code, width, height, place, note, count },
  border: border === 1,
  design: designs.get(design_id)!,
});

const toRow = ({ width, height, border, place, note }: NewOffcut) => ({
  width,
  height,
  border: border ? (1 as const) : (0 as const),
  place,
  note,
});
