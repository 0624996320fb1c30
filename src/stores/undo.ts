/** Undoing a cut: everything back as it was, or nothing and the reason. Verb: `undoCut(db, cut, at)`. */
import type { Movement, Overtaken } from '#core/stash/stash.ts';
import { projectsOf, readCut } from './cuts.ts';
import { type Database, transact } from './database.ts';
import { overtakenBy, record } from './ledger.ts';
import { listMovements } from './movements.ts';
import { settle } from './progress.ts';

/** Undefined when there is no such cut. Its blanks leave the project, and what was spoiled of it counts no more. */
export function undoCut(
  db: Database,
  id: number,
  at: string,
): Promise<{ readonly undone: number } | Overtaken | undefined> {
  return transact(db, async (db) => {
    const cut = await readCut(db, id);
    if (!cut) return undefined;
    if (cut.undoneAt !== null) return { refused: 'undone already', at: cut.undoneAt };
    const lines = await listMovements(db, { cut: id });
    const overtaken = (await madeSince(db, id)) ?? (await firstOvertaken(db, lines));
    if (overtaken) return overtaken;
    for (const line of lines) await reverse(db, line, at);
    await db.deleteFrom('envelopes').where('cut_id', '=', id).execute();
    const plan = db.selectFrom('plans').select('id').where('cut_id', '=', id);
    await db.deleteFrom('spoiled_parts').where('plan_id', 'in', plan).execute();
    await db.updateTable('cuts').set({ undone_at: at }).where('id', '=', id).execute();
    for (const project of projectsOf(cut.project, cut.pieces)) await settle(db, project, at);
    return { undone: id };
  });
}

async function madeSince(db: Database, cut: number): Promise<Overtaken | undefined> {
  const made = await db
    .selectFrom('envelopes')
    .select('number')
    .where('cut_id', '=', cut)
    .where('state', '<>', 'blank')
    .orderBy('number')
    .executeTakeFirst();
  return made && { refused: 'made since', envelope: made.number };
}

/** A leftover may not have been touched; the paper that it came from may, as long as it was not counted. */
async function firstOvertaken(db: Database, lines: readonly Movement[]): Promise<Overtaken | undefined> {
  for (const { id, piece, delta } of lines) {
    const overtaken = await overtakenBy(db, id, piece, delta > 0);
    if (overtaken) return overtaken;
  }
  return undefined;
}

const reverse = (db: Database, { id, piece, delta, project, cut }: Movement, at: string): Promise<number> =>
  record(db, {
    at,
    kind: delta > 0 ? 'withdrawn' : 'put back',
    piece,
    delta: -delta,
    project,
    cut,
    reverses: id,
  });
