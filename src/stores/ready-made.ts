/**
 * Ready-made envelopes and their ledger. Verbs: `addReadyMade(db, { envelope, count, at })`, `listReadyMade(db)`,
 * `readReadyMade(db, id)`, `editReadyMade(db, id, envelope)`, `buyReadyMade`, `countReadyMade`, `putToUse` (db, id,
 * { count, at }), `listReadyMadeMovements(db, id)`, `listTakenFor(db, project)`. Counts follow by themselves (migration 0009).
 */
import type { NewReadyMade, ReadyMade, ReadyMadeKind, ReadyMadeMovement } from '#core/stash/ready-made.ts';
import { type Database, transact } from './database.ts';

interface Moved {
  readonly count: number;
  readonly at: string;
}

export function addReadyMade(
  db: Database,
  { envelope, count, at }: Moved & { envelope: NewReadyMade },
): Promise<ReadyMade> {
  return transact(db, async (db) => {
    const { id } = await db
      .insertInto('ready_made')
      .values(toRow(envelope))
      .returning('id')
      .executeTakeFirstOrThrow();
    if (count > 0) await record(db, id, { kind: 'bought', delta: count, at });
    return (await readReadyMade(db, id))!;
  });
}

/** Those of which most are left first. */
export const listReadyMade = (db: Database): Promise<ReadyMade[]> =>
  db.selectFrom('ready_made').selectAll().orderBy('count', 'desc').orderBy('id').execute();

export const readReadyMade = (db: Database, id: number): Promise<ReadyMade | undefined> =>
  db.selectFrom('ready_made').selectAll().where('id', '=', id).executeTakeFirst();

/** Puts its name, size and note right; how many there are is counted again instead. */
export const editReadyMade = (
  db: Database,
  id: number,
  envelope: NewReadyMade,
): Promise<ReadyMade | undefined> =>
  db.updateTable('ready_made').set(toRow(envelope)).where('id', '=', id).returningAll().executeTakeFirst();

/** Undefined when there is no such envelope. */
export const buyReadyMade = (
  db: Database,
  id: number,
  { count, at }: Moved,
): Promise<ReadyMade | undefined> => move(db, id, () => ({ kind: 'bought', delta: count, at }));

/** There are `count` now, whatever was thought. */
export const countReadyMade = (
  db: Database,
  id: number,
  { count, at }: Moved,
): Promise<ReadyMade | undefined> =>
  move(db, id, (before) => ({ kind: 'counted', delta: count - before, at }));

/** Refused when fewer are left. */
export const putToUse = (
  db: Database,
  id: number,
  { count, at, project }: Moved & { project: number | null },
): Promise<ReadyMade | { readonly refused: 'gone'; readonly left: number } | undefined> =>
  transact(db, async (db) => {
    const found = await readReadyMade(db, id);
    if (found && found.count < count) return { refused: 'gone', left: found.count };
    return move(db, id, () => ({ kind: 'used', delta: -count, at, project }));
  });

/** What was taken for a project, kind by kind. */
export async function listTakenFor(
  db: Database,
  project: number,
): Promise<{ readonly readyMade: ReadyMade; readonly count: number }[]> {
  const rows = await db
    .selectFrom('ready_made_movements')
    .innerJoin('ready_made', 'ready_made.id', 'ready_made_id')
    .selectAll('ready_made')
    .select(({ fn }) => fn.sum<number>('delta').as('delta'))
    .where('project_id', '=', project)
    .groupBy('ready_made.id')
    .orderBy('ready_made.id')
    .execute();
  return rows.map(({ delta, ...readyMade }) => ({ readyMade, count: -delta }));
}

/** Newest first. */
export async function listReadyMadeMovements(db: Database, id: number): Promise<ReadyMadeMovement[]> {
  const rows = await db
    .selectFrom('ready_made_movements')
    .selectAll()
    .where('ready_made_id', '=', id)
    .orderBy('id', 'desc')
    .execute();
  return rows.map(({ ready_made_id, project_id, ...row }) => ({
    ...row,
    readyMade: ready_made_id,
    project: project_id,
  }));
}

interface Line {
  readonly kind: ReadyMadeKind;
  readonly delta: number;
  readonly at: string;
  readonly project?: number | null;
}

const move = (db: Database, id: number, line: (before: number) => Line): Promise<ReadyMade | undefined> =>
  transact(db, async (db) => {
    const found = await readReadyMade(db, id);
    if (!found) return undefined;
    await record(db, id, line(found.count));
    return readReadyMade(db, id);
  });

const record = (db: Database, id: number, { kind, delta, at, project = null }: Line): Promise<unknown> =>
  db
    .insertInto('ready_made_movements')
    .values({ ready_made_id: id, kind, delta, at, project_id: project })
    .execute();

const toRow = ({ name, width, height, note }: NewReadyMade) => ({ name, width, height, note });
