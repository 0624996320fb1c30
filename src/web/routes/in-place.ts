/** Names, places and counts edited where they stand: the value, its one field, the change. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import { readId } from '#shared/ids.ts';
import { IN_PLACE, type InPlaceKind, inPlaceForm } from '#shared/schemas/in-place.ts';
import { BLANK_ENTRY, type Entry } from '#views/common/field.tsx';
import { addressOf, InPlace, InPlaceField } from '#views/common/in-place.tsx';
import { EDITABLE } from '../gather/in-place.ts';
import { nowIn } from '../http/clock.ts';
import type { Env, Request } from '../http/env.ts';
import { check, entryOf, readForm, statusOf } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { goToSaved, reply, wantsFragment } from '../http/reply.ts';

export const inPlace = new Hono<Env>();

inPlace.get('/:kind/:id', async (c) => {
  const found = await valueIn(c);
  return found ? showValue(c, found) : notFound(c);
});

inPlace.get('/:kind/:id/edit', async (c) => {
  const found = await valueIn(c);
  return found ? showField(c, found, BLANK_ENTRY) : notFound(c);
});

inPlace.put('/:kind/:id', async (c) => {
  const found = await valueIn(c);
  if (!found) return notFound(c);
  const { kind, id } = found;
  const typed = await readForm(c);
  const asked = check(inPlaceForm(kind), typed);
  if (!asked.ok) return showField(c, found, entryOf(typed, asked.problems));
  const refused = await EDITABLE[kind].write(c.get('db'), id, `${asked.value.value}`, nowIn(c));
  if (refused !== undefined)
    return showField(c, found, entryOf(typed, [{ field: 'value', message: refused }]));
  return showValue(c, (await valueIn(c))!);
});

interface Value {
  readonly kind: InPlaceKind;
  readonly id: number;
  readonly text: string;
  readonly inLine: boolean;
}

async function valueIn(c: Request): Promise<Value | undefined> {
  const kind = IN_PLACE.find((one) => one === c.req.param('kind'));
  const id = readId(c.req.param('id') ?? '');
  if (kind === undefined || id === undefined) return undefined;
  const text = await EDITABLE[kind].read(c.get('db'), id);
  const inLine = c.req.query('line') !== undefined;
  return text === undefined ? undefined : { kind, id, text, inLine };
}

/** In its place for scripts, its own page for everybody else. */
const showValue = (c: Request, value: Value): Response | Promise<Response> =>
  wantsFragment(c)
    ? c.html(`${jsx(InPlace, { ...value, focus: true })}`)
    : goToSaved(c, addressOf(value.kind, value.id));

/** A refused one is answered with 200 where a script puts it in its place. */
const showField = (c: Request, value: Value, entry: Entry): Response | Promise<Response> =>
  reply(c, {
    title: 'Change it',
    body: jsx(InPlaceField, { ...value, entry }),
    status: wantsFragment(c) ? 200 : statusOf(entry),
  });
