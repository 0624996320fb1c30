/** Something has to go into something: what a holder takes, and the holder that sets need. Writes nothing. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import { fitsInto, holderFor } from '#core/sets/holder.ts';
import type { Checked } from '#shared/checked.ts';
import { holderForm, setsForm } from '#shared/schemas/holders.ts';
import { HolderPage, SetsPage } from '#views/holders/page.tsx';
import type { Env, Request } from '../http/env.ts';
import { check, entryOf, readQuery, type Typed } from '../http/form.ts';
import { reply } from '../http/reply.ts';

export const holders = new Hono<Env>();

holders.get('/', (c) => {
  const typed = readQuery(c);
  const found = asked(typed) ? insideOf(c, typed) : undefined;
  const entry = entryOf(typed, problemsOf(found));
  const inside = found?.ok ? found.value : undefined;
  const body = jsx(HolderPage, { units: c.get('units'), entry, inside });
  return show(c, 'What goes in?', body, found);
});

holders.get('/sets', (c) => {
  const typed = readQuery(c);
  const read = asked(typed) ? check(setsForm(c.get('units')), typed) : undefined;
  const found = read?.ok ? holderFor({ ...read.value, envelope: read.value }) : read;
  const entry = entryOf(typed, problemsOf(found));
  const holder = found?.ok && read?.ok ? { ...found.value, sets: read.value.sets } : undefined;
  const body = jsx(SetsPage, { units: c.get('units'), entry, holder });
  return show(c, 'What holds them?', body, found);
});

function insideOf(c: Request, typed: Typed) {
  const read = check(holderForm(c.get('units')), typed);
  if (!read.ok) return read;
  const found = fitsInto({ ...read.value, holder: read.value });
  if (found.ok) return found;
  return {
    ok: false as const,
    problems: found.problems.map((one) => ({ ...one, field: one.field.replace('holder.', '') })),
  };
}

const asked = (typed: Typed): boolean => Boolean(typed.width || typed.height || typed.depth);

const problemsOf = (found: Checked<unknown> | undefined) => (found && !found.ok ? found.problems : []);

const show = (
  c: Request,
  title: string,
  body: ReturnType<typeof jsx>,
  found: Checked<unknown> | undefined,
): Response | Promise<Response> =>
  reply(c, { title, section: 'envelopes', body, status: found?.ok === false ? 422 : 200 });
