/**
 * Measures written down without any paper of the shelf. Verbs: `keepMeasures(db, kept, at)`, and `plannedAlike(db, opened)`
 * for the project that waits for this very envelope already, so that no door opens a second one for it.
 */
import { adopted } from '#core/project/adopt.ts';
import { sameMeasures } from '#core/project/fitting.ts';
import type { NewOutcome, NewProject, Project, ProjectSoFar } from '#core/project/journal.ts';
import { type Database, transact } from './database.ts';
import { toOutcomeRow } from './envelope-rows.ts';
import { nextNumber } from './envelopes.ts';
import { readSoFar } from './journal.ts';
import { retellLessons } from './lessons.ts';
import { settle } from './progress.ts';
import { projectRows, toProject } from './project-rows.ts';
import { createProject, editProject, finishProject } from './projects.ts';

export interface KeptMeasures {
  readonly opened: NewProject;
  /** An idea or project that they belong to. */
  readonly project?: number | undefined;
  /** Null for an envelope that is still to be made. */
  readonly made: {
    readonly at: string;
    readonly copies: number;
    /** Null where it was made on a tool of which nothing is to be learned. */
    readonly notcher: number | null;
    readonly outcome: NewOutcome;
  } | null;
}

/** The project they are in; undefined when the one named is not there. */
export function keepMeasures(
  db: Database,
  { opened, project: named, made }: KeptMeasures,
  at: string,
): Promise<number | undefined> {
  return transact(db, async (db) => {
    const joined = named ?? (await plannedAlike(db, opened))?.id;
    const before = joined === undefined ? undefined : await readSoFar(db, joined);
    if (joined !== undefined && !before) return undefined;
    const { id } = before?.project ?? (await createProject(db, opened, made?.at ?? at));
    if (before) await editProject(db, id, changesTo(before, opened, made !== null), at);
    if (made) await writeMade(db, id, made);
    if (made) await retellLessons(db, id, made.at);
    if (made && !before) await finishProject(db, id, made.at);
    await settle(db, id, at);
    return id;
  });
}

/** One that waits for paper with the same card and the same measures. */
export async function plannedAlike(db: Database, { card, recipe }: NewProject): Promise<Project | undefined> {
  if (!card || !recipe) return undefined;
  const rows = await projectRows(db)
    .where('projects.state', '=', 'planned')
    .where('projects.put_away_at', 'is', null)
    .where('card_width', '=', card.width)
    .where('card_height', '=', card.height)
    .where('card_bulk', '=', card.bulk)
    .orderBy('changed_at', 'desc')
    .limit(MANY)
    .execute();
  return rows.map(toProject).find((one) => one.recipe && sameMeasures(one.recipe, recipe));
}

/** More projects than these wait for paper with one card in no book. */
const MANY = 20;

async function writeMade(
  db: Database,
  project_id: number,
  { at, copies, notcher, outcome }: NonNullable<KeptMeasures['made']>,
): Promise<void> {
  const first = await nextNumber(db, project_id);
  const envelopes = await db
    .insertInto('envelopes')
    .values(
      Array.from({ length: copies }, (_, one) => ({
        project_id,
        number: first + one,
        cut_id: null,
        design_id: null,
        state: 'made' as const,
        trial: 1 as const,
        kept: 1 as const,
        start_in_use: null,
      })),
    )
    .returning('id')
    .execute();
  const row = { at, notcher_id: notcher, ...toOutcomeRow(outcome) };
  await db
    .insertInto('outcomes')
    .values(envelopes.map(({ id }) => ({ envelope_id: id, ...row })))
    .execute();
}

/** Measures made otherwise than a project's recipe are its outcome's; its recipe stays. */
const changesTo = (before: ProjectSoFar, opened: NewProject, made: boolean): Partial<NewProject> => ({
  ...(made && before.project.recipe ? undefined : adopted(before, opened)),
  quantity: Math.max(before.project.quantity, opened.quantity ?? 1),
  notes: bothNotes(before.project.notes, opened.notes),
});

const bothNotes = (before: string, added = ''): string =>
  [before, added].filter((one) => one !== '').join('\n');
