/**
 * Writing a line of the ledger and asking what came after one. Everything else about the stash goes through here; the
 * counts follow by themselves (migration 0004). Knows no reasons: the verbs that move paper do.
 */
import type { MovementKind, Overtaken, PieceRef } from '#core/stash/stash.ts';
import type { Database } from './database.ts';

export interface Line {
  readonly at: string;
  readonly kind: MovementKind;
  readonly piece: PieceRef;
  readonly delta: number;
  readonly project?: number | null;
  readonly cut?: number | null;
  readonly reverses?: number;
  readonly note?: string;
}

/** Adds one line and answers with its number. */
export async function record(db: Database, line: Line): Promise<number> {
  const { id } = await db
    .insertInto('movements')
    .values({
      at: line.at,
      kind: line.kind,
      design_id: line.piece.design,
      offcut_id: line.piece.offcut,
      delta: line.delta,
      project_id: line.project ?? null,
      cut_id: line.cut ?? null,
      reverses: line.reverses ?? null,
      note: line.note ?? '',
    })
    .returning('id')
    .executeTakeFirstOrThrow();
  return id;
}

/** How many there are of the piece, undefined when there is no such piece. */
export async function countOf(db: Database, { design, offcut }: PieceRef): Promise<number | undefined> {
  const row =
    offcut === null
      ? await db.selectFrom('designs').select('sheets as count').where('id', '=', design).executeTakeFirst()
      : await db
          .selectFrom('offcuts')
          .select('count')
          .where('id', '=', offcut)
          .where('design_id', '=', design)
          .executeTakeFirst();
  return row?.count;
}

/**
 * The first line after `movement` that overtakes it: a later count always does; with `anyUse`, so does whatever took
 * some of the piece away. Lines that were undone, and those that undo, do not count.
 */
export async function overtakenBy(
  db: Database,
  movement: number,
  piece: PieceRef,
  anyUse: boolean,
): Promise<Overtaken | undefined> {
  const later = await db
    .selectFrom('movements as later')
    .leftJoin('movements as undoing', 'undoing.reverses', 'later.id')
    .leftJoin('projects', 'projects.id', 'later.project_id')
    .where('later.design_id', '=', piece.design)
    .where('later.offcut_id', 'is', piece.offcut)
    .where('later.id', '>', movement)
    .where('later.reverses', 'is', null)
    .where('undoing.id', 'is', null)
    .where((by) => by.or([by('later.kind', '=', 'counted'), ...(anyUse ? [by('later.delta', '<', 0)] : [])]))
    .select(['later.kind', 'later.at', 'projects.id as project', 'projects.title'])
    .orderBy('later.id')
    .executeTakeFirst();
  if (!later) return undefined;
  const { kind, at, project, title } = later;
  if (kind === 'counted') return { refused: 'counted since', piece, at };
  if (kind === 'cut') return { refused: 'used since', piece, project: { id: project!, title: title! }, at };
  return { refused: 'gone since', piece, kind, at };
}
