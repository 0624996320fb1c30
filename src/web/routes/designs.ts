/** Designs: to look at, to put right; sheets bought, counted again and gone. They are added to a pad, in pads.ts. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import type { Design } from '#core/stash/stash.ts';
import { boughtForm, designForm, lostForm, lowMarkForm, recountForm } from '#shared/schemas/design.ts';
import { editDesign, markDesign, readDesign } from '#stores/designs.ts';
import { binSheets, buySheets, countSheets, listMovements } from '#stores/movements.ts';
import { titlesOf } from '#stores/projects.ts';
import { readStanding } from '#stores/put-away.ts';
import { BLANK_ENTRY, type Entry } from '#views/common/field.tsx';
import { DesignPage } from '#views/designs/design.tsx';
import { EditDesign } from '#views/designs/form.tsx';
import { shelfOfPaper } from '../gather/shelf.ts';
import { useOfDesign } from '../gather/use.ts';
import { nowIn } from '../http/clock.ts';
import type { Env, Request } from '../http/env.ts';
import { check, entryOf, readForm, statusOf } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { once } from '../http/once.ts';
import { goTo, goToSaved, reply } from '../http/reply.ts';
import { rowIn, wayBack } from '../http/url.ts';

export const designs = new Hono<Env>();

designs.get('/:id', async (c) => {
  const design = await designIn(c);
  return design ? show(c, design, BLANK_ENTRY) : notFound(c);
});

designs.get('/:id/edit', async (c) => {
  const design = await designIn(c);
  return design ? showForm(c, design, BLANK_ENTRY) : notFound(c);
});

designs.put('/:id', async (c) => {
  const design = await designIn(c);
  if (!design) return notFound(c);
  const typed = await readForm(c);
  const form = check(designForm(c.get('units'), design.pad.sheet, typed.direction), typed);
  if (!form.ok) return showForm(c, design, entryOf(typed, form.problems));
  await editDesign(c.get('db'), design.id, form.value);
  return goTo(c, `/designs/${design.id}`);
});

designs.post('/:id/purchases', async (c) => {
  const design = await designIn(c);
  if (!design) return notFound(c);
  const typed = await readForm(c);
  const form = check(boughtForm, typed);
  if (!form.ok) return show(c, design, entryOf(typed, form.problems));
  return once(c, typed, async (db) => {
    await buySheets(db, design.id, { sheets: form.value.bought, at: nowIn(c) });
    return { location: `/designs/${design.id}` };
  });
});

designs.post('/:id/counts', async (c) => {
  const design = await designIn(c);
  if (!design) return notFound(c);
  const typed = await readForm(c);
  const form = check(recountForm, typed);
  if (!form.ok) return show(c, design, entryOf(typed, form.problems));
  return once(c, typed, async (db) => {
    await countSheets(db, design.id, { sheets: form.value.counted, at: nowIn(c) });
    return { location: `/designs/${design.id}` };
  });
});

designs.post('/:id/losses', async (c) => {
  const design = await designIn(c);
  if (!design) return notFound(c);
  const typed = await readForm(c);
  const form = check(lostForm, typed);
  if (!form.ok) return show(c, design, entryOf(typed, form.problems));
  return once<{ left: number }>(
    c,
    typed,
    async (db) => {
      const moved = (await binSheets(db, design.id, { sheets: form.value.lost, at: nowIn(c) }))!;
      return 'refused' in moved ? { left: moved.left } : { location: `/designs/${design.id}` };
    },
    async ({ left }) => {
      const message = left === 0 ? 'There are none left.' : `There are only ${left} left.`;
      return show(c, (await designIn(c))!, entryOf(typed, [{ field: 'lost', message }]));
    },
  );
});

designs.put('/:id/low-mark', async (c) => {
  const design = await designIn(c);
  if (!design) return notFound(c);
  const typed = await readForm(c);
  const form = check(lowMarkForm, typed);
  if (!form.ok) return show(c, design, entryOf(typed, form.problems));
  await markDesign(c.get('db'), design.id, form.value.lowMark);
  return goToSaved(c, wayBack(typed, `/designs/${design.id}`));
});

const designIn = (c: Request): Promise<Design | undefined> => rowIn(c, readDesign);

async function show(c: Request, design: Design, entry: Entry): Promise<Response> {
  const db = c.get('db');
  const movements = await listMovements(db, { piece: { design: design.id, offcut: null } });
  const shelf = await shelfOfPaper(c, { design: design.id, designs: [design] }, `/designs/${design.id}`);
  return reply(c, {
    title: design.name,
    section: 'stash',
    body: jsx(DesignPage, {
      design,
      standing: await readStanding(db, { kind: 'designs', id: design.id }),
      padStanding: await readStanding(db, { kind: 'pads', id: design.pad.id }),
      shelf,
      use: await useOfDesign(db, design, nowIn(c)),
      movements,
      projects: await titlesOf(
        db,
        movements.flatMap(({ project }) => project ?? []),
      ),
      entry,
      units: c.get('units'),
      token: shelf.token,
    }),
    status: statusOf(entry),
  });
}

const showForm = (c: Request, design: Design, entry: Entry): Response | Promise<Response> =>
  reply(c, {
    title: `Change ${design.name}`,
    section: 'stash',
    body: jsx(EditDesign, { design, entry, units: c.get('units') }),
    status: statusOf(entry),
  });
