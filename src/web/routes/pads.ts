/** Pads: to add, to look at, to put right; and the designs that are added to one. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import { readPaperWeight } from '#core/paper/read.ts';
import { gramsPerSquareMetre } from '#core/paper/weight.ts';
import { COMMON_SHEETS } from '#core/stash/common-sheets.ts';
import type { Pad, PadWithDesigns } from '#core/stash/stash.ts';
import { PAPER_KINDS } from '#shared/paper-kind.ts';
import type { Print } from '#shared/print.ts';
import { lookForm, newDesignForm, printForm } from '#shared/schemas/design.ts';
import { ifAny, readField } from '#shared/schemas/fields.ts';
import { padForm, purchaseForm } from '#shared/schemas/pad.ts';
import { type Database, transact } from '#stores/database.ts';
import { addDesign, readDesign } from '#stores/designs.ts';
import { buySheets } from '#stores/movements.ts';
import { addPad, editPad, listPads, readPad } from '#stores/pads.ts';
import { readStanding } from '#stores/put-away.ts';
import { editSettings } from '#stores/settings.ts';
import { BLANK_ENTRY, type Entry } from '#views/common/field.tsx';
import { AddDesign } from '#views/designs/form.tsx';
import { Look } from '#views/designs/look.tsx';
import { PadForm } from '#views/pads/form.tsx';
import { PadPage } from '#views/pads/pad.tsx';
import { PadsPage } from '#views/stash/pads.tsx';
import { shelfOfPaper } from '../gather/shelf.ts';
import { nowIn } from '../http/clock.ts';
import type { Env, Request } from '../http/env.ts';
import { check, entryOf, readForm, readQuery, statusOf, type Typed } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { newToken, once } from '../http/once.ts';
import { goToSaved, reply } from '../http/reply.ts';
import { queryId, rowIn } from '../http/url.ts';

export const pads = new Hono<Env>();

/** With up to eight swatches each. */
const LISTED = 16;

pads.get('/', async (c) => {
  const from = queryId(c, 'from') ?? 0;
  const used = c.req.query('used') === 'yes';
  const found = await listPads(c.get('db'), { used, from, limit: LISTED + 1 });
  const body = jsx(PadsPage, {
    pads: found.slice(0, LISTED),
    used,
    pages: { address: used ? '/pads?used=yes' : '/pads', from, size: LISTED, more: found.length > LISTED },
    units: c.get('units'),
  });
  return reply(c, { title: 'Pads', section: 'stash', body });
});

pads.get('/new', (c) => showForm(c, BLANK_ENTRY));

pads.post('/', async (c) => {
  const typed = await readForm(c);
  const form = check(formOf(c, typed), typed);
  if (!form.ok) return showForm(c, entryOf(typed, form.problems));
  return once(c, typed, async (db) => {
    const pad = await addPad(db, form.value);
    await adoptSign(db, form.value.sign);
    return { location: `/pads/${pad.id}/designs/new` };
  });
});

pads.get('/:id', async (c) => {
  const found = await padIn(c);
  return found ? showPad(c, found, BLANK_ENTRY) : notFound(c);
});

pads.post('/:id/purchases', async (c) => {
  const found = await padIn(c);
  if (!found) return notFound(c);
  const typed = await readForm(c);
  const form = check(purchaseForm(found.designs.map((design) => design.id)), typed);
  if (!form.ok) return showPad(c, found, entryOf(typed, form.problems));
  const at = nowIn(c);
  return once(c, typed, async (db) => {
    for (const { design, sheets } of form.value) await buySheets(db, design, { sheets, at });
    return { location: `/pads/${found.pad.id}` };
  });
});

pads.get('/:id/edit', async (c) => {
  const found = await padIn(c);
  return found ? showForm(c, BLANK_ENTRY, found.pad) : notFound(c);
});

pads.put('/:id', async (c) => {
  const found = await padIn(c);
  if (!found) return notFound(c);
  const typed = await readForm(c);
  const form = check(formOf(c, typed), typed);
  if (!form.ok) return showForm(c, entryOf(typed, form.problems), found.pad);
  await transact(c.get('db'), async (db) => {
    await editPad(db, found.pad.id, form.value);
    await adoptSign(db, form.value.sign);
  });
  return goToSaved(c, `/pads/${found.pad.id}`);
});

pads.get('/:id/designs/new', async (c) => {
  const found = await padIn(c);
  return found ? showDesignForm(c, found.pad, BLANK_ENTRY) : notFound(c);
});

pads.post('/:id/designs', async (c) => {
  const found = await padIn(c);
  if (!found) return notFound(c);
  const { pad } = found;
  const typed = await readForm(c);
  const form = check(newDesignForm(c.get('units'), pad.sheet, typed.direction), typed);
  if (!form.ok) return showDesignForm(c, pad, entryOf(typed, form.problems));
  const { sheets, ...design } = form.value;
  const at = nowIn(c);
  return once(c, typed, async (db) => {
    const added = await addDesign(db, { pad: pad.id, design, sheets, at });
    return { location: `/pads/${pad.id}/designs/new?after=${added!.id}` };
  });
});

/** Only the picture, while its colours are being chosen; nothing as long as they can't be read. */
pads.get('/:id/look', async (c) => {
  const found = await padIn(c);
  if (!found) return notFound(c);
  const typed = readQuery(c);
  const swatch = check(lookForm(), typed);
  if (!swatch.ok) return c.body(null, 204);
  const read = check(printForm(c.get('units'), found.pad.sheet, typed.direction), typed);
  const print: Print = read.ok ? read.value.print : { direction: 'any way' };
  return reply(c, { title: 'Look', body: jsx(Look, { swatch: swatch.value, print, pad: found.pad }) });
});

const formOf = (c: Request, { size }: Typed) =>
  padForm(c.get('units'), PAPER_KINDS, weightField, {
    sizes: COMMON_SHEETS,
    chosen: size,
    currency: c.get('settings').currency,
  });

/** The first sign that stands by a price is the book's. */
const adoptSign = async (db: Database, sign: string): Promise<void> => {
  if (sign !== '') await editSettings(db, { currency: sign });
};

const weightField = ifAny(readField(readPaperWeight)).transform((weight) =>
  weight ? Math.round(gramsPerSquareMetre(weight) * 100) / 100 : null,
);

const padIn = (c: Request): Promise<PadWithDesigns | undefined> => rowIn(c, readPad);

async function showPad(c: Request, found: PadWithDesigns, entry: Entry): Promise<Response> {
  const standing = await readStanding(c.get('db'), { kind: 'pads', id: found.pad.id });
  const shelf = await shelfOfPaper(c, { pad: found.pad.id, designs: found.designs }, `/pads/${found.pad.id}`);
  return reply(c, {
    title: found.pad.name,
    section: 'stash',
    body: jsx(PadPage, {
      ...found,
      standing,
      shelf,
      entry,
      units: c.get('units'),
      currency: c.get('settings').currency,
    }),
    status: statusOf(entry),
  });
}

function showForm(c: Request, entry: Entry, pad?: Pad): Response | Promise<Response> {
  return reply(c, {
    title: pad ? `Change ${pad.name}` : 'Add a pad',
    section: 'stash',
    body: jsx(PadForm, {
      pad,
      entry,
      units: c.get('units'),
      currency: c.get('settings').currency,
      token: newToken(c),
    }),
    status: statusOf(entry),
  });
}

async function showDesignForm(c: Request, pad: Pad, entry: Entry): Promise<Response> {
  const after = queryId(c, 'after');
  const design = after === undefined ? undefined : await readDesign(c.get('db'), after);
  const added = design?.pad.id === pad.id ? design : undefined;
  return reply(c, {
    title: 'Add a design',
    section: 'stash',
    body: jsx(AddDesign, { pad, added, entry, units: c.get('units'), token: newToken(c) }),
    status: statusOf(entry),
  });
}
