/** Making a card again: a project that begins with what worked in another, new or there already. */
import { Hono } from 'hono';
import { madeAgain } from '#core/project/made-before.ts';
import { hasTried, ofTheBatch } from '#core/project/next.ts';
import { readId } from '#shared/ids.ts';
import { readSoFar } from '#stores/journal.ts';
import { createProject, editProject } from '#stores/projects.ts';
import { nowIn } from '../http/clock.ts';
import type { Env } from '../http/env.ts';
import { readForm } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { once } from '../http/once.ts';
import { rowIn } from '../http/url.ts';

export const again = new Hono<Env>();

again.post('/:id/again', async (c) => {
  const origin = await rowIn(c, readSoFar);
  const typed = await readForm(c);
  const begun = origin && madeAgain(origin);
  if (!begun) return notFound(c);
  const named = readId(typed.into ?? '');
  const into = named === undefined ? undefined : await readSoFar(c.get('db'), named);
  const empty = into && !hasTried(into.envelopes) && ofTheBatch(into.envelopes).length === 0;
  return once(c, typed, async (db) => {
    const { title: _, quantity: __, ...measures } = begun;
    const project = empty
      ? (await editProject(db, into.project.id, measures, nowIn(c)))!
      : await createProject(db, begun, nowIn(c));
    return { location: `/projects/${project.id}/plans/new` };
  });
});
