/**
 * Projects of the journal. Verbs: `createProject(db, project, at)`, `editProject(db, id, changes, at)`,
 * `finishProject(db, id, at)`, `reopenProject(db, id, at)`, `changeStart(db, id, start, at)`, `readProject(db, id)`,
 * `listProjects(db, filter)`. With envelopes, cuts and outcomes it is read in journal.ts.
 */
import { type Selectable, type SqlBool, sql, type Updateable } from 'kysely';
import type { NewProject, Project, ProjectState } from '#core/project/journal.ts';
import { projectState } from '#core/project/states.ts';
import type { Length } from '#shared/length.ts';
import { type Database, transact } from './database.ts';
import type { Tables } from './tables.ts';

export interface ProjectFilter {
  readonly state?: ProjectState;
  readonly series?: number;
  /** Words that occur in its title, notes or lesson. */
  readonly text?: string;
  readonly limit?: number;
}

export function createProject(db: Database, project: NewProject, at: string): Promise<Project> {
  return transact(db, async (db) => {
    const { id } = await db
      .insertInto('projects')
      .values({
        ...NEW_ROW,
        ...toRow(project),
        title: project.title,
        created_at: at,
        changed_at: at,
      })
      .returning('id')
      .executeTakeFirstOrThrow();
    await settle(db, id, at);
    return (await readProject(db, id))!;
  });
}

/** Changes what is named and nothing else; a new recipe ends a start that was changed under the old one. */
export function editProject(
  db: Database,
  id: number,
  changes: Partial<NewProject>,
  at: string,
): Promise<Project | undefined> {
  return change(db, id, { ...toRow(changes), ...(changes.recipe !== undefined && { start: null }) }, at);
}

/** Nothing more is to come. */
export const finishProject = (db: Database, id: number, at: string): Promise<Project | undefined> =>
  change(db, id, { finished_at: at }, at);

export const reopenProject = (db: Database, id: number, at: string): Promise<Project | undefined> =>
  change(db, id, { finished_at: null }, at);

/** The start for what is still to be made, where a trial piece asked for another; null goes back to the recipe's. */
export const changeStart = (
  db: Database,
  id: number,
  start: Length | null,
  at: string,
): Promise<Project | undefined> => change(db, id, { start }, at);

export async function readProject(db: Database, id: number): Promise<Project | undefined> {
  const row = await projectRows(db).where('projects.id', '=', id).executeTakeFirst();
  return row && toProject(row);
}

/** Those changed last first. */
export async function listProjects(db: Database, filter: ProjectFilter = {}): Promise<Project[]> {
  const { state, series, text, limit } = filter;
  const rows = await projectRows(db)
    .$if(state !== undefined, (query) => query.where('state', '=', state!))
    .$if(series !== undefined, (query) => query.where('series_id', '=', series!))
    .$if(text !== undefined, (query) => query.where(mentions(text!)))
    .orderBy('changed_at', 'desc')
    .orderBy('projects.id', 'desc')
    .$if(limit !== undefined, (query) => query.limit(limit!))
    .execute();
  return rows.map(toProject);
}

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
        .where('cut_id', 'is not', null)
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

function change(
  db: Database,
  id: number,
  row: Updateable<Tables['projects']>,
  at: string,
): Promise<Project | undefined> {
  return transact(db, async (db) => {
    const { numUpdatedRows } = await db
      .updateTable('projects')
      .set({ ...row, changed_at: at })
      .where('id', '=', id)
      .executeTakeFirst();
    if (numUpdatedRows === 0n) return undefined;
    await settle(db, id, at);
    return readProject(db, id);
  });
}

const projectRows = (db: Database) =>
  db
    .selectFrom('projects')
    .leftJoin('series', 'series.id', 'projects.series_id')
    .selectAll('projects')
    .select(['series.name as series_name', 'series.note as series_note']);

const mentions = (text: string) =>
  sql<SqlBool>`instr(lower(projects.title || char(10) || projects.notes || char(10) || projects.lesson), lower(${text})) > 0`;

type Row = Selectable<Tables['projects']> & { series_name: string | null; series_note: string | null };

const toProject = (row: Row): Project => ({
  id: row.id,
  title: row.title,
  state: row.state,
  card:
    row.card_width === null
      ? null
      : { width: row.card_width, height: row.card_height!, bulk: row.card_bulk! },
  quantity: row.quantity,
  recipe: row.recipe === null ? null : JSON.parse(row.recipe),
  look: row.look === null ? null : JSON.parse(row.look),
  start: row.start,
  notcher: row.notcher_id,
  series:
    row.series_id === null ? null : { id: row.series_id, name: row.series_name!, note: row.series_note! },
  notes: row.notes,
  lesson: row.lesson,
  createdAt: row.created_at,
  changedAt: row.changed_at,
  finishedAt: row.finished_at,
});

const NEW_ROW = {
  quantity: 1,
  recipe: null,
  look: null,
  start: null,
  notcher_id: null,
  series_id: null,
  notes: '',
  lesson: '',
  card_width: null,
  card_height: null,
  card_bulk: null,
  finished_at: null,
};

/** The columns of what is named; what is not stays out of the row. */
function toRow({ title, card, quantity, recipe, look, notcher, series, notes, lesson }: Partial<NewProject>) {
  return {
    ...(title !== undefined && { title }),
    ...(card !== undefined && {
      card_width: card?.width ?? null,
      card_height: card?.height ?? null,
      card_bulk: card?.bulk ?? null,
    }),
    ...(quantity !== undefined && { quantity }),
    ...(recipe !== undefined && { recipe: toJson(recipe) }),
    ...(look !== undefined && { look: toJson(look) }),
    ...(notcher !== undefined && { notcher_id: notcher }),
    ...(series !== undefined && { series_id: series }),
    ...(notes !== undefined && { notes }),
    ...(lesson !== undefined && { lesson }),
  };
}

const toJson = (value: unknown): string | null => (value === null ? null : JSON.stringify(value));
