/**
 * The envelopes of a project, from blank to made or spoiled. Verbs: `listEnvelopes(db, project)`, `envelopesOf(db, projects)`,
 * `readEnvelope(db, id)`, `addTrial(db, project, at)` from scrap, `makeEnvelope(db, id, at)`,
 * `unmakeEnvelope(db, id, at)`, `recordOutcome(db, id, outcome, at)`, `recordSpoiled(db, id, { wrong, savedBy }, at)`.
 * `withdrawOutcome(db, id, at)`. A spoiled blank is replaced through spoil.ts.
 */
import { recipeInUse } from '#core/project/in-use.ts';
import type { Envelope, EnvelopeState, NewOutcome, Outcome, Project } from '#core/project/journal.ts';
import { startToMake } from '#core/project/working-measures.ts';
import type { Length } from '#shared/length.ts';
import { type Database, transact } from './database.ts';
import { envelopeRows, toEnvelope, toOutcomeRow } from './envelope-rows.ts';
import { retellLessons } from './lessons.ts';
import { settle } from './progress.ts';
import { readProject } from './projects.ts';

interface StoredEnvelope extends Envelope {
  readonly project: number;
}

/** In the order of their numbers. */
export async function listEnvelopes(db: Database, project: number): Promise<Envelope[]> {
  const rows = await envelopeRows(db).where('project_id', '=', project).orderBy('number').execute();
  return rows.map(toEnvelope);
}

/** Of several projects, by project. */
export async function envelopesOf(
  db: Database,
  projects: readonly number[],
): Promise<ReadonlyMap<number, readonly Envelope[]>> {
  if (projects.length === 0) return new Map();
  const rows = await envelopeRows(db).where('project_id', 'in', projects).orderBy('number').execute();
  return new Map(projects.map((id) => [id, rows.filter((row) => row.project_id === id).map(toEnvelope)]));
}

export async function readEnvelope(db: Database, id: number): Promise<StoredEnvelope | undefined> {
  const row = await envelopeRows(db).where('envelopes.id', '=', id).executeTakeFirst();
  return row && { ...toEnvelope(row), project: row.project_id };
}

/** A trial piece from scrap, so that no paper of the project is at stake; undefined when there is no such project. */
export function addTrial(db: Database, project: number, at: string): Promise<Envelope | undefined> {
  return transact(db, async (db) => {
    if (!(await readProject(db, project))) return undefined;
    const number = await nextNumber(db, project);
    const { id } = await db
      .insertInto('envelopes')
      .values({
        project_id: project,
        number,
        cut_id: null,
        design_id: null,
        state: 'blank',
        trial: 1,
        start_in_use: null,
      })
      .returning('id')
      .executeTakeFirstOrThrow();
    await settle(db, project, at);
    return readEnvelope(db, id);
  });
}

/** It is folded and glued; how it came out may be written down later. A spoiled one stays spoiled. */
export const makeEnvelope = (db: Database, id: number, at: string): Promise<Envelope | undefined> =>
  transact(db, async (db) => moveTo(db, id, 'made', at));

/** It isn't folded after all: a blank again. Undefined where it never was, or where how it came out is written down. */
export function unmakeEnvelope(db: Database, id: number, at: string): Promise<Envelope | undefined> {
  return transact(db, async (db) => {
    const envelope = await readEnvelope(db, id);
    if (envelope?.state !== 'made' || envelope.outcome) return undefined;
    await db
      .updateTable('envelopes')
      .set({ state: 'blank', start_in_use: null })
      .where('id', '=', id)
      .execute();
    await settle(db, envelope.project, at);
    return readEnvelope(db, id);
  });
}

/**
 * How it came out, in place of what was noted before; a blank counts as made from now on. When and on which tool stays
 * as it was first noted. A pocket without measures as made is taken to come from the recipe's square and from the start
 * that was in use when this one was made.
 */
export function recordOutcome(
  db: Database,
  id: number,
  outcome: NewOutcome,
  at: string,
): Promise<Envelope | undefined> {
  return transact(db, async (db) => {
    const envelope = await moveTo(db, id, 'made', at);
    if (!envelope) return undefined;
    const project = (await readProject(db, envelope.project))!;
    const notcher_id =
      project.notcher ??
      (await db.selectFrom('settings').select('notcher_id').executeTakeFirstOrThrow()).notcher_id;
    const asMade =
      outcome.asMade ?? (outcome.pocket || outcome.twin ? asPlanned(project, envelope, outcome.twin) : null);
    const row = toOutcomeRow({ ...outcome, asMade });
    await db
      .insertInto('outcomes')
      .values({ envelope_id: id, at, notcher_id, ...row })
      .onConflict((clash) => clash.column('envelope_id').doUpdateSet(row))
      .execute();
    await retellLessons(db, envelope.project, at);
    return readEnvelope(db, id);
  });
}

/** What went wrong with a blank and what may still be saved; undefined unless it is one. */
export function recordSpoiled(
  db: Database,
  id: number,
  { wrong, savedBy = '' }: { wrong: string; savedBy?: string },
  at: string,
): Promise<Envelope | undefined> {
  return transact(db, async (db) => {
    const envelope = await readEnvelope(db, id);
    if (envelope?.state !== 'blank') return undefined;
    const { notcher } = (await readProject(db, envelope.project))!;
    await db
      .insertInto('outcomes')
      .values({ envelope_id: id, at, notcher_id: notcher, ...toOutcomeRow({ wrong, savedBy }) })
      .execute();
    await retellLessons(db, envelope.project, at);
    return moveTo(db, id, 'spoiled', at);
  });
}

/**
 * What was written down of it was a mistake: nothing is learned from it any more. A spoiled one is a blank again, a made one
 * stays made, and one that was only ever written down leaves its project. Its lesson stays as long as another envelope tells
 * it. Undefined where nothing was written down.
 */
export function withdrawOutcome(db: Database, id: number, at: string): Promise<'withdrawn' | undefined> {
  return transact(db, async (db) => {
    const envelope = await readEnvelope(db, id);
    if (!envelope?.outcome) return undefined;
    const { project } = envelope;
    const silent = { wrong: '', saved_by: '' };
    await db.updateTable('outcomes').set(silent).where('envelope_id', '=', id).execute();
    await retellLessons(db, project, at);
    await db.deleteFrom('outcomes').where('envelope_id', '=', id).execute();
    await db
      .updateTable('envelopes')
      .set({ state: 'blank', start_in_use: null })
      .where('id', '=', id)
      .where('state', '=', 'spoiled')
      .execute();
    const { numDeletedRows } = await db
      .deleteFrom('envelopes')
      .where('id', '=', id)
      .where('kept', '=', 1)
      .executeTakeFirst();
    if (numDeletedRows > 0n && (await listEnvelopes(db, project)).length === 0)
      await db.updateTable('projects').set({ finished_at: null }).where('id', '=', project).execute();
    await settle(db, project, at);
    return 'withdrawn';
  });
}

export async function nextNumber(db: Database, project: number): Promise<number> {
  const { last } = await db
    .selectFrom('envelopes')
    .select(({ fn }) => fn.max<number | null>('number').as('last'))
    .where('project_id', '=', project)
    .executeTakeFirstOrThrow();
  return (last ?? 0) + 1;
}

/** From blank alone, with the start that the next one is made to; anything else stays as it is. */
async function moveTo(
  db: Database,
  id: number,
  state: EnvelopeState,
  at: string,
): Promise<StoredEnvelope | undefined> {
  const envelope = await readEnvelope(db, id);
  if (!envelope) return undefined;
  const start_in_use = envelope.state === 'blank' ? await nextStart(db, envelope.project) : null;
  await db
    .updateTable('envelopes')
    .set({ state, start_in_use })
    .where('id', '=', id)
    .where('state', '=', 'blank')
    .execute();
  await settle(db, envelope.project, at);
  return readEnvelope(db, id);
}

const nextStart = async (db: Database, id: number): Promise<Length | null> =>
  startToMake({ project: (await readProject(db, id))!, envelopes: await listEnvelopes(db, id) });

function asPlanned({ recipe }: Project, { start }: Envelope, twin = false): Outcome['asMade'] {
  if (recipe?.fold !== 'diagonal') return null;
  const { blank, starts } = recipeInUse({ recipe, start })!;
  return { square: blank.width, start: starts[twin ? 1 : 0] };
}
