/**
 * Lessons and where they come up again: what each is about, and which two matter most in a place. Knows no words by which
 * a step is guessed, and no database.
 */
import type { FoldName } from '#shared/fold.ts';
import { inches } from '#shared/length.ts';
import type { LessonStep } from '#shared/lesson.ts';
import type { PaperKind } from '#shared/paper-kind.ts';
import type { PartKind } from '#shared/schemas/parts.ts';
import type { Size } from '#shared/size.ts';

export type LessonPart = 'envelope' | PartKind;

export type SizeClass = 'small' | 'medium' | 'large';

/** What a lesson is about, as it was on the day it was told; null where nobody knew. */
export interface LessonFeatures {
  readonly part: LessonPart;
  readonly design: number | null;
  readonly kind: PaperKind | null;
  readonly tool: number | null;
  readonly size: SizeClass | null;
  readonly fold: FoldName | null;
}

export interface Lesson {
  readonly id: number;
  readonly project: { readonly id: number; readonly title: string };
  /** The number of the envelope that taught it; null for the project as a whole. */
  readonly envelope: number | null;
  readonly words: string;
  readonly savedBy: string;
  /** Where it comes up; null where its words told nothing. */
  readonly step: LessonStep | null;
  /** She said so herself: it is not guessed again. */
  readonly chosen: boolean;
  readonly always: boolean;
  readonly features: LessonFeatures;
}

/** With how many places it is not to come up in. */
export interface OwnLesson extends Lesson {
  readonly hidden: number;
}

/** Where the maker is: at these steps, with this in hand. Of paper there may be several. */
export interface Place {
  readonly steps: readonly LessonStep[];
  /** The parts being made; absent where all of a set are. */
  readonly parts?: readonly LessonPart[];
  readonly project: number | null;
  readonly designs: readonly number[];
  readonly kinds: readonly PaperKind[];
  readonly tool: number | null;
  readonly size: SizeClass | null;
  readonly fold: FoldName | null;
}

export type Feature = keyof LessonFeatures;

/** The order in which shared features count: one of the first outweighs all that follow. */
const BY_WEIGHT: readonly Feature[] = ['part', 'design', 'kind', 'tool', 'size', 'fold'];

/** What has to be shared, one of these at least, for a lesson to matter at its step. */
export const MATTERS_BY: Readonly<Record<LessonStep, readonly Feature[]>> = {
  paper: ['design', 'kind'],
  fit: ['size'],
  cut: ['design', 'kind'],
  notch: ['tool'],
  score: ['design', 'kind'],
  fold: ['design', 'kind', 'fold'],
  glue: ['design', 'kind'],
};

const MOST_AT_A_TIME = 2;

/**
 * Those of the lessons that matter here: first what is to come up always, then what shares the weightier features, then
 * the newer one (the greater id). What was told twice in the same words comes once.
 */
export function comeUp(lessons: readonly Lesson[], place: Place): Lesson[] {
  const mattering = lessons.filter((lesson) => matters(lesson, place));
  const ranked = mattering.sort(
    (one, other) =>
      Number(other.always) - Number(one.always) ||
      weightOf(other, place) - weightOf(one, place) ||
      other.id - one.id,
  );
  return ranked
    .filter((lesson, index) => ranked.findIndex((one) => one.words === lesson.words) === index)
    .slice(0, MOST_AT_A_TIME);
}

/** By the longer side of the finished card: up to 3½ in, up to 6 in, and above. */
export function sizeClassOf(card: Size): SizeClass {
  const side = Math.max(card.width, card.height);
  return side <= inches(3.5) ? 'small' : side <= inches(6) ? 'medium' : 'large';
}

/** The place without its project, as it is remembered where a lesson is not to come up again. */
export const kindOfPlace = ({ parts, fold, kinds }: Place): string =>
  [...(parts ?? []), fold ?? 'any fold', kinds[0] ?? 'any paper'].join(', ');

function matters({ step, always, features }: Lesson, place: Place): boolean {
  if (place.parts && !place.parts.includes(features.part)) return false;
  if (shares('part', features, place)) return true;
  if (step === null || !place.steps.includes(step)) return false;
  return always || MATTERS_BY[step].some((feature) => shares(feature, features, place));
}

const weightOf = ({ features }: Lesson, place: Place): number =>
  BY_WEIGHT.reduce((sum, feature) => 2 * sum + Number(shares(feature, features, place)), 0);

/** What nobody knew is shared with nothing; every place is one for envelopes. */
function shares(feature: Feature, features: LessonFeatures, place: Place): boolean {
  const { part, design, kind } = features;
  switch (feature) {
    case 'part':
      return part !== 'envelope' && (place.parts?.includes(part) ?? false);
    case 'design':
      return design !== null && place.designs.includes(design);
    case 'kind':
      return kind !== null && place.kinds.includes(kind);
    default:
      return features[feature] !== null && features[feature] === place[feature];
  }
}
