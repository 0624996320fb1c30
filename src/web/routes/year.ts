/** A year's paper: bought, used, saved by using offcuts, spoiled. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import { sumYear } from '#core/stash/year.ts';
import { yearOf, yearsKnown } from '#stores/year.ts';
import { YearPage } from '#views/stash/year.tsx';
import { nowIn } from '../http/clock.ts';
import type { Env } from '../http/env.ts';
import { reply } from '../http/reply.ts';
import { queryId } from '../http/url.ts';

export const years = new Hono<Env>();

years.get('/', async (c) => {
  const db = c.get('db');
  const asked = queryId(c, 'of');
  const year = asked !== undefined && asked <= LATEST ? asked : Number(nowIn(c).slice(0, 4));
  const found = sumYear(year, await yearOf(db, year));
  const body = jsx(YearPage, { ...found, known: await yearsKnown(db), units: c.get('units') });
  return reply(c, { title: `Paper in ${year}`, section: 'stash', body });
});

const LATEST = 9998;
