/**
 * The lessons that come up in a place, found by the indexes of what they share with it. Verb: `lessonsHere(db, place)`. Which
 * features matter and which two lead is core's to say; looked at are those shown always and the newest of each feature.
 */
import { type RawBuilder, sql } from 'kysely';
import {
  comeUp,
  type Feature,
  kindOfPlace,
  type Lesson,
  MATTERS_BY,
  type Place,
} from '#core/project/lessons.ts';
import type { LessonStep } from '#shared/lesson.ts';
import type { Database } from './database.ts';
import { lessonRows, toLesson } from './lesson-rows.ts';

const NEWEST = 12;

export async function lessonsHere(db: Database, place: Place): Promise<Lesson[]> {
  const found = [...place.steps.flatMap((step) => atStep(step, place)), ...ofParts(place)];
  const newest = found.map(
    (one) => sql`SELECT id FROM (SELECT id FROM lessons WHERE ${one}
    ${allowed(place)} ORDER BY id DESC LIMIT ${NEWEST})`,
  );
  const rows = await lessonRows(db)
    .where(sql<boolean>`lessons.id IN (${sql.join(newest, sql` UNION `)})`)
    .execute();
  return comeUp(rows.map(toLesson), place);
}

const atStep = (step: LessonStep, place: Place): RawBuilder<unknown>[] => [
  sql`step = ${step} AND always = 1`,
  ...MATTERS_BY[step].flatMap((feature) =>
    valuesOf(feature, place).map((value) => sql`step = ${step} AND ${sql.ref(COLUMNS[feature])} = ${value}`),
  ),
];

const ofParts = ({ parts = [] }: Place): RawBuilder<unknown>[] =>
  parts.filter((part) => part !== 'envelope').map((part) => sql`part = ${part}`);

/** Of the parts made here, of a project that isn’t put away, and not said to be out of place. */
const allowed = (place: Place): RawBuilder<unknown> => sql`
  ${place.parts ? sql`AND part IN (${sql.join(place.parts)})` : sql``}
  AND (SELECT put_away_at FROM projects WHERE projects.id = project_id) IS NULL
  AND NOT EXISTS (SELECT 1 FROM lessons_not_here WHERE lesson_id = lessons.id
    AND ${place.project === null ? sql`place = ${kindOfPlace(place)}` : sql`project_id = ${place.project}`})`;

const COLUMNS: Readonly<Record<Feature, string>> = {
  part: 'part',
  design: 'design_id',
  kind: 'paper_kind',
  tool: 'notcher_id',
  size: 'size_class',
  fold: 'fold',
};

function valuesOf(feature: Feature, place: Place): (string | number)[] {
  switch (feature) {
    case 'part':
      return [];
    case 'design':
      return [...place.designs];
    case 'kind':
      return [...place.kinds];
    default:
      return place[feature] === null ? [] : [place[feature]];
  }
}
