/** Offcuts: to add several in a row, to look at and put right; gone, put back, counted again. */
import { Hono } from 'hono';
import { borderedOnly, exceeded } from '#core/stash/measured-offcut.ts';
import type { Design, Offcut } from '#core/stash/stash.ts';
import type { Problem } from '#shared/checked.ts';
import { printExactSize, type Units } from '#shared/length.ts';
import { goneForm, offcutEditForm, offcutForm, recountForm } from '#shared/schemas/offcut.ts';
import type { Size } from '#shared/size.ts';
import { binOffcut, countOffcut, putBack } from '#stores/movements.ts';
import { addOffcut, editOffcut, readOffcut } from '#stores/offcuts.ts';
import { BLANK_ENTRY } from '#views/common/field.tsx';
import { sayOvertaken } from '#views/common/overtaken.ts';
import { designNamed, sayMeant } from '../gather/named-design.ts';
import { showAbout, showAdd, showChanged, showEdit, showOffcut } from '../gather/offcut-pages.ts';
import { nowIn } from '../http/clock.ts';
import type { Env, Request } from '../http/env.ts';
import { check, entryOf, readForm, readQuery, type Typed } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { once } from '../http/once.ts';
import { goToSaved, wantsFragment } from '../http/reply.ts';
import { rowIn, wayBack, withQuery } from '../http/url.ts';

export const offcuts = new Hono<Env>();

offcuts.get('/new', (c) => showAdd(c, BLANK_ENTRY));

offcuts.post('/', async (c) => {
  const typed = await readForm(c);
  const form = check(offcutForm(c.get('units')), typed);
  if (!form.ok) return showAdd(c, entryOf(typed, form.problems));
  const { design: named, count, ...offcut } = form.value;
  const meant = await designNamed(c.get('db'), named);
  if (meant === 'none' || 'several' in meant) return showUnnamed(c, typed, meant);
  const design = meant.one;
  const problems = tooLarge(offcut, design, c.get('units'));
  if (problems.length > 0) return showAdd(c, entryOf(typed, problems));
  return once(c, typed, async (db) => {
    const kept = borderedOnly(offcut, design);
    const added = await addOffcut(db, { design: design.id, offcut: kept, count, at: nowIn(c) });
    return { location: `/offcuts/new?after=${added!.id}` };
  });
});

offcuts.get('/:id', async (c) => {
  const offcut = await offcutIn(c);
  return offcut ? showOffcut(c, offcut, BLANK_ENTRY) : notFound(c);
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
  const problems = tooLarge(form.value, offcut.design, c.get('units'));
  if (problems.length > 0) return showEdit(c, offcut, entryOf(typed, problems));
  await editOffcut(c.get('db'), offcut.id, borderedOnly(form.value, offcut.design));
  return goToSaved(c, wayBack(typed, `/offcuts/${offcut.id}`));
});

offcuts.delete('/:id', async (c) => {
  const offcut = await offcutIn(c);
  if (!offcut) return notFound(c);
  const typed = await readForm(c);
  const form = check(goneForm(), typed);
  if (!form.ok) return showOffcut(c, offcut, entryOf(typed, form.problems));
  const { count } = form.value;
  return once<{ left: number }>(
    c,
    typed,
    async (db) => {
      const gone = (await binOffcut(db, offcut.id, { at: nowIn(c), ...(count !== undefined && { count }) }))!;
      return 'refused' in gone ? { left: gone.left } : { location: afterwards(c, offcut, typed, true) };
    },
    async ({ left }) => {
      const why = left === 0 ? 'It was gone already.' : `Only ${left} of them were left.`;
      return showChanged(c, (await offcutIn(c))!, typed, why);
    },
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
      const back = await putBack(db, offcut.id, nowIn(c));
      if (back === undefined) return { why: 'Nothing of it was taken off the shelf by hand.' };
      if ('refused' in back) return { why: sayOvertaken(back, () => `offcut ${offcut.code}`) };
      return { location: afterwards(c, offcut, typed, false) };
    },
    ({ why }) => showChanged(c, offcut, typed, why),
  );
});

offcuts.post('/:id/counts', async (c) => {
  const offcut = await offcutIn(c);
  if (!offcut) return notFound(c);
  const typed = await readForm(c);
  const form = check(recountForm(), typed);
  if (!form.ok) return showOffcut(c, offcut, entryOf(typed, form.problems));
  return once(c, typed, async (db) => {
    await countOffcut(db, offcut.id, { count: form.value.counted, at: nowIn(c) });
    return { location: `/offcuts/${offcut.id}` };
  });
});

/** The form again where the name typed is not that of one design. */
function showUnnamed(c: Request, typed: Typed, meant: Parameters<typeof sayMeant>[0]): Promise<Response> {
  const message = sayMeant(meant, typed.design ?? '');
  return showAdd(c, entryOf(typed, [{ field: 'design', message }]), meant === 'none' ? [] : meant.several);
}

const offcutIn = (c: Request): Promise<Offcut | undefined> => rowIn(c, readOffcut);

/** A tile stays where it is; without script the reader comes back to the page she was on. */
function afterwards(c: Request, offcut: Offcut, typed: Typed, went: boolean): string {
  const back = wayBack(typed, `/offcuts/${offcut.id}`);
  if (wantsFragment(c)) {
    const about = withQuery(`/offcuts/${offcut.id}/about`, 'back', back);
    return went ? withQuery(about, 'went', 'yes') : about;
  }
  return went ? withQuery(back, 'gone', offcut.id, 'offcuts') : `${back}#offcut-${offcut.id}`;
}

function tooLarge(size: Size, design: Design, units: Units): Problem[] {
  const largest = exceeded(size, design);
  if (!largest) return [];
  const message = `A whole sheet of it is only ${printExactSize(largest, units)}.`;
  return [{ field: size.width > largest.width ? 'width' : 'height', message }];
}
