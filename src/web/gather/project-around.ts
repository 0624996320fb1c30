/** Gathers what a project's own page tells besides the project: its set, and others for the same card. Writes nothing. */
import { partsOfSet } from '#core/batch/set-parts.ts';
import type { ProjectInFull } from '#core/project/journal.ts';
import { hasTried } from '#core/project/next.ts';
import type { Database } from '#stores/database.ts';
import { findMadeBefore, kinOf } from '#stores/made-before.ts';
import { listPlans } from '#stores/plans.ts';
import type { ProjectAround } from '#views/projects/view.ts';

export async function readProjectAround(db: Database, full: ProjectInFull): Promise<ProjectAround> {
  const { project, envelopes } = full;
  const { origin, again } = await kinOf(db, project.id);
  const fresh = project.card !== null && !origin && project.finishedAt === null && !hasTried(envelopes);
  return {
    parts: partsOfSet(full, await listPlans(db, project.id)),
    origin,
    again,
    madeBefore: fresh ? await findMadeBefore(db, project.card!, project.id) : undefined,
  };
}
