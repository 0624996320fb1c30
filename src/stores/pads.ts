/**
 * Pads of paper. Verbs: `addPad(db, pad)`, `listPads(db, filter)`, `hasPads(db)`, `readPad(db, id)`,
 * `editPad(db, id, pad)`. Sheets are counted on designs, see designs.ts and movements.ts.
 */
import { sql } from 'kysely';
import type { NewPad, Pad, PadWithDesigns } from '#core/stash/stash.ts';
import type { Database } from './database.ts';
import { listDesigns, toPad } from './designs.ts';

export async function addPad(db: Database, pad: NewPad): Promise<Pad> {
  const row = await db.insertInto('pads').values(toRow(pad)).returningAll().executeTakeFirstOrThrow();
  return toPad(row);
}

export interface PadFilter {
  /** True for those that have designs and no sheet left, false for all others. */
  readonly used?: boolean;
  readonly from?: number;
  readonly limit: number;
}

/** With their designs, newest first. */
export async function listPads(
  db: Database,
  { used, from = 0, limit }: PadFilter,
): Promise<PadWithDesigns[]> {
  const rows = await db
    .selectFrom('pads')
    .selectAll()
    .where('put_away_at', 'is', null)
    .$if(used !== undefined, (query) => query.where(isUsed, '=', used ? 1 : 0))
    .orderBy('id', 'desc')
    .limit(limit)
    .offset(from)
    .execute();
  const designs = await listDesigns(db, { pads: rows.map(({ id }) => id), away: false });
  return rows.map((row) => {
    const own = designs.filter((design) => design.pad.id === row.id);
    return { pad: toPad(row), designs: own, sheets: own.reduce((sum, design) => sum + design.sheets, 0) };
  });
}

/** Whether there are any that are not put away. */
export const hasPads = async (db: Database): Promise<boolean> =>
  (await db.selectFrom('pads').select('id').where('put_away_at', 'is', null).limit(1).execute()).length > 0;

export async function readPad(db: Database, id: number): Promise<PadWithDesigns | undefined> {
  const row = await db.selectFrom('pads').selectAll().where('id', '=', id).executeTakeFirst();
  if (!row) return undefined;
  const designs = await listDesigns(db, { pad: id });
  return { pad: toPad(row), designs, sheets: designs.reduce((sum, design) => sum + design.sheets, 0) };
}

export async function editPad(db: Database, id: number, pad: NewPad): Promise<Pad | undefined> {
  const row = await db
    .updateTable('pads')
    .set(toRow(pad))
    .where('id', '=', id)
    .returningAll()
    .executeTakeFirst();
  return row && toPad(row);
}

const isUsed = sql<number>`(EXISTS (SELECT 1 FROM designs WHERE pad_id = pads.id AND designs.put_away_at IS NULL)
  AND NOT EXISTS (SELECT 1 FROM designs WHERE pad_id = pads.id AND designs.put_away_at IS NULL AND sheets > 0))`;

const toRow = ({ name, kind, sheet, measured, strip, grammage, lowMark, source, note, price }: NewPad) => ({
  name,
  kind,
  width: sheet.width,
  height: sheet.height,
  measured_width: measured.width ?? null,
  measured_height: measured.height ?? null,
  strip_edge: strip?.edge ?? null,
  strip_depth: strip?.depth ?? null,
  grammage,
  low_mark: lowMark,
  price: price?.hundredths ?? null,
  price_sheets: price?.sheets ?? null,
  source,
  note,
});
