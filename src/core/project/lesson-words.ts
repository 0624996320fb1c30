/** Which step of the work, and which part of a set, a lesson’s words tell of: our own list of how such words begin. */
import type { LessonStep } from '#shared/lesson.ts';
import type { LessonPart } from './lessons.ts';

/** What the hands do goes before what lies on the table, where as many words tell of both. */
const STEPS: Readonly<Record<LessonStep, string>> = {
  glue: 'glu adhesive tape taping sticky stuck paste seam dry seal brush ripple',
  score: 'scor crack split grain bend bent bone',
  notch: 'notch start inset mark punch',
  cut: 'cut blade trim knife sliver slip offcut',
  fold: 'fold creas flap overlap gap',
  paper: 'paper cardstock print pattern border lean upright design sheet vellum kraft thick thin fade',
  fit: 'tight loose snug pocket card fit bow room rub narrow wide tall bulk',
};

const PARTS: Readonly<Partial<Record<LessonPart, string>>> = {
  liner: 'liner lining',
  wrap: 'band wrap ribbon closing',
  box: 'box lid',
  tag: 'tag',
  insert: 'insert',
  base: 'base',
};

/** Null where no word tells of any. */
export const guessStep = (words: string): LessonStep | null => mostToldOf(STEPS, words) ?? null;

/** The envelope where no word tells of another part. */
export const guessPart = (words: string): LessonPart => mostToldOf(PARTS, words) ?? 'envelope';

/** The key of which most words begin as listed, the first of several. */
function mostToldOf<Key extends string>(
  beginnings: Readonly<Partial<Record<Key, string>>>,
  text: string,
): Key | undefined {
  const spoken = text.toLowerCase().match(/\p{L}+/gu) ?? [];
  const tells = (list: string): number =>
    spoken.filter((word) => list.split(' ').some((begins) => word.startsWith(begins))).length;
  const counts = (Object.keys(beginnings) as Key[]).map((key) => ({ key, count: tells(beginnings[key]!) }));
  const most = Math.max(...counts.map(({ count }) => count));
  return most === 0 ? undefined : counts.find(({ count }) => count === most)!.key;
}
