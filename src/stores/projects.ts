/**
 * Projects of the journal. Verbs: `createProject(db, project, at)`, `editProject(db, id, changes, at)`,
 * `finishProject(db, id, at)`, `reopenProject(db, id, at)`, `changeStart(db, id, start, at)`, `readProject(db, id)`,
 * `listProjects(db, filter)`, `titlesOf(db, ids)`. With envelopes, cuts and outcomes it is read in journal.ts.
 */
import type { Updateable } from 'kysely';
import type { NewProject, Project, ProjectState } from '#core/project/journal.ts';
import type { Length } from '#shared/length.ts';
import { type Database, transact } from './database.ts';
import { retellLessons } from './lessons.ts';
import { settle } from './progress.ts';
import { mentions, NEW_ROW, projectRows, toProject, toProjectRow } from './project-rows.ts';
import type { Tables } from './tables.ts';

export interface ProjectFilter {
  readonly ids?: readonly number[];
  readonly state?: ProjectState;
  readonly series?: number;
  /** A tag that it bears, whatever its capitals. */
  readonly tag?: string;
  /** Words that occur in its title, notes or lesson. */
  readonly text?: string;
  readonly limit?: number;
  /** How many to pass over. */
  readonly from?: number;
  /** In the order in which they were begun. */
  readonly oldestFirst?: boolean;
}

export function createProject(db: Database, project: NewProject, at: string): Promise<Project> {
  return transact(db, async (db) => {
    const { id } = await db
      .insertInto('projects')
      .values({
        ...NEW_ROW,
        ...toProjectRow(project),
        title: project.title,
        created_at: at,
        changed_at: at,
      })
      .returning('id')
      .executeTakeFirstOrThrow();
    await settle(db, id, at);
    if (project.lesson) await retellLessons(db, id, at);
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
  return transact(db, async (db) => {
    const row = { ...toProjectRow(changes), ...(changes.recipe !== undefined && { start: null }) };
    const changed = await change(db, id, row, at);
    if (changed && changes.lesson !== undefined) await retellLessons(db, id, at);
    return changed;
  });
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

/** Of these projects, as far as they are there. */
export async function titlesOf(db: Database, ids: readonly number[]): Promise<Map<number, string>> {
  const different = [...new Set(ids)];
  if (different.length === 0) return new Map();
  const rows = await db.selectFrom('projects').select(['id', 'title']).where('id', 'in', different).execute();
  return new Map(rows.map(({ id, title }) => [id, title]));
}

/** Those changed last first, unless asked otherwise; one put away only where it is named. */
export async function listProjects(db: Database, filter: ProjectFilter = {}): Promise<Project[]> {
  const { ids, state, series, tag, text, limit, from, oldestFirst } = filter;
  if (ids?.length === 0) return [];
  const rows = await projectRows(db)
    .$if(ids === undefined, (query) => query.where('projects.put_away_at', 'is', null))
    .$if(ids !== undefined, (query) => query.where('projects.id', 'in', ids!))
    .$if(state !== undefined, (query) => query.where('state', '=', state!))
    .$if(series !== undefined, (query) => query.where('series_id', '=', series!))
    .$if(tag !== undefined, (query) => query.where('projects.id', 'in', bearing(db, tag!)))
    .$if(text !== undefined, (query) => query.where(mentions(text!)))
    .orderBy(oldestFirst ? 'created_at' : 'changed_at', oldestFirst ? 'asc' : 'desc')
    .orderBy('projects.id', oldestFirst ? 'asc' : 'desc')
    .$if(limit !== undefined, (query) => query.limit(limit!))
    .$if(from !== undefined, (query) => query.offset(from!))
    .execute();
  return rows.map(toProject);
}

const bearing = (db: Database, tag: string) =>
  db
    .selectFrom('project_tags')
    .innerJoin('tags', 'tags.id', 'tag_id')
    .select('project_id')
    .where('name', '=', tag);

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
