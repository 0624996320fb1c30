/** At which of the making steps lessons come up: at the first of its kind, not at every one. Knows no lessons. */
import type { Step } from '#core/envelope/fold.ts';
import type { LessonStep } from '#shared/lesson.ts';

const MOMENTS: Readonly<Partial<Record<Step['kind'], LessonStep>>> = {
  cut: 'cut',
  notch: 'notch',
  score: 'score',
  fold: 'fold',
  glue: 'glue',
};

/** Undefined where the step is no moment for lessons, or not the first such one. */
export function momentAt(steps: readonly Step[], at: number): LessonStep | undefined {
  const moment = MOMENTS[steps[at]!.kind];
  const before = steps.slice(0, at).some(({ kind }) => MOMENTS[kind] === moment);
  return before ? undefined : moment;
}
