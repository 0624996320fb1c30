/** Ready-made envelopes: to add, to look at and put right; bought, counted, used. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import type { ReadyMade } from '#core/stash/ready-made.ts';
import {
  boughtForm,
  countedForm,
  readyMadeEditForm,
  readyMadeForm,
  usedForm,
} from '#shared/schemas/ready-made.ts';
import { listProjects, readProject } from '#stores/projects.ts';
import {
  addReadyMade,
  buyReadyMade,
  countReadyMade,
  editReadyMade,
  listReadyMadeMovements,
  putToUse,
  readReadyMade,
} from '#stores/ready-made.ts';
import { BLANK_ENTRY, type Entry } from '#views/common/field.tsx';
import { ReadyMadeForm } from '#views/ready-made/form.tsx';
import { ReadyMadePage } from '#views/ready-made/page.tsx';
import { nowIn } from '../http/clock.ts';
import type { Env, Request } from '../http/env.ts';
import { check, entryOf, readForm, readQuery, statusOf, type Typed } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { newToken, once } from '../http/once.ts';
import { goToSaved, reply } from '../http/reply.ts';
import { rowIn } from '../http/url.ts';

export const readyMade = new Hono<Env>();

readyMade.get('/new', (c) => showForm(c, entryOf(readQuery(c), [])));

readyMade.post('/', async (c) => {
  const typed = await readForm(c);
  const form = check(readyMadeForm(c.get('units')), typed);
  if (!form.ok) return showForm(c, entryOf(typed, form.problems));
  const { count, ...envelope } = form.value;
  return once(c, typed, async (db) => {
    const { id } = await addReadyMade(db, { envelope, count, at: nowIn(c) });
    return { location: `/ready-made/${id}` };
  });
});

readyMade.get('/:id', async (c) => {
  const found = await foundIn(c);
  return found ? showOne(c, found, entryOf(readQuery(c), [])) : notFound(c);
});

readyMade.get('/:id/edit', async (c) => {
  const found = await foundIn(c);
  return found ? showForm(c, BLANK_ENTRY, found) : notFound(c);
});

readyMade.put('/:id', async (c) => {
  const found = await foundIn(c);
  if (!found) return notFound(c);
  const typed = await readForm(c);
  const form = check(readyMadeEditForm(c.get('units')), typed);
  if (!form.ok) return showForm(c, entryOf(typed, form.problems), found);
  await editReadyMade(c.get('db'), found.id, form.value);
  return goToSaved(c, `/ready-made/${found.id}`);
});

readyMade.post('/:id/purchases', async (c) => {
  const found = await foundIn(c);
  if (!found) return notFound(c);
  const typed = await readForm(c);
  const form = check(boughtForm(), typed);
  if (!form.ok) return showOne(c, found, entryOf(typed, form.problems));
  return once(c, typed, async (db) => {
    await buyReadyMade(db, found.id, { count: form.value.bought, at: nowIn(c) });
    return { location: `/ready-made/${found.id}` };
  });
});

readyMade.post('/:id/counts', async (c) => {
  const found = await foundIn(c);
  if (!found) return notFound(c);
  const typed = await readForm(c);
  const form = check(countedForm(), typed);
  if (!form.ok) return showOne(c, found, entryOf(typed, form.problems));
  return once(c, typed, async (db) => {
    await countReadyMade(db, found.id, { count: form.value.counted, at: nowIn(c) });
    return { location: `/ready-made/${found.id}` };
  });
});

readyMade.post('/:id/uses', async (c) => {
  const found = await foundIn(c);
  if (!found) return notFound(c);
  const typed = await readForm(c);
  const form = check(usedForm(), typed);
  if (!form.ok) return showOne(c, found, entryOf(typed, form.problems));
  const { used: count, project } = form.value;
  if (project !== null && !(await readProject(c.get('db'), project))) return notFound(c);
  return once<{ left: number }>(
    c,
    typed,
    async (db) => {
      const used = (await putToUse(db, found.id, { count, project, at: nowIn(c) }))!;
      return 'refused' in used ? { left: used.left } : { location: `/ready-made/${found.id}` };
    },
    async ({ left }) => showOne(c, (await foundIn(c))!, tooFew(typed, left)),
  );
});

const tooFew = (typed: Typed, left: number): Entry =>
  entryOf(typed, [{ field: 'used', message: left === 0 ? 'None is left.' : `Only ${left} are left.` }]);

const foundIn = (c: Request): Promise<ReadyMade | undefined> => rowIn(c, readReadyMade);

async function showOne(c: Request, one: ReadyMade, entry: Entry): Promise<Response> {
  const db = c.get('db');
  return reply(c, {
    title: one.name,
    section: 'stash',
    body: jsx(ReadyMadePage, {
      readyMade: one,
      movements: await listReadyMadeMovements(db, one.id),
      projects: await listProjects(db),
      entry,
      units: c.get('units'),
      token: newToken(c),
    }),
    status: statusOf(entry),
  });
}

const showForm = (c: Request, entry: Entry, one?: ReadyMade): Response | Promise<Response> =>
  reply(c, {
    title: one ? `Change ${one.name}` : 'Add ready-made envelopes',
    section: 'stash',
    body: jsx(ReadyMadeForm, { readyMade: one, entry, units: c.get('units'), token: newToken(c) }),
    status: statusOf(entry),
  });
