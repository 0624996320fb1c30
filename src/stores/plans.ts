/**
 * Plans of projects, from the asking to the cut. Verbs: `addPlan(db, plan, at)`, `finishPlan(db, id, plan)`,
<<<<<<< HEAD
 * `failPlan(db, id, fault)`, `readPlan(db, id)`, `latestPlan(db, project)`, `listPlans(db, project)`, `tickStep(db, id, step)`,
 * `untickStep(db, id, step)`, `cutPlan(db, id, { place, at })`, `spoilPart(db, id, { part, wrong }, at)`,
=======
 * `failPlan(db, id, fault)`, `readPlan(db, id)`, `latestPlan(db, project)`, `tickStep(db, id, step)`,
 * `untickStep(db, id, step)`, `cutPlan(db, id, { place, at })`, `spoilPart(db, id, { part, wrong }, at)`, `unspoilPart(db, id, { part, at })`,
>>>>>>> 8fa64ed (Take back what was written down by mistake, and edit names where they stand)
 * `planChanges(db, plan)`.
 */
import type { Selectable } from 'kysely';
import type { Batch } from '#core/batch/batch.ts';
import { type Change, changesSince } from '#core/batch/changes.ts';
import { identified } from '#core/batch/earlier-identity.ts';
import { pieceCuts } from '#core/batch/piece-cuts.ts';
import { isFound, lookedAt, type NewPlan, type Plan } from '#core/batch/planned.ts';
import type { Cutting } from '#core/batch/to-order.ts';
import type { CutPlan, PlannedCuts } from '#core/cutting/cuts.ts';
import type { Order, Piece } from '#core/cutting/order.ts';
import { earlierCutSheet } from '#core/cutting/trimmer/earlier-steps.ts';
import { type PieceRef, pieceOfOffcut, pieceOfSheet } from '#core/stash/stash.ts';
import { cutPieces } from './cuts.ts';
import { type Database, transact } from './database.ts';
import { listDesigns } from './designs.ts';
import { listSoFar } from './journal.ts';
import { listOffcuts } from './offcuts.ts';
import { loadPiece } from './pieces.ts';
import type { Tables } from './tables.ts';

export type PlanCut =
  | { readonly cut: number; readonly offcuts: readonly number[] }
  | { readonly refused: 'changed'; readonly changes: readonly Change[] }
  | { readonly refused: 'cut already' };

export async function addPlan(db: Database, plan: NewPlan, at: string): Promise<number> {
  const { id } = await db
    .insertInto('plans')
    .values({
      project_id: plan.project,
      instead_of: plan.insteadOf ?? null,
      asked_at: at,
      trial: plan.trial ? 1 : 0,
      batch: JSON.stringify(plan.batch),
      cutting: JSON.stringify({
        order: plan.order,
        pieces: plan.pieces,
        suitable: plan.suitable,
        leftOut: plan.leftOut,
      }),
      plan: null,
      fault: null,
      cut_id: null,
    })
    .returning('id')
    .executeTakeFirstOrThrow();
  return id;
}

/** The caller has had it judged. */
export async function finishPlan(db: Database, id: number, plan: CutPlan): Promise<void> {
  await db
    .updateTable('plans')
    .set({ plan: JSON.stringify(plan), fault: null })
    .where('id', '=', id)
    .where('plan', 'is', null)
    .execute();
}

export async function failPlan(db: Database, id: number, fault: string): Promise<void> {
  await db.updateTable('plans').set({ fault }).where('id', '=', id).where('plan', 'is', null).execute();
}

export async function readPlan(db: Database, id: number): Promise<Plan | undefined> {
  const row = await planRows(db).where('plans.id', '=', id).executeTakeFirst();
  if (!row) return undefined;
  const ticks = await db.selectFrom('plan_ticks').select('step').where('plan_id', '=', id).execute();
  const spoiled = await db
    .selectFrom('spoiled_parts')
    .select(['part', 'wrong', 'at'])
    .where('plan_id', '=', id)
    .orderBy('id')
    .execute();
  return { ...toPlan(row), ticks: ticks.map(({ step }) => step), spoiled };
}

/** The last one asked for a project. */
export async function latestPlan(db: Database, project: number): Promise<Plan | undefined> {
  const last = await db
    .selectFrom('plans')
    .select('id')
    .where('project_id', '=', project)
    .orderBy('id', 'desc')
    .executeTakeFirst();
  return last && readPlan(db, last.id);
}

/** All that were asked for a project, in that order, without what was ticked off. */
export async function listPlans(db: Database, project: number): Promise<Plan[]> {
  const rows = await planRows(db).where('plans.project_id', '=', project).orderBy('plans.id').execute();
  if (rows.length === 0) return [];
  const spoiled = await db
    .selectFrom('spoiled_parts')
    .select(['plan_id', 'part', 'wrong', 'at'])
    .where(
      'plan_id',
      'in',
      rows.map(({ id }) => id),
    )
    .orderBy('id')
    .execute();
  return rows.map((row) => ({
    ...toPlan(row),
    ticks: [],
    spoiled: spoiled.filter((one) => one.plan_id === row.id).map(({ plan_id: _, ...one }) => one),
  }));
}

export async function tickStep(db: Database, plan: number, step: number): Promise<void> {
  await db
    .insertInto('plan_ticks')
    .values({ plan_id: plan, step })
    .onConflict((conflict) => conflict.doNothing())
    .execute();
}

export async function untickStep(db: Database, plan: number, step: number): Promise<void> {
  await db.deleteFrom('plan_ticks').where('plan_id', '=', plan).where('step', '=', step).execute();
}

/** What speaks against cutting the plan now; empty for one that can be cut. */
export async function planChanges(db: Database, plan: Plan): Promise<Change[]> {
  if (!isFound(plan)) return [];
  const used = new Set(plan.plan.used.map((one) => one.piece));
  const refs = plan.pieces.filter(({ id }) => used.has(id)).map(({ ref }) => ref);
  const designs = await listDesigns(db, { ids: [...new Set(refs.map(({ design }) => design))] });
  const ids = refs.flatMap(({ offcut }) => offcut ?? []);
  const offcuts = await listOffcuts(db, { ids, onShelf: false }, designs);
  return changesSince(plan, {
    pieces: [...designs.map(pieceOfSheet), ...offcuts.map(pieceOfOffcut)],
    projects: await listSoFar(db, { ids: plan.batch.blanks.map(({ project }) => project) }),
  });
}

/**
 * Takes the plan's pieces from the shelf and puts its leftovers there, all or nothing: where anything has changed since
 * it was made, nothing is written. Leftovers go where their piece lay, those of sheets to `place`. Undefined when there
 * is no such plan, or none was found.
 */
export function cutPlan(
  db: Database,
  id: number,
  { place, at }: { place: string; at: string },
): Promise<PlanCut | undefined> {
  return transact(db, async (db) => {
    const stored = await readPlan(db, id);
    if (!stored?.plan) return undefined;
    if (stored.cut) return { refused: 'cut already' };
    const changes = await planChanges(db, stored);
    if (changes.length > 0) return { refused: 'changed', changes };
    const places = await placesOf(
      db,
      stored.plan.used.map((one) => stored.pieces.find(({ id }) => id === one.piece)!.ref),
    );
    const pieces = pieceCuts({ ...stored, plan: stored.plan }, ({ offcut }) => places.get(offcut) ?? place);
    const taken = await cutPieces(db, { pieces, project: stored.project, at, trial: stored.trial });
    if (!taken || 'refused' in taken)
      throw new Error(`invalid cut: plan ${id} was found sound and was refused`);
    await db.updateTable('plans').set({ cut_id: taken.cut }).where('id', '=', id).execute();
    return { cut: taken.cut, offcuts: taken.offcuts };
  });
}

/** One part that was cut and can't be used: it is missing again. Not more of it than there are in the plan. */
export function spoilPart(
  db: Database,
  id: number,
  { part, wrong }: { part: string; wrong: string },
  at: string,
): Promise<'spoiled' | { readonly refused: number }> {
  return transact(db, async (db) => {
    const stored = await readPlan(db, id);
    const placed = stored?.plan?.used.flatMap((one) => one.rectangles) ?? [];
    const copies = placed.filter((one) => one.part === part).length;
    const spoiled = stored?.spoiled.filter((one) => one.part === part).length ?? 0;
    if (spoiled >= copies) return { refused: copies };
    await db.insertInto('spoiled_parts').values({ plan_id: id, part, wrong, at }).execute();
    return 'spoiled';
  });
}

/** It can be used after all: the last one of that part written off at that moment. Whether there was one. */
export async function unspoilPart(
  db: Database,
  plan: number,
  { part, at }: { part: string; at: string },
): Promise<boolean> {
  const last = db
    .selectFrom('spoiled_parts')
    .select(({ fn }) => fn.max('id').as('id'))
    .where('plan_id', '=', plan)
    .where('part', '=', part)
    .where('at', '=', at);
  const { numDeletedRows } = await db.deleteFrom('spoiled_parts').where('id', '=', last).executeTakeFirst();
  return numDeletedRows > 0n;
}

async function placesOf(db: Database, refs: readonly PieceRef[]): Promise<Map<number | null, string>> {
  const places = new Map<number | null, string>();
  for (const ref of refs) {
    const piece = ref.offcut === null ? undefined : await loadPiece(db, ref);
    if (piece?.offcut) places.set(ref.offcut, piece.offcut.place);
  }
  return places;
}

const planRows = (db: Database) =>
  db
    .selectFrom('plans')
    .leftJoin('cuts', (join) => join.onRef('cuts.id', '=', 'plans.cut_id').on('cuts.undone_at', 'is', null))
    .selectAll('plans')
    .select(['cuts.id as cut', 'cuts.at as cut_at']);

type Row = Selectable<Tables['plans']> & { cut: number | null; cut_at: string | null };

function toPlan(row: Row): Omit<Plan, 'ticks' | 'spoiled'> {
  const batch: Batch = JSON.parse(row.batch);
  const cutting = cuttingIn(row, batch);
  return {
    id: row.id,
    project: row.project_id,
    insteadOf: row.instead_of,
    askedAt: row.asked_at,
    trial: row.trial === 1,
    batch,
    ...cutting,
    plan: row.plan === null ? null : withSteps(JSON.parse(row.plan), cutting),
    fault: row.fault,
    cut: row.cut === null ? null : { id: row.cut, at: row.cut_at! },
  };
}

type Older = { readonly order: Order; readonly pieces: readonly Piece[] } & Partial<
  Pick<Cutting, 'suitable' | 'leftOut'>
>;

/** Plans asked before a long shelf was told of looked at all there was, and told of no paper left out. */
function cuttingIn({ cutting }: Row, batch: Batch): Cutting {
  const { suitable, leftOut = [], ...read }: Older = JSON.parse(cutting);
  return { ...identified(batch, read), leftOut, suitable: suitable ?? lookedAt(read) };
}

/** Plans kept before their steps were kept with them have those that their ticks are of. */
const withSteps = (plan: PlannedCuts | CutPlan, { pieces }: Cutting): CutPlan =>
  'steps' in plan ? plan : { ...plan, ...earlierCutSheet(pieces, plan) };
