/** The stash as a whole: the shelf with its search, the newest pads, what runs low, the lists to print. */
import { Hono } from 'hono';
import { Fragment, jsx } from 'hono/jsx';
import { nameOf } from '#core/finding/named.ts';
import { listLow } from '#stores/low.ts';
import { listMissing } from '#stores/missing.ts';
import { findByCode } from '#stores/offcuts.ts';
import { hasPads, listPads } from '#stores/pads.ts';
import { listReadyMade } from '#stores/ready-made.ts';
import { COUNTED_AT_MOST, type ShelfFound, searchShelf, tallyShelf } from '#stores/shelf.ts';
import type { Entry } from '#views/common/field.tsx';
import { SheetList, ShelfList } from '#views/stash/list.tsx';
import { Low } from '#views/stash/low.tsx';
import { Found, FoundNotes, type FoundProps } from '#views/stash/search.tsx';
import { ShoppingList } from '#views/stash/shopping.tsx';
import { Stash } from '#views/stash/stash.tsx';
import { shelfOf } from '../gather/shelf.ts';
import { readShelfAsked, type ShelfAsked } from '../gather/shelf-asked.ts';
import { readListPage } from '../gather/shelf-list.ts';
import { usesOfLow } from '../gather/use.ts';
import { nowIn } from '../http/clock.ts';
import type { Env, Request } from '../http/env.ts';
import { entryOf, readQuery, statusOf } from '../http/form.ts';
import { goTo, reply, wantsFragment } from '../http/reply.ts';
import { here, queryId, withQuery } from '../http/url.ts';

export const stash = new Hono<Env>();

stash.get('/', async (c) => {
  const asked = await readShelfAsked(c);
  if ('code' in asked) return goToCode(c, asked.code);
  const problems = 'problems' in asked ? asked.problems : [];
  return showStash(c, entryOf(readQuery(c), problems), await found(c, asked));
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
  const from = queryId(c, 'from') ?? 0;
  const { offcuts, counted } = await readListPage(db, from, LISTED);
  const pads = counted > LISTED ? [] : await listPads(db, { used: false, limit: PADS_LISTED + 1 });
  const body = jsx(ShelfList, {
    offcuts,
    counted,
    pages: { address: '/stash/list', from, size: LISTED, more: counted > from + LISTED },
    pads: pads.length > PADS_LISTED ? [] : pads,
    at: nowIn(c),
    units: c.get('units'),
  });
  return reply(c, { title: 'Shelf list', section: 'stash', body });
});

stash.get('/sheets', async (c) => {
  const from = queryId(c, 'from') ?? 0;
  const pads = await listPads(c.get('db'), { used: false, from, limit: SHEETS_LISTED + 1 });
  const body = jsx(SheetList, {
    pads: pads.slice(0, SHEETS_LISTED),
    pages: { address: '/stash/sheets', from, size: SHEETS_LISTED, more: pads.length > SHEETS_LISTED },
    at: nowIn(c),
    units: c.get('units'),
  });
  return reply(c, { title: 'List of sheets', section: 'stash', body });
});

/** Nobody carries home more in one go. */
const LONGEST_SHOPPING = 40;

const PAGE = 30;
const MOST_PAGES = 20;

/** As many offcuts as one screen is scrolled through; the rest follow page by page. */
const LISTED = 200;
/** With so many pads at most the sheets stand on the same list. */
const PADS_LISTED = 20;
const SHEETS_LISTED = 100;

/** As many as are looked through at once. */
const SHOWN = { pictures: 24, list: 30 };
const PADS_SHOWN = 6;

async function goToCode(c: Request, code: string): Promise<Response> {
  const offcut = await findByCode(c.get('db'), code);
  if (offcut) return goTo(c, `/offcuts/${offcut.id}`);
  const message = `No offcut ever had the code ${code}.`;
  const entry = entryOf(readQuery(c), [{ field: 'code', message }]);
  return showStash(c, entry, await found(c, { problems: [] }), 404);
}

const NOTHING: ShelfFound = { alike: [], counted: 0 };

async function found(c: Request, asked: Exclude<ShelfAsked, { code: string }>): Promise<FoundProps> {
  const clear = 'query' in asked;
  const view = clear && asked.list ? 'list' : 'pictures';
  const from = clear ? asked.query.from : 0;
  const { alike, counted } = clear
    ? await searchShelf(c.get('db'), { ...asked.query, limit: SHOWN[view] })
    : NOTHING;
  const page = (from: number): string => withQuery(here(c), 'from', from, 'offcuts');
  return {
    shelf: await shelfOf(c, alike),
    asked: clear ? (asked.something ? 'something' : 'nothing') : 'unclear',
    ...{ from, counted, view, countedAtMost: COUNTED_AT_MOST },
    back: from > 0 ? page(Math.max(0, from - SHOWN[view])) : undefined,
    next:
      alike.length === SHOWN[view] && counted > from + alike.length ? page(from + SHOWN[view]) : undefined,
    otherView: withQuery(here(c), 'view', view === 'list' ? '' : 'list', 'offcuts'),
  };
}

/** What is seen is offered; the rest as it is typed. */
function offered({ shelf }: FoundProps): { designs: string[]; places: string[] } {
  const offcuts = shelf.alike.flatMap((one) => one.offcuts);
  const places = offcuts.map(({ place }) => place).filter((place) => place !== '');
  return {
    designs: [...new Set(offcuts.map(({ design }) => nameOf(design)))],
    places: [...new Set(places)],
  };
}

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
  const pads = await listPads(db, { used: false, limit: PADS_SHOWN + 1 });
  const body = jsx(Stash, {
    pads: pads.slice(0, PADS_SHOWN),
    more: pads.length > PADS_SHOWN,
    empty: pads.length === 0 && !(await hasPads(db)),
    low: await listLow(db, { limit: 3 }),
    tally: await tallyShelf(db),
    readyMade: await listReadyMade(db),
    search: { entry, ...offered(found), found },
    units: c.get('units'),
  });
  return reply(c, { title: 'Stash', section: 'stash', body, status });
}
