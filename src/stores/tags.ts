/**
 * Tags for technique and occasion, and which projects bear them. Verbs: `tagProject(db, project, names)`,
 * `tagsOf(db, projects)`, `tagsAround(db, project, limit)`, `listTags(db, { from, limit, often })`, `renameTag(db, id, name)`. A tag that no project bears is gone.
 */
import { sql } from 'kysely';
import type { Tag, TagUsed } from '#shared/tags.ts';
import { type Database, transact } from './database.ts';

/** These and no others; one that is known under other capitals keeps its own. */
export function tagProject(db: Database, project: number, names: readonly string[]): Promise<void> {
  return transact(db, async (db) => {
    await db.deleteFrom('project_tags').where('project_id', '=', project).execute();
    for (const name of names) {
      await db
        .insertInto('tags')
        .values({ name })
        .onConflict((clash) => clash.doNothing())
        .execute();
      const { id } = await db
        .selectFrom('tags')
        .select('id')
        .where('name', '=', name)
        .executeTakeFirstOrThrow();
      await bear(db, [project], id);
    }
    await dropUnused(db);
  });
}

/** Of each of these projects, by name; those without any are left out. */
export async function tagsOf(db: Database, projects: readonly number[]): Promise<Map<number, Tag[]>> {
  const tags = new Map<number, Tag[]>();
  if (projects.length === 0) return tags;
  const rows = await db
    .selectFrom('project_tags')
    .innerJoin('tags', 'tags.id', 'tag_id')
    .select(['project_id', 'tags.id', 'name'])
    .where('project_id', 'in', projects)
    .orderBy('name')
    .execute();
  for (const { project_id, id, name } of rows)
    tags.set(project_id, [...(tags.get(project_id) ?? []), { id, name }]);
  return tags;
}

/** Those of one project by name, and the most used of all to choose from. */
export async function tagsAround(
  db: Database,
  project: number,
  limit: number,
): Promise<{ readonly own: readonly Tag[]; readonly used: readonly Tag[] }> {
  const { rows } = await sql<Tag & { bears: 0 | 1 }>`
    SELECT tags.id, name, max(project_id = ${project}) AS bears FROM tags
    JOIN project_tags ON tag_id = tags.id JOIN projects ON projects.id = project_id
    WHERE put_away_at IS NULL OR project_id = ${project}
    GROUP BY tags.id ORDER BY bears DESC, count(*) DESC, name LIMIT ${limit}`.execute(db);
  const tags = rows.map(({ id, name }) => ({ id, name }));
  const own = tags.filter((_, index) => rows[index]!.bears === 1);
  return { own: own.sort((one, other) => one.name.localeCompare(other.name, 'en')), used: tags };
}

/** By name, or those used most `often` first. */
export const listTags = (
  db: Database,
  { from = 0, limit, often = false }: { from?: number; limit: number; often?: boolean },
): Promise<TagUsed[]> =>
  db
    .selectFrom('tags')
    .select((by) => [
      'id',
      'name',
      by
        .selectFrom('project_tags')
        .innerJoin('projects', 'projects.id', 'project_id')
        .where('put_away_at', 'is', null)
        .select((by) => by.fn.countAll<number>().as('count'))
        .whereRef('tag_id', '=', 'tags.id')
        .$asScalar()
        .$notNull()
        .as('projects'),
    ])
    .$if(often, (query) => query.orderBy('projects', 'desc'))
    .orderBy('name')
    .offset(from)
    .limit(limit)
    .execute();

export const readTag = (db: Database, id: number): Promise<Tag | undefined> =>
  db.selectFrom('tags').selectAll().where('id', '=', id).executeTakeFirst();

/** Where another tag has that name, the two become that one. Undefined where there is no such tag. */
export function renameTag(db: Database, id: number, name: string): Promise<Tag | undefined> {
  return transact(db, async (db) => {
    const other = await db
      .selectFrom('tags')
      .selectAll()
      .where('name', '=', name)
      .where('id', '<>', id)
      .executeTakeFirst();
    if (!other)
      return db.updateTable('tags').set({ name }).where('id', '=', id).returningAll().executeTakeFirst();
    if (!(await readTag(db, id))) return undefined;
    const borne = await db.selectFrom('project_tags').select('project_id').where('tag_id', '=', id).execute();
    await bear(
      db,
      borne.map(({ project_id }) => project_id),
      other.id,
    );
    await db.deleteFrom('tags').where('id', '=', id).execute();
    return other;
  });
}

async function bear(db: Database, projects: readonly number[], tag: number): Promise<void> {
  for (const project_id of projects)
    await db
      .insertInto('project_tags')
      .values({ project_id, tag_id: tag })
      .onConflict((clash) => clash.doNothing())
      .execute();
}

const dropUnused = (db: Database) =>
  db
    .deleteFrom('tags')
    .where(sql<boolean>`NOT EXISTS (SELECT 1 FROM project_tags WHERE tag_id = tags.id)`)
    .execute();
