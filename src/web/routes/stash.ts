/** The stash as a whole: pads and the shelf with its search, what runs low, the list to print. */
import { Hono } from 'hono';
import { Fragment, jsx } from 'hono/jsx';
import type { Offcut } from '#core/stash/stash.ts';
import { PAPER_KINDS } from '#shared/paper-kind.ts';
import { shelfForm } from '#shared/schemas/offcut.ts';
import { listLow } from '#stores/low.ts';
import { listMissing } from '#stores/missing.ts';
import { findByCode } from '#stores/offcuts.ts';
import { listPads } from '#stores/pads.ts';
import { listReadyMade } from '#stores/ready-made.ts';
import { browseShelf, listPlaces, tallyShelf } from '#stores/shelf.ts';
import type { Entry } from '#views/common/field.tsx';
import { ShelfList } from '#views/stash/list.tsx';
import { Low } from '#views/stash/low.tsx';
import { Found, FoundNotes, type FoundProps, NOWHERE } from '#views/stash/search.tsx';
import { ShoppingList } from '#views/stash/shopping.tsx';
import { Stash } from '#views/stash/stash.tsx';
import { shelfOf } from '../gather/shelf.ts';
import { usesOfLow } from '../gather/use.ts';
import { nowIn } from '../http/clock.ts';
import type { Env, Request } from '../http/env.ts';
import { check, entryOf, readQuery, statusOf, type Typed } from '../http/form.ts';
import { goTo, reply, wantsFragment } from '../http/reply.ts';
import { here, queryId, withQuery } from '../http/url.ts';

export const stash = new Hono<Env>();

stash.get('/', async (c) => {
  const typed = readQuery(c);
  const read = check(shelfForm(c.get('units'), PAPER_KINDS), typed);
  if (!read.ok) return showStash(c, entryOf(typed, read.problems), await found(c, [], 'unclear'));
  const { code, more = 1, place, ...rest } = read.value;
  const wanted = { ...rest, place: place === NOWHERE ? '' : place };
  if (code !== undefined) return goToCode(c, typed, code);
  const offcuts = await browseShelf(c.get('db'), { ...wanted, limit: more * PAGE + 1 });
  const asked = Object.values(wanted).some((one) => one !== undefined) ? 'something' : 'nothing';
  const next = offcuts.length > more * PAGE ? withQuery(here(c), 'more', more + 1, 'offcuts') : undefined;
  return showStash(c, entryOf(typed, []), await found(c, offcuts.slice(0, more * PAGE), asked, next));
});

stash.get('/low', async (c) => {
  const db = c.get('db');
  const pages = Math.min(queryId(c, 'more') ?? 1, MOST_PAGES);
  const list = await listLow(db, { limit: pages * PAGE });
  const next = list.pads + list.designs > list.low.length ? pages + 1 : undefined;
  const uses = await usesOfLow(db, list.low, nowIn(c));
  const body = jsx(Low, { ...list, uses, next, units: c.get('units') });
  return reply(c, { title: 'Running low', section: 'stash', body });
});

stash.get('/shopping', async (c) => {
  const db = c.get('db');
  const at = nowIn(c);
  const { low, pads, designs } = await listLow(db, { limit: LONGEST_SHOPPING });
  const body = jsx(ShoppingList, {
    low,
    uses: await usesOfLow(db, low, at),
    missing: await listMissing(db, LONGEST_SHOPPING),
    more: pads + designs > low.length,
    at,
    units: c.get('units'),
  });
  return reply(c, { title: 'To buy', section: 'stash', body });
});

stash.get('/list', async (c) => {
  const db = c.get('db');
  const [offcuts, pads] = [await browseShelf(db, { limit: LONGEST_LIST + 1 }), await listPads(db)];
  const at = nowIn(c);
  const body = jsx(ShelfList, {
    offcuts: offcuts.slice(0, LONGEST_LIST),
    more: offcuts.length > LONGEST_LIST,
    pads,
    at,
    units: c.get('units'),
  });
  return reply(c, { title: 'Shelf list', section: 'stash', body });
});

/** Nobody carries home more in one go. */
const LONGEST_SHOPPING = 40;

const PAGE = 30;
const MOST_PAGES = 20;

/** More than this on one printed list nobody reads. */
const LONGEST_LIST = 2000;

async function goToCode(c: Request, typed: Typed, code: string): Promise<Response> {
  const offcut = await findByCode(c.get('db'), code);
  if (offcut) return goTo(c, `/offcuts/${offcut.id}`);
  const message = `No offcut ever had the code ${code}.`;
  const entry = entryOf(typed, [{ field: 'code', message }]);
  return showStash(c, entry, await found(c, [], 'unclear'), 404);
}

const found = async (
  c: Request,
  offcuts: readonly Offcut[],
  asked: FoundProps['asked'],
  more?: string,
): Promise<FoundProps> => ({ shelf: await shelfOf(c, offcuts), asked, more });

async function showStash(
  c: Request,
  entry: Entry,
  found: FoundProps,
  status: 200 | 404 | 422 = statusOf(entry),
): Promise<Response> {
  if (wantsFragment(c)) {
    const body = jsx(Fragment, null, jsx(Found, found), jsx(FoundNotes, { entry }));
    return reply(c, { title: 'Stash', body, status });
  }
  const db = c.get('db');
  const [pads, places, tally] = [await listPads(db), await listPlaces(db), await tallyShelf(db)];
  const designs = pads.flatMap((one) => one.designs).sort((one, other) => one.id - other.id);
  const search = { entry, designs, places, found };
  return reply(c, {
    title: 'Stash',
    section: 'stash',
    body: jsx(Stash, {
      pads,
      low: await listLow(db, { limit: 3 }),
      tally,
      readyMade: await listReadyMade(db),
      search,
      units: c.get('units'),
    }),
    status,
  });
}
