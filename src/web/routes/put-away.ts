/** Putting things away and bringing them back, and the page of what is away. Knows no kind of thing. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import { pageQuery } from '#shared/schemas/project.ts';
import { awayForm } from '#shared/schemas/put-away.ts';
import { bringBack, listAway, putAway } from '#stores/put-away.ts';
import { AwayPage, StillInUse } from '#views/away/page.tsx';
import { homeOf } from '#views/common/away.tsx';
import { nowIn } from '../http/clock.ts';
import type { Env } from '../http/env.ts';
import { check, readForm, readQuery } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { goTo, reply } from '../http/reply.ts';

export const putAways = new Hono<Env>();

const SHOWN_AT_ONCE = 30;

putAways.get('/', async (c) => {
  const { from } = pageQuery.parse(readQuery(c));
  const found = await listAway(c.get('db'), { from, limit: SHOWN_AT_ONCE + 1 });
  const pages = { address: '/put-away', from, size: SHOWN_AT_ONCE, more: found.length > SHOWN_AT_ONCE };
  const body = jsx(AwayPage, { away: found.slice(0, SHOWN_AT_ONCE), pages });
  return reply(c, { title: 'Put away', body });
});

/** By nature done once: what is away stays away since then. */
putAways.post('/', async (c) => {
  const asked = check(awayForm, await readForm(c));
  const standing = asked.ok ? await putAway(c.get('db'), asked.value, nowIn(c)) : undefined;
  if (!asked.ok || !standing) return notFound(c);
  if ('refused' in standing) {
    const body = jsx(StillInUse, { id: asked.value.id });
    return reply(c, { title: 'Still in use', section: 'tools', status: 409, body });
  }
  return goTo(c, homeOf(standing));
});

putAways.delete('/:kind/:id', async (c) => {
  const asked = check(awayForm, c.req.param());
  const standing = asked.ok ? await bringBack(c.get('db'), asked.value) : undefined;
  return standing ? goTo(c, homeOf(standing)) : notFound(c);
});
