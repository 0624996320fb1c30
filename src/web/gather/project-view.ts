/** Gathers what the pages of one project show. Writes nothing. */
import type { ProjectInFull } from '#core/project/journal.ts';
import { nextThing } from '#core/project/next.ts';
import { recipeToMake, workingMeasures } from '#core/project/working-measures.ts';
import { listDesigns } from '#stores/designs.ts';
import { readProjectInFull } from '#stores/journal.ts';
import { listOffcuts } from '#stores/offcuts.ts';
import { listTakenFor } from '#stores/ready-made.ts';
import type { ProjectView } from '#views/projects/view.ts';
import type { Request } from '../http/env.ts';
import { rowId } from '../http/url.ts';

/** Of the project that the address names. */
export async function viewIn(c: Request): Promise<ProjectView | undefined> {
  const id = rowId(c);
  return id === undefined ? undefined : readProjectView(c, id);
}

export async function readProjectView(c: Request, id: number): Promise<ProjectView | undefined> {
  const full = await readProjectInFull(c.get('db'), id);
  return full && viewOf(c, full);
}

async function viewOf(c: Request, full: ProjectInFull): Promise<ProjectView> {
  const db = c.get('db');
  const pieces = full.cuts.flatMap((cut) => cut.pieces);
  const designs = await listDesigns(db, { ids: [...new Set(pieces.map(({ piece }) => piece.design))] });
  const ids = pieces.flatMap(({ piece, leftovers }) => [
    ...(piece.offcut === null ? [] : [piece.offcut]),
    ...leftovers.map((one) => one.offcut),
  ]);
  const offcuts = await listOffcuts(db, { ids, onShelf: false }, designs);
  return {
    full,
    recipe: recipeToMake(full),
    working: workingMeasures(full),
    next: nextThing(full),
    designs: new Map(designs.map((one) => [one.id, one])),
    offcuts: new Map(offcuts.map((one) => [one.id, one])),
    units: c.get('units'),
    post: c.get('settings').post,
    taken: await listTakenFor(db, full.project.id),
  };
}
