/** Gathers what the pages of one project show. Writes nothing. */

import { recipeInUse } from '#core/project/in-use.ts';
import type { ProjectInFull } from '#core/project/journal.ts';
import { nextThing } from '#core/project/next.ts';
import type { Units } from '#shared/length.ts';
import type { Database } from '#stores/database.ts';
import { listDesigns } from '#stores/designs.ts';
import { readProjectInFull } from '#stores/journal.ts';
import { listOffcuts } from '#stores/offcuts.ts';
import { listTakenFor } from '#stores/ready-made.ts';
import { readSettings } from '#stores/settings.ts';
import type { ProjectView } from '#views/projects/view.ts';

export async function readProjectView(
  db: Database,
  id: number,
  units: Units,
): Promise<ProjectView | undefined> {
  const full = await readProjectInFull(db, id);
  return full && viewOf(db, full, units);
}

async function viewOf(db: Database, full: ProjectInFull, units: Units): Promise<ProjectView> {
  const pieces = full.cuts.flatMap((cut) => cut.pieces);
  const designs = await listDesigns(db, { ids: [...new Set(pieces.map(({ piece }) => piece.design))] });
  const offcuts = await listOffcuts(db, {
    ids: pieces.flatMap(({ piece, leftovers }) => [
      ...(piece.offcut === null ? [] : [piece.offcut]),
      ...leftovers.map((one) => one.offcut),
    ]),
    onShelf: false,
  });
  return {
    full,
    recipe: recipeInUse(full.project),
    next: nextThing(full),
    designs: new Map(designs.map((one) => [one.id, one])),
    offcuts: new Map(offcuts.map((one) => [one.id, one])),
    units,
    post: (await readSettings(db)).post,
    taken: await listTakenFor(db, full.project.id),
  };
}
