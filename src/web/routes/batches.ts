/** What is to be cut for a project, asked as one batch: its missing blanks, parts typed in, others of its series. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import { type Batch, partsLeft } from '#core/batch/batch.ts';
import type { Plan } from '#core/batch/planned.ts';
import { SUGGESTIONS, type Suggestion, suggest, suggestionsFor } from '#core/batch/suggest.ts';
import { type Cutting, cuttingOf, hopeless, pieceName, type Shelf } from '#core/batch/to-order.ts';
import type { ProjectInFull } from '#core/project/journal.ts';
import { missingBlanks } from '#core/project/next.ts';
import { type Piece, pieceOfOffcut, pieceOfSheet, refOf } from '#core/stash/stash.ts';
import type { PaperAsked } from '#shared/batch.ts';
import type { Problem } from '#shared/checked.ts';
import { PAPER_KINDS, type PaperKind } from '#shared/paper-kind.ts';
import { type BatchTyped, batchForm } from '#shared/schemas/plan.ts';
import type { Database } from '#stores/database.ts';
import { listDesigns } from '#stores/designs.ts';
import { readProjectInFull } from '#stores/journal.ts';
import { listOffcuts } from '#stores/offcuts.ts';
import { latestPlan, readPlan } from '#stores/plans.ts';
import { listProjects } from '#stores/projects.ts';
import type { Entry } from '#views/common/field.tsx';
import { NewPlanPage } from '#views/plans/new.tsx';
import { renumbered, typedBatch, withBrought, withEmptyPart, withParts } from '../gather/batch-form.ts';
import { beginPlan } from '../gather/begin-plan.ts';
import type { Env, Request } from '../http/env.ts';
import { check, entryOf, readForm, readQuery, statusOf, type Typed } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { newToken } from '../http/once.ts';
import { reply } from '../http/reply.ts';
import { queryId, rowIn } from '../http/url.ts';

export const batches = new Hono<Env>();

batches.get('/:id/plans/new', async (c) => {
  const bench = await benchIn(c);
  if (!bench) return notFound(c);
  const { typed: brought } = entryOf(readQuery(c), []);
  return show(c, bench, { typed: withBrought(await asLeft(c, bench), brought), problems: [] });
});

batches.post('/:id/plans', async (c) => {
  const bench = await benchIn(c);
  if (!bench) return notFound(c);
  const typed = renumbered(await readForm(c));
  const changed = changedRows(c, bench, typed);
  if (changed) return show(c, bench, { typed: changed, problems: [] });
  const asked = check(batchForm(c.get('units')), typed);
  if (!asked.ok) return show(c, bench, entryOf(typed, asked.problems));
  const batch = batchOf(bench, asked.value);
  const ready = cuttingFor(c, bench, batch);
  if (ready.problems.length > 0) return show(c, bench, entryOf(typed, ready.problems));
  return beginPlan(c, typed, { project: bench.full.project.id, batch, ...ready.cutting });
});

/** A project with what its batch may draw on. */
export interface Bench {
  readonly full: ProjectInFull;
  /** Others of its series that lack blanks. */
  readonly others: readonly ProjectInFull[];
  readonly shelf: Shelf;
  readonly kinds: readonly PaperKind[];
}

export async function readBench(c: Request, id: number): Promise<Bench | undefined> {
  const db = c.get('db');
  const full = await readProjectInFull(db, id);
  if (!full) return undefined;
  const pieces = await listPieces(db);
  return {
    full,
    others: await othersOf(db, full),
    shelf: { ...c.get('settings'), pieces },
    kinds: PAPER_KINDS.filter((kind) => pieces.some(({ design }) => design.pad.kind === kind)),
  };
}

/** What the planner is asked, and why some of it has no hope. */
export function cuttingFor(
  c: Request,
  { full, others, shelf }: Bench,
  batch: Batch,
): { readonly cutting: Cutting; readonly problems: readonly Problem[] } {
  const projects = [full, ...others].map(({ project }) => project);
  return {
    cutting: cuttingOf(batch, projects, shelf),
    problems: hopeless(batch, projects, shelf, c.get('units')),
  };
}

export const lacking = ({ project, envelopes }: ProjectInFull): number =>
  project.recipe ? missingBlanks(project.quantity, envelopes) : 0;

const benchIn = (c: Request): Promise<Bench | undefined> => rowIn(c, (_, id) => readBench(c, id));

async function listPieces(db: Database): Promise<Piece[]> {
  const sheets = (await listDesigns(db, { left: true })).map(pieceOfSheet);
  return [...sheets, ...(await listOffcuts(db)).map(pieceOfOffcut)];
}

async function othersOf(db: Database, { project }: ProjectInFull): Promise<ProjectInFull[]> {
  if (!project.series) return [];
  const found: ProjectInFull[] = [];
  for (const { id, recipe, finishedAt } of await listProjects(db, { series: project.series.id })) {
    const full = id !== project.id && recipe && !finishedAt ? await readProjectInFull(db, id) : undefined;
    if (full && lacking(full) > 0) found.push(full);
  }
  return found;
}

/** What is still to be cut of the batch named in the address or asked for last, or the missing blanks alone. */
async function asLeft(c: Request, { full, kinds }: Bench): Promise<Typed> {
  const { id } = full.project;
  const after = queryId(c, 'after');
  const named = after === undefined ? undefined : await readPlan(c.get('db'), after);
  const last = named?.project === id ? named : await latestPlan(c.get('db'), id);
  const blanks = { blanks: `${lacking(full)}` };
  if (!last) return { ...blanks, ...typedBatch(FIRST_BATCH(kinds), c.get('units')) };
  const parts = partsLeft(last.batch, last.cut ? last : { ...last, plan: null, spoiled: [] });
  return { ...blanks, ...typedBatch({ ...last.batch, parts }, c.get('units')) };
}

/** The last plan, as long as it waits to be cut. */
async function standing(c: Request, { project }: ProjectInFull): Promise<Plan | undefined> {
  const last = await latestPlan(c.get('db'), project.id);
  return last && !last.cut && !last.fault ? last : undefined;
}

const FIRST_BATCH = (kinds: readonly PaperKind[]): Omit<Batch, 'blanks'> => ({
  paper: kinds.includes('patterned') ? { of: 'kind', kind: 'patterned' } : ANY,
  parts: [],
  match: 'each set',
  keep: [],
});

const ANY: PaperAsked = { of: 'any' };

/** The form with a part added or dropped, where that is what was pressed. */
function changedRows(c: Request, { full, kinds }: Bench, typed: Typed): Typed | undefined {
  const pressed = typed.do ?? '';
  const dropped = /^drop-(\d{1,3})$/.exec(pressed)?.[1];
  if (dropped !== undefined) return renumbered(typed, Number(dropped));
  const copies = /^[1-9]\d{0,2}$/.test(typed.blanks ?? '') ? Number(typed.blanks) : full.project.quantity;
  if (pressed === 'add') return withEmptyPart(typed, copies);
  const suggestion = SUGGESTIONS.find((one): one is Suggestion => pressed === `add-${one}`);
  if (!suggestion) return undefined;
  const units = c.get('units');
  return withParts(typed, suggest(suggestion, { project: full.project, copies, kinds, units }), units);
}

function batchOf({ full, others, shelf }: Bench, typed: BatchTyped): Batch {
  const { blanks, others: wanted, keep, ...rest } = typed;
  const names = new Set(shelf.pieces.map((piece) => pieceName(refOf(piece))));
  return {
    ...rest,
    keep: keep.filter((name) => names.has(name)),
    blanks: [
      { project: full.project.id, copies: full.project.recipe ? blanks : 0, missing: lacking(full) },
      ...others
        .filter(({ project }) => wanted.includes(project.id))
        .map((other) => ({ project: other.project.id, copies: lacking(other), missing: lacking(other) })),
    ],
  };
}

async function show(c: Request, { full, others, shelf, kinds }: Bench, entry: Entry): Promise<Response> {
  const body = jsx(NewPlanPage, {
    project: full.project,
    missing: lacking(full),
    others: others.map((one) => ({ project: one.project, missing: lacking(one) })),
    last: await standing(c, full),
    pieces: shelf.pieces,
    kinds,
    suggestions: suggestionsFor(full.project),
    entry,
    units: c.get('units'),
    token: newToken(c),
  });
  return reply(c, {
    title: `A batch for ${full.project.title}`,
    section: 'journal',
    status: statusOf(entry),
    body,
  });
}
