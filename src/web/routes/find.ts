/** The search box: the page of all that is found, its answers as she types, and the same as JSON. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import { byScore } from '#core/finding/rank.ts';
import { FindPage } from '#views/find/page.tsx';
import { Finds } from '#views/find/results.tsx';
import { addressOf } from '#views/find/words.ts';
import { readFound } from '../gather/found.ts';
import type { Env } from '../http/env.ts';
import { readQuery } from '../http/form.ts';
import { reply, wantsFragment } from '../http/reply.ts';

export const finding = new Hono<Env>();

/** Of each kind below the box on another page. */
const SHOWN_BELOW = 3;

finding.get('/', async (c) => {
  const typed = readQuery(c);
  const isBelow = wantsFragment(c) && !isOnPage(c.req.header('HX-Current-URL'));
  const view = await readFound(c, typed, isBelow ? SHOWN_BELOW : undefined);
  if (/\bapplication\/json\b/.test(c.req.header('Accept') ?? '')) {
    c.header('Vary', 'Accept');
    c.header('Cache-Control', 'no-store');
    const finds = view.groups.flatMap(({ finds }) => finds).sort(byScore);
    return c.json(finds.map((one) => ({ kind: one.kind, title: one.title, href: addressOf(one) })));
  }
  return reply(c, {
    title: view.query.q.trim() === '' ? 'Find' : `Find: ${view.query.q.trim()}`,
    sought: view.query.q,
    body: jsx(FindPage, view),
    fragment: jsx(Finds, { view, isBelow }),
  });
});

const isOnPage = (address = ''): boolean => URL.canParse(address) && new URL(address).pathname === '/find';
