/** The post asked about any envelope: its size class, why, and where the address goes. Writes nothing. */
import { Hono } from 'hono';
import { Fragment, jsx } from 'hono/jsx';
import { postForm } from '#shared/schemas/post.ts';
import { PostNotes } from '#views/post/fields.tsx';
import { PostPage } from '#views/post/page.tsx';
import { NoPostAnswer, PostAnswer } from '#views/post/verdict.tsx';
import type { Env } from '../http/env.ts';
import { check, entryOf, readQuery, statusOf } from '../http/form.ts';
import { reply, wantsFragment } from '../http/reply.ts';

export const post = new Hono<Env>();

post.get('/', (c) => {
  const [typed, units] = [readQuery(c), c.get('units')];
  const asked = Object.keys(typed).length > 0 ? check(postForm(units), typed) : undefined;
  const problems = asked && !asked.ok ? asked.problems : [];
  const entry = entryOf(
    typed,
    wantsFragment(c) ? problems.filter(({ field }) => typed[field] !== '') : problems,
  );
  const answer = asked?.ok
    ? jsx(PostAnswer, { posted: asked.value, post: c.get('settings').post, units })
    : jsx(NoPostAnswer, { message: asked ? 'The answer follows here.' : 'Type a size, closed and full.' });
  return reply(c, {
    title: 'Can it be posted?',
    section: 'envelopes',
    body: jsx(PostPage, { units, entry, answer }),
    fragment: jsx(Fragment, null, answer, jsx(PostNotes, { entry })),
    status: statusOf(entry),
  });
});
