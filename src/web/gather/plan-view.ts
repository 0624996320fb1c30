/** Gathers what the pages of one plan show. Writes nothing. */

import { type Change, changesSince } from '#core/batch/changes.ts';
import { type FoundPlan, isFound, type Plan } from '#core/batch/planned.ts';
import { pieceOfOffcut, pieceOfSheet } from '#core/stash/stash.ts';
import { readCut } from '#stores/cuts.ts';
import { listDesigns } from '#stores/designs.ts';
import { listSoFar } from '#stores/journal.ts';
import { listOffcuts } from '#stores/offcuts.ts';
import { readPlan } from '#stores/plans.ts';
import { BLANK_ENTRY, type Entry } from '#views/common/field.tsx';
import type { PlanView } from '#views/plans/view.ts';
import type { Request } from '../http/env.ts';
import { newToken } from '../http/once.ts';
import { rowIn } from '../http/url.ts';
import { lessonsShown, placeIn } from './lessons.ts';

/** Undefined where there is no such plan, or none was found yet. */
export async function readPlanView(
  c: Request,
  plan: Plan,
  entry: Entry = BLANK_ENTRY,
): Promise<PlanView | undefined> {
  if (!isFound(plan)) return undefined;
  const db = c.get('db');
  const cut = plan.cut ? await readCut(db, plan.cut.id) : undefined;
  const earlier = plan.insteadOf === null ? undefined : await readPlan(db, plan.insteadOf);
  const before = earlier && isFound(earlier) ? earlier : undefined;
  const plans = [plan, ...(before ? [before] : [])];
  const designs = await listDesigns(db, { away: true });
  const left = cut?.pieces.flatMap(({ leftovers }) => leftovers.map(({ offcut }) => offcut)) ?? [];
  const ids = [...new Set([...plans.flatMap(offcutsOf), ...left])];
  const offcuts = await listOffcuts(db, { ids, onShelf: false }, designs);
  const projects = await listSoFar(db, { ids: [...new Set(plans.flatMap(projectsOf))] });
  const now = { pieces: [...designs.map(pieceOfSheet), ...offcuts.map(pieceOfOffcut)], projects };
  const changesIn = (one: FoundPlan): Change[] => (one.cut ? [] : changesSince(one, now));
  const { project } = projects.find(({ project }) => project.id === plan.project)!;
  const used = new Set(
    plan.plan.used.map(({ piece }) => plan.pieces.find(({ id }) => id === piece)?.ref.design),
  );
  const papers = designs.filter(({ id }) => used.has(id));
  return {
    plan,
    project,
    titles: new Map(projects.map(({ project }) => [project.id, project.title])),
    changes: changesIn(plan),
    before: before && { plan: before, changes: changesIn(before) },
    cut,
    designs: new Map(designs.map((one) => [one.id, one])),
    onShelf: await listDesigns(db, { onShelf: true }),
    offcuts: new Map(offcuts.map((one) => [one.id, one])),
    lessons: plan.cut ? undefined : await lessonsShown(c, placeIn(project, ['cut'], papers)),
    units: c.get('units'),
    entry,
    token: newToken(c),
  };
}

const offcutsOf = ({ pieces, leftOut }: FoundPlan): number[] => [
  ...pieces.flatMap(({ ref }) => ref.offcut ?? []),
  ...leftOut.flatMap(({ offcuts }) => offcuts),
];

const projectsOf = ({ project, batch }: FoundPlan): number[] => [
  project,
  ...batch.blanks.map((one) => one.project),
];

/** The plan that an address names. */
export const planIn = (c: Request): Promise<Plan | undefined> => rowIn(c, readPlan);
