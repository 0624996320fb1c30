/** The choice of the step at which a lesson comes up; its words decide until she does. */
import type { FC } from 'hono/jsx';
import type { Lesson } from '#core/project/lessons.ts';
import { LESSON_STEPS } from '#shared/lesson.ts';
import { SAY_STEP } from './words.ts';

interface Props {
  readonly id: string;
  /** What was told so far, if it is a lesson yet. */
  readonly lesson: Pick<Lesson, 'step' | 'chosen'> | undefined;
  readonly typed?: string | undefined;
}

export const StepChoice: FC<Props> = ({ id, lesson, typed = lesson?.chosen ? lesson.step! : '' }) => (
  <span class="field">
    <label for={id}>It comes up again at</label>
    <select id={id} name="step">
      <option value="">{sayGuess(lesson)}</option>
      {LESSON_STEPS.map((step) => (
        <option value={step} selected={step === typed}>
          {SAY_STEP[step]}
        </option>
      ))}
    </select>
  </span>
);

const sayGuess = (lesson: Props['lesson']): string =>
  lesson?.step && !lesson.chosen ? `what its words say: ${SAY_STEP[lesson.step]}` : 'what its words say';
