/** What is asked of a lesson: the step where it comes up, and where it is not to. */
import { z } from 'zod';
import { LESSON_STEPS } from '../lesson.ts';
import { choiceField, idField, ifAny, noteField } from './fields.ts';

/** Empty leaves it to the lesson’s words. */
export const lessonStepField = choiceField(['', ...LESSON_STEPS], '').transform((step) => step || null);

export const lessonForm = z.object({ step: lessonStepField });

/** For a project, else for a kind of place. */
export const notHereForm = z
  .object({ project: ifAny(idField), place: noteField(200) })
  .refine(({ project, place }) => project !== undefined || place !== '', 'Say where it is not to come up.');
