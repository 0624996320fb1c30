/** Lessons in words: the steps they belong to, a line of one, where one is not to come up. Knows no markup. */
import type { Lesson } from '#core/project/lessons.ts';
import type { LessonStep } from '#shared/lesson.ts';

export const SAY_STEP: Readonly<Record<LessonStep, string>> = {
  paper: 'choosing paper',
  fit: 'choosing the envelope',
  cut: 'cutting',
  notch: 'the first notch',
  score: 'scoring',
  fold: 'folding',
  glue: 'gluing',
};

const LONGEST_LINE = 150;

/** What went wrong and what saved it, cut after a word where that is more than a line or two. */
export function lineOf({ words, savedBy }: Pick<Lesson, 'words' | 'savedBy'>): string {
  const line = savedBy === '' ? words : `${ended(words)} ${savedBy}`;
  return line.length <= LONGEST_LINE ? line : `${line.slice(0, line.lastIndexOf(' ', LONGEST_LINE))} …`;
}

const ended = (words: string): string => (/[.!?…]$/.test(words) ? words : `${words}.`);
