/** Lessons that come up where she is: one line each, its project behind it, with the ways to be rid of it or to keep it. */
import type { FC } from 'hono/jsx';
import { kindOfPlace, type Lesson, type Place } from '#core/project/lessons.ts';
import { lineOf } from './words.ts';

export interface LessonsShown {
  readonly lessons: readonly Lesson[];
  readonly place: Place;
  /** This page, to come back to. */
  readonly back: string;
}

export const LessonsHere: FC<LessonsShown> = ({ lessons, place, back }) =>
  lessons.length === 0 ? null : (
    <aside class="lessons no-print" aria-label="Learned before">
      <ul>
        {lessons.map((lesson) => (
          <li>
            <a href={`/projects/${lesson.project.id}#lesson-${lesson.id}`} title={lesson.project.title}>
              {lineOf(lesson)}
            </a>
            <Says lesson={lesson} place={place} back={back} />
          </li>
        ))}
      </ul>
    </aside>
  );

const Says: FC<{ lesson: Lesson; place: Place; back: string }> = ({ lesson, place, back }) => (
  <span class="lesson-says">
    <form method="post" action={`/lessons/${lesson.id}/not-here`}>
      <input type="hidden" name="back" value={back} />
      {place.project === null ? (
        <input type="hidden" name="place" value={kindOfPlace(place)} />
      ) : (
        <input type="hidden" name="project" value={`${place.project}`} />
      )}
      <button type="submit" class="link" aria-label={`Not here: not ${sayPlace(place)}`}>
        Not here
      </button>
    </form>
    {lesson.always ? null : (
      <form method="post" action={`/lessons/${lesson.id}/always`}>
        <input type="hidden" name="back" value={back} />
        <button type="submit" class="link" aria-label="Always: at this step, whatever it is made of">
          Always
        </button>
      </form>
    )}
  </span>
);

const sayPlace = ({ project, fold, kinds }: Place): string =>
  project === null
    ? `for ${fold ?? 'such'} envelopes${kinds[0] ? ` of ${kinds[0]} paper` : ''}`
    : 'for this project';
