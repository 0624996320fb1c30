/**
 * The maker's tools, read with what her outcomes have taught about them. Verbs: `addNotcher(db, tool)`,
 * `listNotchers(db)`, `readNotcher(db, id)`, `chosenNotcher(db)`, `editNotcher(db, id, tool)`, `chooseNotcher(db, id)`,
 * `resetNotcher(db, id, at)` to learn afresh.
 */
import type { Selectable } from 'kysely';
import {
  type LearnedTool,
  learn,
  type NewTool,
  type NotedObservation,
  observationIn,
  type Tool,
} from '#core/project/learning.ts';
import { type Database, transact } from './database.ts';
import { toOutcome } from './envelope-rows.ts';
import { remembered } from './remembered.ts';
import type { Tables } from './tables.ts';

export async function addNotcher(db: Database, tool: NewTool): Promise<LearnedTool> {
  const { id } = await db
    .insertInto('notchers')
    .values({ ...toRow(tool), learning_since: null })
    .returning('id')
    .executeTakeFirstOrThrow();
  return (await readNotcher(db, id))!;
}

export const listNotchers = (db: Database): Promise<LearnedTool[]> =>
  remembered(db, 'notchers', async () => {
    const rows = await toolRows(db)
      .where('notchers.put_away_at', 'is', null)
      .orderBy('notchers.id')
      .execute();
    return Promise.all(rows.map((row) => learnFrom(db, row)));
  });

export const readNotcher = (db: Database, id: number): Promise<LearnedTool | undefined> =>
  remembered(db, `notcher ${id}`, async () => {
    const row = await toolRows(db).where('notchers.id', '=', id).executeTakeFirst();
    return row && learnFrom(db, row);
  });

/** The one in use; there always is one. */
export const chosenNotcher = (db: Database): Promise<LearnedTool> =>
  remembered(db, 'chosen notcher', async () => {
    const row = await toolRows(db)
      .whereRef('notchers.id', '=', 'settings.notcher_id')
      .executeTakeFirstOrThrow();
    return learnFrom(db, row);
  });

export async function editNotcher(db: Database, id: number, tool: NewTool): Promise<LearnedTool | undefined> {
  await db.updateTable('notchers').set(toRow(tool)).where('id', '=', id).execute();
  return readNotcher(db, id);
}

/** From now on this is the one in use, also where it was put away. */
export function chooseNotcher(db: Database, id: number): Promise<LearnedTool | undefined> {
  return transact(db, async (db) => {
    const { numUpdatedRows } = await db
      .updateTable('notchers')
      .set({ put_away_at: null })
      .where('id', '=', id)
      .executeTakeFirst();
    if (numUpdatedRows === 0n) return undefined;
    await db.updateTable('settings').set({ notcher_id: id }).execute();
    return readNotcher(db, id);
  });
}

/** Pins and what was learned until now count no more. */
export async function resetNotcher(db: Database, id: number, at: string): Promise<LearnedTool | undefined> {
  const row = { learning_since: at, pinned_inset: null, pinned_zero_offset: null };
  await db.updateTable('notchers').set(row).where('id', '=', id).execute();
  return readNotcher(db, id);
}

/** So many of the newest pockets are learned from: any tool is another by then. */
const POCKETS_AT_MOST = 200;

/** Pockets measured on envelopes of this tool since learning began, the newest, oldest first. */
async function observationsOf(db: Database, { id, learningSince }: Tool): Promise<NotedObservation[]> {
  const rows = await db
    .selectFrom('outcomes')
    .innerJoin('envelopes', 'envelopes.id', 'outcomes.envelope_id')
    .innerJoin('projects', 'projects.id', 'envelopes.project_id')
    .selectAll('outcomes')
    .select(['envelopes.number', 'projects.id as project', 'projects.title'])
    .where('outcomes.notcher_id', '=', id)
    .where('pocket_width', 'is not', null)
    .$if(learningSince !== null, (query) => query.where('outcomes.at', '>', learningSince!))
    .orderBy('outcomes.at', 'desc')
    .orderBy('outcomes.envelope_id', 'desc')
    .limit(POCKETS_AT_MOST)
    .execute();
  return rows.reverse().flatMap((row) => {
    const seen = observationIn(toOutcome(row));
    const project = { id: row.project, title: row.title };
    return seen ? [{ ...seen, envelope: row.envelope_id, number: row.number, project, at: row.at }] : [];
  });
}

const toolRows = (db: Database) =>
  db
    .selectFrom('notchers')
    .innerJoin('settings', (on) => on.onTrue())
    .selectAll('notchers')
    .select('settings.notcher_id as chosen');

type Row = Selectable<Tables['notchers']> & { chosen: number };

async function learnFrom(db: Database, row: Row): Promise<LearnedTool> {
  const tool = toTool(row);
  return learn(tool, await observationsOf(db, tool));
}

const toTool = (row: Row): Tool => ({
  id: row.id,
  name: row.name,
  kind: row.kind,
  graduation: row.graduation,
  largestSheet: row.largest_sheet,
  turning: row.turning,
  pinnedInset: row.pinned_inset,
  pinnedZeroOffset: row.pinned_zero_offset,
  learningSince: row.learning_since,
  chosen: row.chosen === row.id,
});

const toRow = (tool: NewTool) => ({
  name: tool.name,
  kind: tool.kind,
  graduation: tool.graduation,
  largest_sheet: tool.largestSheet,
  turning: tool.turning,
  pinned_inset: tool.pinnedInset,
  pinned_zero_offset: tool.pinnedZeroOffset,
});
