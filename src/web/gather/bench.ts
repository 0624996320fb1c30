/** Gathers what a project's batch is asked from: others of its series, what was asked before, the shelf. Writes nothing. */
import type { Batch } from '#core/batch/batch.ts';
import type { Plan } from '#core/batch/planned.ts';
import { type Cutting, cuttingOf, hopeless, type Shelf } from '#core/batch/to-order.ts';
import type { ProjectSoFar } from '#core/project/journal.ts';
import { lacking } from '#core/project/next.ts';
import { pieceOfOffcut, pieceOfSheet } from '#core/stash/stash.ts';
import type { Problem } from '#shared/checked.ts';
import type { PaperKind } from '#shared/paper-kind.ts';
import type { Database } from '#stores/database.ts';
import { listDesigns } from '#stores/designs.ts';
import { listSoFar, readSoFar } from '#stores/journal.ts';
import { listOffcuts } from '#stores/offcuts.ts';
import { latestPlan } from '#stores/plans.ts';
import { kindsOnShelf } from '#stores/shelf.ts';
import type { Request } from '../http/env.ts';

export interface Bench {
  readonly own: ProjectSoFar;
  /** Others of its series that lack blanks. */
  readonly others: readonly ProjectSoFar[];
  /** The last plan asked for it. */
  readonly last: Plan | undefined;
  /** Of which anything is on the shelf. */
  readonly kinds: readonly PaperKind[];
}

export async function readBench(c: Request, id: number): Promise<Bench | undefined> {
  const db = c.get('db');
  const own = await readSoFar(db, id);
  if (!own) return undefined;
  return {
    own,
    others: await othersOf(db, own),
    last: await latestPlan(db, id),
    kinds: await kindsOnShelf(db),
  };
}

/** All there is, for a plan that may draw on any of it. */
export async function readWholeShelf(c: Request): Promise<Shelf> {
  const db = c.get('db');
  const sheets = await listDesigns(db, { left: true });
  const pieces = [...sheets.map(pieceOfSheet), ...(await listOffcuts(db, {}, sheets)).map(pieceOfOffcut)];
  return { ...c.get('settings'), pieces };
}

/** What the planner is asked, and why some of it has no hope. */
export function cuttingFor(
  c: Request,
  { own, others }: Bench,
  shelf: Shelf,
  batch: Batch,
): { readonly cutting: Cutting; readonly problems: readonly Problem[] } {
  const projects = [own, ...others].map(({ project }) => project);
  return {
    cutting: cuttingOf(batch, projects, shelf),
    problems: hopeless(batch, projects, shelf, c.get('units')),
  };
}

async function othersOf(db: Database, { project }: ProjectSoFar): Promise<ProjectSoFar[]> {
  if (!project.series) return [];
  const series = await listSoFar(db, { series: project.series.id });
  return series.filter(
    (one) => one.project.id !== project.id && one.project.finishedAt === null && lacking(one) > 0,
  );
}
