/** Lessons: where one comes up, that it does so always, and where it is not to. */
import { Hono } from 'hono';
import type { Lesson } from '#core/project/lessons.ts';
import { lessonForm, notHereForm } from '#shared/schemas/lesson.ts';
import { hideLesson, placeLesson, readLesson, showAlways, unhideLesson } from '#stores/lessons.ts';
import { readProject } from '#stores/projects.ts';
import type { Env, Request } from '../http/env.ts';
import { check, readForm, type Typed } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { goTo } from '../http/reply.ts';
import { rowIn, wayBack } from '../http/url.ts';

export const lessons = new Hono<Env>();

lessons.put('/:id', (c) =>
  change(c, async (lesson, typed) => {
    const asked = check(lessonForm, typed);
    if (asked.ok) await placeLesson(c.get('db'), lesson.id, asked.value.step);
    return asked.ok;
  }),
);

lessons.post('/:id/always', (c) =>
  change(c, async ({ id }) => {
    await showAlways(c.get('db'), id, true);
    return true;
  }),
);

lessons.delete('/:id/always', (c) =>
  change(c, async ({ id }) => {
    await showAlways(c.get('db'), id, false);
    return true;
  }),
);

lessons.post('/:id/not-here', (c) =>
  change(c, async ({ id }, typed) => {
    const asked = check(notHereForm, typed);
    if (!asked.ok) return false;
    const { project, place } = asked.value;
    if (project !== undefined && !(await readProject(c.get('db'), project))) return false;
    await hideLesson(c.get('db'), id, project === undefined ? { place } : { project });
    return true;
  }),
);

lessons.delete('/:id/not-here', (c) =>
  change(c, async ({ id }) => {
    await unhideLesson(c.get('db'), id);
    return true;
  }),
);

/** Then back to where she was, or to the lesson among those of its project. Only our own forms send these fields. */
async function change(
  c: Request,
  act: (lesson: Lesson, typed: Typed) => Promise<boolean>,
): Promise<Response> {
  const lesson = await rowIn(c, readLesson);
  const typed = await readForm(c);
  if (!lesson || !(await act(lesson, typed))) return notFound(c);
  const home = `/projects/${lesson.project.id}`;
  const back = wayBack(typed, home);
  return goTo(c, back === home ? `${home}#lesson-${lesson.id}` : back);
}
