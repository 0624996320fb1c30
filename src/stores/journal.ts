/** A project with all that came of it. Verbs: `readProjectInFull(db, id)`, `latestProjects(db, limit)`. */
import type { ProjectInFull } from '#core/project/journal.ts';
import { listCuts } from './cuts.ts';
import type { Database } from './database.ts';
import { listEnvelopes } from './envelopes.ts';
import { listProjects, readProject } from './projects.ts';

export async function readProjectInFull(db: Database, id: number): Promise<ProjectInFull | undefined> {
  const project = await readProject(db, id);
  return project && { project, envelopes: await listEnvelopes(db, id), cuts: await listCuts(db, id) };
}

/** Those changed last, each in full. */
export async function latestProjects(db: Database, limit: number): Promise<ProjectInFull[]> {
  const projects = await listProjects(db, { limit });
  return Promise.all(
    projects.map(async (project) => ({
      project,
      envelopes: await listEnvelopes(db, project.id),
      cuts: await listCuts(db, project.id),
    })),
  );
}
