/** Paper that waits to be used, a page of it at a time, with what each offcut could become. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import { ownSizes } from '#core/batch/filling.ts';
import { couldBecome } from '#core/batch/waiting.ts';
import { pieceOfOffcut } from '#core/stash/stash.ts';
import { listCardSizes } from '#stores/card-sizes.ts';
import { listLongestLain, listNeverUsed } from '#stores/unused.ts';
import { WaitingPaper } from '#views/stash/waiting.tsx';
import { settingIn } from '../gather/envelope-asked.ts';
import type { Env, Request } from '../http/env.ts';
import { reply } from '../http/reply.ts';
import { queryId } from '../http/url.ts';

export const waiting = new Hono<Env>();

const OFFCUTS = 8;
const DESIGNS = 12;
/** So many of her cards, the newest, are tried on each offcut; and so many things it could become are named. */
const MOST_CARDS = 8;
const NAMED = 4;

waiting.get('/waiting', async (c) => {
  const db = c.get('db');
  const [fromOffcut, fromDesign] = [queryId(c, 'from') ?? 0, queryId(c, 'designs') ?? 0];
  const lain = await listLongestLain(db, { limit: OFFCUTS + 1, from: fromOffcut });
  const unused = await listNeverUsed(db, { limit: DESIGNS + 1, from: fromDesign });
  const cards = (await listCardSizes(db)).slice(-MOST_CARDS);
  const sizes = lain.length > 0 && cards.length > 0 ? await sizesOf(c, cards) : [];
  const page = { address: '/stash/waiting' };
  const body = jsx(WaitingPaper, {
    lain: lain.slice(0, OFFCUTS).map((one) => ({
      ...one,
      becomes: couldBecome(pieceOfOffcut(one.paper), sizes).slice(0, NAMED),
    })),
    unused: unused.slice(0, DESIGNS),
    pages: {
      lain: { ...page, from: fromOffcut, size: OFFCUTS, more: lain.length > OFFCUTS },
      unused: { ...page, from: fromDesign, size: DESIGNS, more: unused.length > DESIGNS },
    },
    hasCards: cards.length > 0,
    units: c.get('units'),
  });
  return reply(c, { title: 'Waiting to be used', section: 'stash', body });
});

async function sizesOf(
  c: Request,
  cards: Parameters<typeof ownSizes>[0],
): Promise<ReturnType<typeof ownSizes>> {
  const { notcher, limits } = await settingIn(c);
  return ownSizes(cards, { notcher, limits, fit: c.get('settings').wantedFit });
}
