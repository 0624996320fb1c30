/** What a project taught, each lesson with the step where it comes up again: to put right, to keep always, to let back. */
import type { FC } from 'hono/jsx';
import type { OwnLesson } from '#core/project/lessons.ts';
import { howMany } from '../common/words.ts';
import { StepChoice } from './step.tsx';
import { SAY_STEP } from './words.ts';

export const OwnLessons: FC<{ lessons: readonly OwnLesson[] }> = ({ lessons }) =>
  lessons.length === 0 ? null : (
    <section class="no-print">
      <h2>Where its lessons come up</h2>
      <ul class="list">
        {lessons.map((lesson) => (
          <li id={`lesson-${lesson.id}`}>
            <p>
              {lesson.words}
              {lesson.savedBy ? <span class="quiet"> Saved by: {lesson.savedBy}</span> : null}
            </p>
            <details>
              <summary>{sayWhere(lesson)}</summary>
              <Change lesson={lesson} />
            </details>
          </li>
        ))}
      </ul>
    </section>
  );

const Change: FC<{ lesson: OwnLesson }> = ({ lesson }) => {
  const address = `/lessons/${lesson.id}`;
  return (
    <div class="row">
      <form method="post" action={address} class="row">
        <input type="hidden" name="_method" value="PUT" />
        <StepChoice id={`step-${lesson.id}`} lesson={lesson} />
        <button type="submit" class="plain small">
          Let it come up there
        </button>
      </form>
      <form method="post" action={`${address}/always`}>
        {lesson.always ? <input type="hidden" name="_method" value="DELETE" /> : null}
        <button type="submit" class="plain small">
          {lesson.always ? 'Not always' : 'Always at this step'}
        </button>
      </form>
      {lesson.hidden > 0 ? (
        <form method="post" action={`${address}/not-here`}>
          <input type="hidden" name="_method" value="DELETE" />
          <button type="submit" class="plain small">
            Let it come up everywhere again
          </button>
        </form>
      ) : null}
    </div>
  );
};

function sayWhere({ step, always, hidden }: OwnLesson): string {
  if (step === null) return 'Comes up nowhere yet: its words name no step';
  const where = `Comes up ${always ? 'always ' : ''}at ${SAY_STEP[step]}`;
  return hidden > 0 ? `${where}, but not in ${howMany(hidden, 'place')}` : where;
}
