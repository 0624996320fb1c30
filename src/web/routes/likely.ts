/** Likely answers to a field that takes a thing by its name, as they are typed. Without script nothing asks for them. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import { nameOf } from '#core/finding/named.ts';
import type { Database } from '#stores/database.ts';
import { likelyDesigns, likelyPlaces } from '#stores/likely.ts';
import { LikelyAnswers } from '#views/common/field.tsx';
import type { Env } from '../http/env.ts';
import { readQuery } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { goTo, reply, wantsFragment } from '../http/reply.ts';

export const likely = new Hono<Env>();

/** The field may have any name: what is typed is all that comes. */
likely.get('/:what', async (c) => {
  const answers = ANSWERS[c.req.param('what')];
  if (!answers) return notFound(c);
  const [typed = ''] = Object.values(readQuery(c));
  if (!wantsFragment(c)) return goTo(c, `/find?${new URLSearchParams({ q: typed })}`);
  const body = jsx(LikelyAnswers, { answers: await answers(c.get('db'), typed) });
  return reply(c, { title: 'Likely', body });
});

const LIMIT = 12;

const ANSWERS: Record<string, (db: Database, typed: string) => Promise<string[]>> = {
  designs: async (db, typed) => (await likelyDesigns(db, typed, { limit: LIMIT })).map(nameOf),
  papers: async (db, typed) => (await likelyDesigns(db, typed, { limit: LIMIT, onShelf: true })).map(nameOf),
  places: (db, typed) => likelyPlaces(db, typed, { limit: LIMIT }),
};
