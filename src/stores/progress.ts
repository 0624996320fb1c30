/** How far a project has come, kept beside it so that the journal can be asked by state. Verb: `settle(db, id, at)`. */
import type { ProjectState } from '#core/project/journal.ts';
import { projectState } from '#core/project/states.ts';
import type { Database } from './database.ts';

/** Sets the project's state by what has been done, and when it was last touched. */
export async function settle(db: Database, id: number, at: string): Promise<void> {
  const row = await progressRows(db).where('projects.id', '=', id).executeTakeFirstOrThrow();
  const state = stateOf(row);
  await db.updateTable('projects').set({ state, changed_at: at }).where('id', '=', id).execute();
}

/** What a project's state follows from, for `settle` and for the check that it did. */
export const progressRows = (db: Database) =>
  db.selectFrom('projects').select((by) => [
    'projects.id',
    'projects.state',
    'projects.recipe',
    'projects.quantity',
    'projects.finished_at',
    by
      .selectFrom('cuts')
      .select((by) => by.fn.countAll<number>().as('count'))
      .whereRef('cuts.project_id', '=', 'projects.id')
      .where('undone_at', 'is', null)
      .as('cuts'),
    ...(['blank', 'made'] as const).map((state) =>
      by
        .selectFrom('envelopes')
        .select((by) => by.fn.countAll<number>().as('count'))
        .whereRef('envelopes.project_id', '=', 'projects.id')
        .where((by) => by.or([by('cut_id', 'is not', null), by('kept', '=', 1)]))
        .where('envelopes.state', '=', state)
        .as(state),
    ),
  ]);

export const stateOf = (
  row: Awaited<ReturnType<ReturnType<typeof progressRows>['executeTakeFirstOrThrow']>>,
): ProjectState =>
  projectState({
    hasRecipe: row.recipe !== null,
    cuts: row.cuts ?? 0,
    blanks: row.blank ?? 0,
    made: row.made ?? 0,
    quantity: row.quantity,
    finished: row.finished_at !== null,
  });
