/** Gathers the lessons that come up in a place, for the pages that show them. Writes nothing. */
import type { Recipe } from '#core/envelope/recipe.ts';
import type { Project } from '#core/project/journal.ts';
import { type LessonPart, type Place, sizeClassOf } from '#core/project/lessons.ts';
import type { Design } from '#core/stash/stash.ts';
import type { LessonStep } from '#shared/lesson.ts';
import { lessonsHere } from '#stores/lessons-here.ts';
import type { LessonsShown } from '#views/lessons/shown.tsx';
import type { Request } from '../http/env.ts';
import { here } from '../http/url.ts';

/** More papers than these tell nothing apart. */
const MOST_PAPERS = 3;

export async function lessonsShown(c: Request, place: Place): Promise<LessonsShown> {
  return { lessons: await lessonsHere(c.get('db'), place), place, back: here(c) };
}

/** At these steps of a project, with this paper in hand. */
export const placeIn = (
  { id, notcher, card, recipe }: Project,
  steps: readonly LessonStep[],
  designs: readonly Design[],
): Place => ({
  steps,
  project: id,
  ...papersOf(designs),
  tool: notcher,
  size: card && sizeClassOf(card),
  fold: recipe?.fold ?? null,
});

/** At these steps, with an envelope that may belong to no project yet. */
export const placeFor = (
  { card, fold }: Recipe,
  steps: readonly LessonStep[],
  of: { readonly project: number | null; readonly tool: number | null; readonly designs: readonly Design[] },
): Place => ({
  steps,
  parts: ENVELOPE,
  project: of.project,
  ...papersOf(of.designs),
  tool: of.tool,
  size: sizeClassOf(card),
  fold,
});

export const ENVELOPE: readonly LessonPart[] = ['envelope'];

export function papersOf(designs: readonly Design[]): Pick<Place, 'designs' | 'kinds'> {
  const first = designs.slice(0, MOST_PAPERS);
  return { designs: first.map(({ id }) => id), kinds: [...new Set(first.map(({ pad }) => pad.kind))] };
}
