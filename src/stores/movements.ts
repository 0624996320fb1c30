/**
 * Paper coming and going by hand, and the ledger to read. Verbs: `buySheets`, `countSheets`, `binSheets` (db, design,
 * { sheets, at, note? }), `countOffcut(db, offcut, { count, at })`, `binOffcut(db, offcut, { at, count? })`,
 * `putBack(db, offcut, at)`, `undoMovement(db, movement, at)`, `listMovements(db, filter)`. Cutting is in cuts.ts.
 */
import { isByHand, type Movement, type Overtaken, type PieceRef } from '#core/stash/stash.ts';
import { type Database, transact } from './database.ts';
import { countOf, overtakenBy, record } from './ledger.ts';

/** `gone`: fewer are left than were to be taken away. */
export type Moved = { readonly movement: number } | { readonly refused: 'gone'; readonly left: number };

interface Sheets {
  readonly sheets: number;
  readonly at: string;
  readonly note?: string;
}

/** Undefined when there is no such design. */
export const buySheets = (db: Database, design: number, bought: Sheets): Promise<number | undefined> =>
  transact(db, async (db) => {
    const piece = { design, offcut: null };
    if ((await countOf(db, piece)) === undefined) return undefined;
    return record(db, { ...bought, kind: 'bought', piece, delta: bought.sheets });
  });

/** There are `sheets` now, whatever was thought; undefined when there is no such design. */
export const countSheets = (db: Database, design: number, counted: Sheets): Promise<number | undefined> =>
  count(db, { design, offcut: null }, counted.sheets, counted);

/** Sheets that are gone, or were `spoiled` before they were cut. */
export const binSheets = (
  db: Database,
  design: number,
  { spoiled = false, ...gone }: Sheets & { spoiled?: boolean },
): Promise<Moved | undefined> =>
  takeAway(db, { design, offcut: null }, gone.sheets, { ...gone, kind: spoiled ? 'spoiled' : 'binned' });

/** There are `count` of this offcut now; undefined when there is no such offcut. */
export async function countOffcut(
  db: Database,
  offcut: number,
  counted: { count: number; at: string; note?: string },
): Promise<number | undefined> {
  const piece = await refOfOffcut(db, offcut);
  return piece && count(db, piece, counted.count, counted);
}

/** “Gone”: all that are alike, unless a count is given. */
export async function binOffcut(
  db: Database,
  offcut: number,
  { spoiled = false, ...gone }: { count?: number; at: string; note?: string; spoiled?: boolean },
): Promise<Moved | undefined> {
  const piece = await refOfOffcut(db, offcut);
  return piece && takeAway(db, piece, gone.count, { ...gone, kind: spoiled ? 'spoiled' : 'binned' });
}

/** Undoes the last time that this offcut went; undefined when it never did. */
export const putBack = (
  db: Database,
  offcut: number,
  at: string,
): Promise<{ readonly movement: number } | Overtaken | undefined> =>
  transact(db, async (db) => {
    const last = await db
      .selectFrom('movements')
      .select('id')
      .where('offcut_id', '=', offcut)
      .where('kind', 'in', ['binned', 'spoiled'])
      .where('id', 'not in', (query) =>
        query
          .selectFrom('movements')
          .select('reverses')
          .$castTo<{ reverses: number }>()
          .where('reverses', 'is not', null),
      )
      .orderBy('id', 'desc')
      .executeTakeFirst();
    return last && undoMovement(db, last.id, at);
  });

/** Undoes one line written by hand: bought, binned or spoiled. Undefined for any other line, and for none. */
export const undoMovement = (
  db: Database,
  movement: number,
  at: string,
): Promise<{ readonly movement: number } | Overtaken | undefined> =>
  transact(db, async (db) => {
    const [line] = await listMovements(db, { id: movement });
    if (!line || !isByHand(line)) return undefined;
    if (line.reversedBy !== null) return { refused: 'undone already', at: null };
    const left = (await countOf(db, line.piece))!;
    const overtaken = await overtakenBy(db, movement, line.piece, left < line.delta);
    if (overtaken) return overtaken;
    if (left < line.delta) return { refused: 'too few left', piece: line.piece, left };
    const kind = line.delta > 0 ? 'withdrawn' : 'put back';
    return {
      movement: await record(db, { at, kind, piece: line.piece, delta: -line.delta, reverses: movement }),
    };
  });

export interface MovementFilter {
  readonly id?: number;
  readonly piece?: PieceRef;
  readonly project?: number;
  readonly cut?: number;
  /** Only lines before this one: for the next page. */
  readonly before?: number;
  readonly limit?: number;
}

/** Newest first. */
export async function listMovements(db: Database, filter: MovementFilter = {}): Promise<Movement[]> {
  const { id, piece, project, cut, before, limit } = filter;
  const rows = await db
    .selectFrom('movements as line')
    .leftJoin('movements as undoing', 'undoing.reverses', 'line.id')
    .selectAll('line')
    .select('undoing.id as reversedBy')
    .$if(id !== undefined, (query) => query.where('line.id', '=', id!))
    .$if(piece !== undefined, (query) =>
      query.where('line.design_id', '=', piece!.design).where('line.offcut_id', 'is', piece!.offcut),
    )
    .$if(project !== undefined, (query) => query.where('line.project_id', '=', project!))
    .$if(cut !== undefined, (query) => query.where('line.cut_id', '=', cut!))
    .$if(before !== undefined, (query) => query.where('line.id', '<', before!))
    .orderBy('line.id', 'desc')
    .$if(limit !== undefined, (query) => query.limit(limit!))
    .execute();
  return rows.map(({ design_id, offcut_id, project_id, cut_id, ...row }) => ({
    ...row,
    piece: { design: design_id, offcut: offcut_id },
    project: project_id,
    cut: cut_id,
  }));
}

const count = (
  db: Database,
  piece: PieceRef,
  now: number,
  { at, note = '' }: { at: string; note?: string },
): Promise<number | undefined> =>
  transact(db, async (db) => {
    const before = await countOf(db, piece);
    if (before === undefined) return undefined;
    return record(db, { at, kind: 'counted', piece, delta: now - before, note });
  });

const takeAway = (
  db: Database,
  piece: PieceRef,
  howMany: number | undefined,
  { at, kind, note = '' }: { at: string; kind: 'binned' | 'spoiled'; note?: string },
): Promise<Moved | undefined> =>
  transact(db, async (db) => {
    const left = await countOf(db, piece);
    if (left === undefined) return undefined;
    const away = howMany ?? left;
    if (left === 0 || away > left) return { refused: 'gone', left };
    return { movement: await record(db, { at, kind, piece, delta: -away, note }) };
  });

async function refOfOffcut(db: Database, id: number): Promise<PieceRef | undefined> {
  const row = await db.selectFrom('offcuts').select('design_id').where('id', '=', id).executeTakeFirst();
  return row && { design: row.design_id, offcut: id };
}
