/** A project with all that came of it. Verbs: `readProjectInFull(db, id)`, `readSoFar(db, id)`, `listSoFar(db, filter)`, `firstDesigns(db, projects)`. */
import type { ProjectInFull, ProjectSoFar } from '#core/project/journal.ts';
import type { Design } from '#core/stash/stash.ts';
import { listCuts } from './cuts.ts';
import type { Database } from './database.ts';
import { listDesigns } from './designs.ts';
import { envelopesOf, listEnvelopes } from './envelopes.ts';
import { listProjects, type ProjectFilter, readProject } from './projects.ts';

export async function readProjectInFull(db: Database, id: number): Promise<ProjectInFull | undefined> {
  const project = await readProject(db, id);
  return project && { project, envelopes: await listEnvelopes(db, id), cuts: await listCuts(db, id) };
}

export const readSoFar = async (db: Database, id: number): Promise<ProjectSoFar | undefined> =>
  (await listSoFar(db, { ids: [id] }))[0];

/** Those of these that are there, the ones changed last first; all their envelopes are read at once. */
export async function listSoFar(db: Database, filter: ProjectFilter): Promise<ProjectSoFar[]> {
  const projects = await listProjects(db, filter);
  const envelopes = await envelopesOf(
    db,
    projects.map(({ id }) => id),
  );
  return projects.map((project) => ({ project, envelopes: envelopes.get(project.id) ?? [] }));
}

/** The paper that shows on a project's picture: its first envelope's. Projects without paper are left out. */
export async function firstDesigns(db: Database, projects: readonly number[]): Promise<Map<number, Design>> {
  const rows = await db
    .selectFrom('envelopes')
    .select(({ fn }) => ['project_id', 'design_id', fn.min('number').as('number')])
    .where('project_id', 'in', projects)
    .where('design_id', 'is not', null)
    .where('state', '<>', 'spoiled')
    .groupBy('project_id')
    .execute();
  const designs = await listDesigns(db, { ids: [...new Set(rows.map((row) => row.design_id!))] });
  const byId = new Map(designs.map((design) => [design.id, design]));
  return new Map(rows.map((row) => [row.project_id, byId.get(row.design_id!)!]));
}
