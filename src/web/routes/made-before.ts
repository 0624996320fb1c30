/** Whether a card typed on the start page was made before, told as she types. Without script the envelopes page says it. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import { THIN_BULK } from '#core/envelope/fit.ts';
import { readSize } from '#shared/size-typed.ts';
import { findMadeBefore } from '#stores/made-before.ts';
import { MadeBeforeNote } from '#views/projects/made-before.tsx';
import type { Env } from '../http/env.ts';
import { readQuery } from '../http/form.ts';
import { newToken } from '../http/once.ts';
import { goTo, wantsFragment } from '../http/reply.ts';

export const madeBefore = new Hono<Env>();

madeBefore.get('/', async (c) => {
  const { card = '' } = readQuery(c);
  if (!wantsFragment(c)) return goTo(c, `/envelopes?${new URLSearchParams({ card })}`);
  const units = c.get('units');
  const read = readSize(card, units);
  const before = read.ok ? await findMadeBefore(c.get('db'), { ...read.value, bulk: THIN_BULK }) : undefined;
  const headers = { Vary: 'HX-Request', 'Cache-Control': 'no-store' };
  return c.html(`${jsx(MadeBeforeNote, { before, units, token: newToken(c) })}`, 200, headers);
});
