/**
 * Lessons: what outcomes and projects tell, kept so that it comes up again. Verbs: `retellLessons(db, project, at)` after
 * anything told of a project has changed, `lessonsOf(db, project)`, `readLesson(db, id)`, `placeLesson(db, id, step)`,
 * `placeTelling(db, project, told, step)`, `showAlways(db, id, always)`, `hideLesson(db, id, where)`,
 * `unhideLesson(db, id)`. Which come up in a place is for lessons-here.ts.
 */
import type { Selectable } from 'kysely';
import { guessPart, guessStep } from '#core/project/lesson-words.ts';
import { type Lesson, type LessonFeatures, type OwnLesson, sizeClassOf } from '#core/project/lessons.ts';
import { retelling, wordsOf } from '#core/project/retelling.ts';
import type { LessonStep } from '#shared/lesson.ts';
import { type Database, transact } from './database.ts';
import { lessonRows, toLesson } from './lesson-rows.ts';
import { projectRows, toProject } from './project-rows.ts';
import type { Tables } from './tables.ts';

/** For a project, or for a kind of place where no project is at stake. */
export type Hidden = { readonly project: number } | { readonly place: string };

/** Brings the project's lessons in line with what its outcomes and its own lesson say now. */
export function retellLessons(db: Database, project: number, at: string): Promise<void> {
  return transact(db, async (db) => {
    const rows = await db.selectFrom('lessons').selectAll().where('project_id', '=', project).execute();
    const standing = rows.map((row) => ({
      envelope: row.envelope_id,
      words: row.words,
      savedBy: row.saved_by,
      row,
    }));
    const { kept, added, dropped } = retelling(standing, await tellingsOf(db, project, at));
    for (const { row } of dropped) await db.deleteFrom('lessons').where('id', '=', row.id).execute();
    for (const { row: standing, told } of kept) await rewrite(db, standing.row, told);
    for (const told of added)
      await db
        .insertInto('lessons')
        .values({ project_id: project, ...placed(told), ...columnsOf(told) })
        .execute();
  });
}

export async function lessonsOf(db: Database, project: number): Promise<OwnLesson[]> {
  const rows = await lessonRows(db)
    .select((by) =>
      by
        .selectFrom('lessons_not_here')
        .select((by) => by.fn.countAll<number>().as('count'))
        .whereRef('lesson_id', '=', 'lessons.id')
        .$asScalar()
        .$notNull()
        .as('hidden'),
    )
    .where('lessons.project_id', '=', project)
    .orderBy('lessons.id')
    .execute();
  return rows.map((row) => ({ ...toLesson(row), hidden: row.hidden }));
}

export async function readLesson(db: Database, id: number): Promise<Lesson | undefined> {
  const row = await lessonRows(db).where('lessons.id', '=', id).executeTakeFirst();
  return row && toLesson(row);
}

/** Where it comes up from now on; null leaves that to its words again. */
export function placeLesson(db: Database, id: number, step: LessonStep | null): Promise<void> {
  return transact(db, async (db) => {
    const lesson = await readLesson(db, id);
    if (!lesson) return;
    const guess = step ?? guessStep(`${lesson.words} ${lesson.savedBy}`);
    await db
      .updateTable('lessons')
      .set({ step: guess, chosen: step === null ? 0 : 1 })
      .where('id', '=', id)
      .execute();
  });
}

/** The same for the lesson that this telling became. */
export function placeTelling(
  db: Database,
  project: number,
  told: { readonly wrong: string; readonly savedBy: string },
  step: LessonStep | null,
): Promise<void> {
  return transact(db, async (db) => {
    const telling = wordsOf(told);
    if (!telling) return;
    const row = await db
      .selectFrom('lessons')
      .select('id')
      .where('project_id', '=', project)
      .where('envelope_id', 'is not', null)
      .where('words', '=', telling.words)
      .where('saved_by', '=', telling.savedBy)
      .executeTakeFirst();
    if (row) await placeLesson(db, row.id, step);
  });
}

export const showAlways = async (db: Database, id: number, always: boolean): Promise<void> => {
  await db
    .updateTable('lessons')
    .set({ always: always ? 1 : 0 })
    .where('id', '=', id)
    .execute();
};

export const hideLesson = async (db: Database, id: number, where: Hidden): Promise<void> => {
  const place =
    'place' in where ? { project_id: null, place: where.place } : { project_id: where.project, place: null };
  await db
    .insertInto('lessons_not_here')
    .values({ lesson_id: id, ...place })
    .onConflict((clash) => clash.doNothing())
    .execute();
};

/** It may come up everywhere again. */
export const unhideLesson = async (db: Database, id: number): Promise<void> => {
  await db.deleteFrom('lessons_not_here').where('lesson_id', '=', id).execute();
};

interface Telling {
  readonly envelope: number | null;
  readonly at: string;
  readonly words: string;
  readonly savedBy: string;
  readonly features: Omit<LessonFeatures, 'part'>;
}

/** What of the project tells a lesson: its outcomes by number, then its own. A trial from scrap counts as its first paper. */
async function tellingsOf(db: Database, id: number, at: string): Promise<Telling[]> {
  const project = toProject(await projectRows(db).where('projects.id', '=', id).executeTakeFirstOrThrow());
  const envelopes = await db
    .selectFrom('envelopes')
    .leftJoin('outcomes', 'outcomes.envelope_id', 'envelopes.id')
    .leftJoin('designs', 'designs.id', 'envelopes.design_id')
    .leftJoin('pads', 'pads.id', 'designs.pad_id')
    .select(['envelopes.id', 'outcomes.at', 'wrong', 'saved_by', 'notcher_id', 'design_id', 'pads.kind'])
    .where('project_id', '=', id)
    .orderBy('number')
    .execute();
  const first = envelopes.find(({ design_id }) => design_id !== null);
  const own = {
    design: first?.design_id ?? null,
    kind: first?.kind ?? null,
    tool: project.notcher,
    size: project.card && sizeClassOf(project.card),
    fold: project.recipe?.fold ?? null,
  };
  const tellings = envelopes.flatMap((row): Telling[] => {
    const told = row.at === null ? undefined : wordsOf({ wrong: row.wrong!, savedBy: row.saved_by! });
    if (!told) return [];
    const paper = row.design_id === null ? {} : { design: row.design_id, kind: row.kind };
    const features = { ...own, tool: row.notcher_id ?? own.tool, ...paper };
    return [{ envelope: row.id, at: row.at!, ...told, features }];
  });
  const lesson = wordsOf({ wrong: project.lesson, savedBy: '' });
  return lesson ? [...tellings, { envelope: null, at, ...lesson, features: own }] : tellings;
}

/** Other words are about what is true today, and are guessed anew; with the same words only unknown paper is filled in. */
async function rewrite(db: Database, row: Selectable<Tables['lessons']>, told: Telling): Promise<void> {
  const { envelope_id, at: _, design_id, paper_kind, ...columns } = columnsOf(told);
  const same = row.words === told.words && row.saved_by === told.savedBy;
  const paper = same && row.design_id !== null ? {} : { design_id, paper_kind };
  const { step, part } = placed(told);
  const anew = same ? {} : { ...columns, part, ...(row.chosen === 0 && { step }) };
  await db
    .updateTable('lessons')
    .set({ envelope_id, ...paper, ...anew })
    .where('id', '=', row.id)
    .execute();
}

const placed = ({ words, savedBy }: Telling) => ({
  step: guessStep(`${words} ${savedBy}`),
  part: guessPart(words),
});

const columnsOf = ({ envelope, at, words, savedBy, features }: Telling) => ({
  envelope_id: envelope,
  at,
  words,
  saved_by: savedBy,
  design_id: features.design,
  paper_kind: features.kind,
  notcher_id: features.tool,
  size_class: features.size,
  fold: features.fold,
});
