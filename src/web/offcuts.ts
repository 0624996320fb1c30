/** Offcuts: to add several in a row, to look at and put right; gone, put back, counted again. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import type { Design, Offcut } from '#core/project/stash.ts';
import type { Problem } from '#shared/checked.ts';
import { printSize, type Units } from '#shared/length.ts';
import { goneForm, offcutEditForm, offcutForm, recountForm } from '#shared/schemas/offcut.ts';
import { holds, type Size, turned } from '#shared/size.ts';
import { listDesigns, readDesign } from '#stores/designs.ts';
import { binOffcut, countOffcut, listMovements, putBack } from '#stores/movements.ts';
import { addOffcut, editOffcut, readOffcut } from '#stores/offcuts.ts';
import { listPlaces } from '#stores/shelf.ts';
import { AddOffcuts } from '#views/offcuts/add.tsx';
import { EditOffcut } from '#views/offcuts/edit.tsx';
import { OffcutPage } from '#views/offcuts/offcut.tsx';
import { AboutOffcut } from '#views/offcuts/tile.tsx';
import { BLANK_ENTRY, type Entry } from '#views/parts/field.tsx';
import { sayOvertaken } from '#views/parts/overtaken.ts';
import { Refused } from '#views/stash/refused.tsx';
import { rowId, wayBack, withQuery } from './address.ts';
import type { Env, Request } from './env.ts';
import { check, entryOf, readForm, readQuery, type Typed } from './form.ts';
import { notFound } from './not-found.ts';
import { newToken, once } from './once.ts';
import { goTo, reply, wantsFragment } from './reply.ts';
import { endsGone } from './shelf.ts';
import { titlesOf } from './titles.ts';

export const offcuts = new Hono<Env>();

offcuts.get('/new', (c) => showForm(c, BLANK_ENTRY));

offcuts.post('/', async (c) => {
  const typed = await readForm(c);
  const form = check(offcutForm(c.get('units')), typed);
  if (!form.ok) return showForm(c, entryOf(typed, form.problems));
  const { design: id, count, ...offcut } = form.value;
  const design = await readDesign(c.get('db'), id);
  if (!design)
    return showForm(c, entryOf(typed, [{ field: 'design', message: 'Choose one from the list.' }]));
  const problems = largerThanSheet(offcut, design, c.get('units'));
  if (problems.length > 0) return showForm(c, entryOf(typed, problems));
  return once(c, typed, async (db) => {
    const border = offcut.border && design.print.direction === 'one edge';
    const added = await addOffcut(db, { design: id, offcut: { ...offcut, border }, count, at: now(c) });
    return { location: `/offcuts/new?after=${added!.id}` };
  });
});

offcuts.get('/:id', async (c) => {
  const offcut = await offcutIn(c);
  return offcut ? show(c, offcut, BLANK_ENTRY) : notFound(c);
});

/** Only what stands under its picture on a shelf, which a tap changes. */
offcuts.get('/:id/about', async (c) => {
  const offcut = await offcutIn(c);
  if (!offcut) return notFound(c);
  return showAbout(c, offcut, readQuery(c), { justGone: c.req.query('went') !== undefined });
});

offcuts.get('/:id/edit', async (c) => {
  const offcut = await offcutIn(c);
  return offcut ? showEdit(c, offcut, BLANK_ENTRY) : notFound(c);
});

offcuts.put('/:id', async (c) => {
  const offcut = await offcutIn(c);
  if (!offcut) return notFound(c);
  const typed = await readForm(c);
  const form = check(offcutEditForm(c.get('units')), typed);
  if (!form.ok) return showEdit(c, offcut, entryOf(typed, form.problems));
  const problems = largerThanSheet(form.value, offcut.design, c.get('units'));
  if (problems.length > 0) return showEdit(c, offcut, entryOf(typed, problems));
  await editOffcut(c.get('db'), offcut.id, form.value);
  return goTo(c, wayBack(typed, `/offcuts/${offcut.id}`));
});

offcuts.delete('/:id', async (c) => {
  const offcut = await offcutIn(c);
  if (!offcut) return notFound(c);
  const typed = await readForm(c);
  const form = check(goneForm(), typed);
  if (!form.ok) return show(c, offcut, entryOf(typed, form.problems));
  const { count } = form.value;
  return once<{ left: number }>(
    c,
    typed,
    async (db) => {
      const gone = (await binOffcut(db, offcut.id, { at: now(c), ...(count !== undefined && { count }) }))!;
      return 'refused' in gone ? { left: gone.left } : { location: afterwards(c, offcut, typed, true) };
    },
    ({ left }) =>
      showChanged(c, typed, left === 0 ? 'It was gone already.' : `Only ${left} of them were left.`),
  );
});

offcuts.post('/:id/returns', async (c) => {
  const offcut = await offcutIn(c);
  if (!offcut) return notFound(c);
  const typed = await readForm(c);
  return once<{ why: string }>(
    c,
    typed,
    async (db) => {
      const back = await putBack(db, offcut.id, now(c));
      if (back === undefined) return { why: 'Nothing of it was taken off the shelf by hand.' };
      if ('refused' in back) return { why: sayOvertaken(back, () => `offcut ${offcut.code}`) };
      return { location: afterwards(c, offcut, typed, false) };
    },
    ({ why }) => showChanged(c, typed, why),
  );
});

offcuts.post('/:id/counts', async (c) => {
  const offcut = await offcutIn(c);
  if (!offcut) return notFound(c);
  const typed = await readForm(c);
  const form = check(recountForm(), typed);
  if (!form.ok) return show(c, offcut, entryOf(typed, form.problems));
  return once(c, typed, async (db) => {
    await countOffcut(db, offcut.id, { count: form.value.counted, at: now(c) });
    return { location: `/offcuts/${offcut.id}` };
  });
});

const now = (c: Request): string => c.get('services').now().toISOString();

async function offcutIn(c: Request): Promise<Offcut | undefined> {
  const id = rowId(c);
  return id === undefined ? undefined : readOffcut(c.get('db'), id);
}

/** A tile stays where it is; without script the reader comes back to the page she was on. */
function afterwards(c: Request, offcut: Offcut, typed: Typed, went: boolean): string {
  const back = wayBack(typed, `/offcuts/${offcut.id}`);
  if (wantsFragment(c)) {
    const about = withQuery(`/offcuts/${offcut.id}/about`, 'back', back);
    return went ? withQuery(about, 'went', 'yes') : about;
  }
  return went ? withQuery(back, 'gone', offcut.id, 'offcuts') : `${back}#offcut-${offcut.id}`;
}

/** A print with an up is measured as it stands; any other may be turned to go onto its sheet. */
function largerThanSheet(size: Size, { pad, print }: Design, units: Units): Problem[] {
  const fits = holds(pad.sheet, size) || (print.direction === 'any way' && holds(pad.sheet, turned(size)));
  if (fits) return [];
  const message = `A whole sheet of it is only ${printSize(pad.sheet, units)}.`;
  return [{ field: size.width > pad.sheet.width ? 'width' : 'height', message }];
}

async function showChanged(c: Request, typed: Typed, why: string): Promise<Response> {
  const offcut = (await offcutIn(c))!;
  const back = wayBack(typed, `/offcuts/${offcut.id}`);
  return reply(c, {
    title: 'Changed since',
    section: 'stash',
    body: jsx(Refused, { why, back }),
    fragment: jsx(AboutOffcut, { offcut, why, back, units: c.get('units'), token: newToken(c), focus: true }),
    status: 409,
  });
}

const showAbout = (
  c: Request,
  offcut: Offcut,
  typed: Typed,
  rest: { justGone: boolean },
): Response | Promise<Response> =>
  reply(c, {
    title: offcut.code,
    section: 'stash',
    body: jsx(AboutOffcut, {
      offcut,
      units: c.get('units'),
      back: wayBack(typed, `/offcuts/${offcut.id}`),
      token: newToken(c),
      focus: true,
      ...rest,
    }),
  });

async function show(c: Request, offcut: Offcut, entry: Entry): Promise<Response> {
  const db = c.get('db');
  const movements = await listMovements(db, { piece: { design: offcut.design.id, offcut: offcut.id } });
  return reply(c, {
    title: offcut.code,
    section: 'stash',
    body: jsx(OffcutPage, {
      offcut,
      movements,
      projects: await titlesOf(db, movements),
      went: c.req.query('gone') !== undefined && endsGone(movements),
      entry,
      units: c.get('units'),
      token: newToken(c),
    }),
    status: entry.problems.length > 0 ? 422 : 200,
  });
}

async function showEdit(c: Request, offcut: Offcut, entry: Entry): Promise<Response> {
  const places = await listPlaces(c.get('db'));
  const back = wayBack({ ...readQuery(c), ...entry.typed }, `/offcuts/${offcut.id}`);
  return reply(c, {
    title: offcut.code,
    section: 'stash',
    body: jsx(EditOffcut, { offcut, places, entry, back, units: c.get('units') }),
    status: entry.problems.length > 0 ? 422 : 200,
  });
}

/** `after`: the offcut before in this row; `design`: whose they are. */
async function showForm(c: Request, entry: Entry): Promise<Response> {
  const db = c.get('db');
  const asked = (name: string): number => Number(/^[1-9]\d{0,14}$/.exec(c.req.query(name) ?? '')?.[0] ?? 0);
  const added = asked('after') ? await readOffcut(db, asked('after')) : undefined;
  const design = added?.design ?? (asked('design') ? await readDesign(db, asked('design')) : undefined);
  const [designs, places] = [await listDesigns(db), await listPlaces(db)];
  return reply(c, {
    title: 'Add offcuts',
    section: 'stash',
    body: jsx(AddOffcuts, {
      designs,
      places,
      added,
      design,
      entry,
      units: c.get('units'),
      token: newToken(c),
    }),
    status: entry.problems.length > 0 ? 422 : 200,
  });
}
