/**
 * Pads, and which of them run low. Verbs: `addPad(db, pad)`, `listPads(db)`, `readPad(db, id)`,
 * `editPad(db, id, pad)`, `listLow(db)`. Sheets are counted on designs, see designs.ts and movements.ts.
 */
import { type NewPad, type Pad, type PadWithDesigns, runsLow } from '#core/stash/stash.ts';
import type { Database } from './database.ts';
import { listDesigns, toPad } from './designs.ts';

export async function addPad(db: Database, pad: NewPad): Promise<Pad> {
  const row = await db.insertInto('pads').values(toRow(pad)).returningAll().executeTakeFirstOrThrow();
  return toPad(row);
}

/** Every pad with its designs, newest first. */
export async function listPads(db: Database): Promise<PadWithDesigns[]> {
  const rows = await db.selectFrom('pads').selectAll().orderBy('id', 'desc').execute();
  const designs = await listDesigns(db);
  return rows.map((row) => {
    const own = designs.filter((design) => design.pad.id === row.id);
    return { pad: toPad(row), designs: own, sheets: own.reduce((sum, design) => sum + design.sheets, 0) };
  });
}

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

/**
 * Pads at their low mark or under it, worst first: least left for their mark. A mark of 0 asks for no reminder, and a
 * pad whose designs are still to be named is not missed yet.
 */
export async function listLow(db: Database): Promise<PadWithDesigns[]> {
  const low = (await listPads(db)).filter((one) => one.designs.length > 0 && runsLow(one));
  return low.sort(
    (a, b) => a.sheets / a.pad.lowMark - b.sheets / b.pad.lowMark || b.pad.lowMark - a.pad.lowMark,
  );
}

const toRow = ({ name, kind, sheet, measured, strip, grammage, lowMark, source, note }: NewPad) => ({
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
  source,
  note,
});
