/** The tools page: how the reader measures, her notchers and what they have taught, her drawn cards. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import { bulkHabit } from '#core/paper/bulk-measured.ts';
import { POST_IDS } from '#core/post/rules.ts';
import type { NewTool } from '#core/project/learning.ts';
import { accept, type Checked } from '#shared/checked.ts';
import { cardSizeForm, fitsForm, notcherForm, settingsForm } from '#shared/schemas/tools.ts';
import { listBulks } from '#stores/bulks.ts';
import { addCardSize, editCardSize, listCardSizes, readCardSize } from '#stores/card-sizes.ts';
import { readFits } from '#stores/fits.ts';
import {
  addNotcher,
  chooseNotcher,
  editNotcher,
  listNotchers,
  readNotcher,
  resetNotcher,
} from '#stores/notchers.ts';
import { readStanding } from '#stores/put-away.ts';
import { editSettings } from '#stores/settings.ts';
import { BLANK_ENTRY, type Entry } from '#views/common/field.tsx';
import { CardForm } from '#views/tools/card.tsx';
import { FitsPage } from '#views/tools/fits.tsx';
import { NotcherPage } from '#views/tools/notcher.tsx';
import { ToolsPage } from '#views/tools/tools.tsx';
import { nowIn } from '../http/clock.ts';
import type { Env, Request } from '../http/env.ts';
import { check, entryOf, readForm, statusOf } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { newToken, once } from '../http/once.ts';
import { goTo, goToSaved, reply } from '../http/reply.ts';
import { rowId } from '../http/url.ts';

export const tools = new Hono<Env>();

tools.get('/', (c) => showTools(c, BLANK_ENTRY));

tools.post('/settings', async (c) => {
  const typed = await readForm(c);
  const read = check(settingsForm(c.get('units'), POST_IDS), typed);
  if (!read.ok) return showTools(c, entryOf(typed, read.problems));
  const { currency = c.get('settings').currency, ...habits } = read.value;
  await editSettings(c.get('db'), { ...habits, currency });
  return goToSaved(c, '/tools');
});

tools.get('/notchers/new', (c) => showNotcher(c, undefined, BLANK_ENTRY));

tools.post('/notchers', async (c) => {
  const typed = await readForm(c);
  const read = readTool(c, typed);
  if (!read.ok) return showNotcher(c, undefined, entryOf(typed, read.problems));
  return once(c, typed, async (db) => {
    const { tool } = await addNotcher(db, read.value);
    return { location: `/tools/notchers/${tool.id}` };
  });
});

tools.get('/notchers/:id', (c) => showNotcher(c, idOf(c), BLANK_ENTRY));

tools.post('/notchers/:id', async (c) => {
  const id = idOf(c);
  const typed = await readForm(c);
  const read = readTool(c, typed);
  if (!read.ok) return showNotcher(c, id, entryOf(typed, read.problems));
  const edited = await editNotcher(c.get('db'), id, read.value);
  return edited ? goToSaved(c, `/tools/notchers/${id}`) : notFound(c);
});

tools.post('/notchers/:id/choice', async (c) => {
  const chosen = await chooseNotcher(c.get('db'), idOf(c));
  return chosen ? goTo(c, '/tools') : notFound(c);
});

tools.post('/notchers/:id/reset', async (c) => {
  const id = idOf(c);
  const { after } = await readForm(c);
  const reset = await resetNotcher(c.get('db'), id, momentBefore(nowIn(c), after));
  return reset ? goToSaved(c, `/tools/notchers/${id}`) : notFound(c);
});

tools.get('/fits', (c) => showFits(c, BLANK_ENTRY));

tools.post('/fits', async (c) => {
  const typed = await readForm(c);
  const read = check(fitsForm(c.get('units')), typed);
  if (!read.ok) return showFits(c, entryOf(typed, read.problems));
  const { snug = null, easy = null, loose = null } = read.value;
  const { since } = c.get('settings').fits;
  await editSettings(c.get('db'), { fits: { pins: { snug, easy, loose }, since } });
  return goToSaved(c, '/tools/fits');
});

tools.post('/fits/reset', async (c) => {
  const pins = { snug: null, easy: null, loose: null };
  await editSettings(c.get('db'), { fits: { pins, since: nowIn(c) } });
  return goToSaved(c, '/tools/fits');
});

tools.get('/cards/new', (c) => showCard(c, undefined, BLANK_ENTRY));

tools.post('/cards', async (c) => {
  const typed = await readForm(c);
  const read = check(cardSizeForm(c.get('units')), typed);
  if (!read.ok) return showCard(c, undefined, entryOf(typed, read.problems));
  return once(c, typed, async (db) => {
    await addCardSize(db, read.value);
    return { location: '/tools#cards' };
  });
});

tools.get('/cards/:id', (c) => showCard(c, idOf(c), BLANK_ENTRY));

tools.post('/cards/:id', async (c) => {
  const id = idOf(c);
  const typed = await readForm(c);
  const read = check(cardSizeForm(c.get('units')), typed);
  if (!read.ok) return showCard(c, id, entryOf(typed, read.problems));
  return (await editCardSize(c.get('db'), id, read.value)) ? goToSaved(c, '/tools#cards') : notFound(c);
});

/** The moment typed into a hidden field where it is one and past; now where it is not. */
const momentBefore = (now: string, typed = ''): string =>
  /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/.test(typed) && typed < now ? typed : now;

/** 0, which no row has, where the address holds no number. */
const idOf = (c: Request): number => rowId(c) ?? 0;

function readTool(c: Request, typed: Entry['typed']): Checked<NewTool> {
  const read = check(notcherForm(c.get('units')), typed);
  if (!read.ok) return read;
  const { inset, zeroOffset, ...tool } = read.value;
  return accept({ ...tool, pinnedInset: inset ?? null, pinnedZeroOffset: zeroOffset ?? null });
}

async function showTools(c: Request, entry: Entry): Promise<Response> {
  const db = c.get('db');
  const body = jsx(ToolsPage, {
    units: c.get('units'),
    settings: c.get('settings'),
    fits: await readFits(db, c.get('settings').fits),
    bulk: bulkHabit(await listBulks(db)),
    notchers: await listNotchers(db),
    cards: await listCardSizes(db),
    entry,
  });
  return reply(c, { title: 'Tools and units', section: 'tools', body, status: statusOf(entry) });
}

async function showFits(c: Request, entry: Entry): Promise<Response> {
  const habits = c.get('settings').fits;
  const fits = await readFits(c.get('db'), habits);
  const body = jsx(FitsPage, { fits, habits, units: c.get('units'), entry });
  return reply(c, { title: 'How a card sits', section: 'tools', body, status: statusOf(entry) });
}

async function showNotcher(c: Request, id: number | undefined, entry: Entry): Promise<Response> {
  const learned = id === undefined ? undefined : await readNotcher(c.get('db'), id);
  if (id !== undefined && !learned) return notFound(c);
  const standing = id === undefined ? undefined : await readStanding(c.get('db'), { kind: 'tools', id });
  const body = jsx(NotcherPage, { units: c.get('units'), learned, standing, entry, token: newToken(c) });
  return reply(c, {
    title: learned?.tool.name ?? 'A new tool',
    section: 'tools',
    body,
    status: statusOf(entry),
  });
}

async function showCard(c: Request, id: number | undefined, entry: Entry): Promise<Response> {
  const card = id === undefined ? undefined : await readCardSize(c.get('db'), id);
  if (id !== undefined && !card) return notFound(c);
  const standing = id === undefined ? undefined : await readStanding(c.get('db'), { kind: 'cards', id });
  const body = jsx(CardForm, { units: c.get('units'), card, standing, entry, token: newToken(c) });
  return reply(c, { title: card?.name ?? 'A new card', section: 'tools', body, status: statusOf(entry) });
}
