/** Answers where the book could not be read or written: says which, and keeps what was typed. Knows no resource. */
import { jsx } from 'hono/jsx';
import type { Trouble } from '#shared/trouble.ts';
import { HeldUp, type Unsent } from '#views/errors/held-up.tsx';
import type { Request } from './env.ts';
import { reply } from './reply.ts';

export async function heldUp(c: Request, trouble: Trouble): Promise<Response> {
  const body = jsx(HeldUp, { trouble, unsent: await unsentIn(c) });
  return reply(c, { title: 'Not now', status: 503, body });
}

/** The form's own token goes with it, so that it does its thing once whatever became of the first sending. */
async function unsentIn(c: Request): Promise<Unsent | undefined> {
  if (['GET', 'HEAD'].includes(c.req.method)) return undefined;
  const form = [...(await c.req.formData()).entries()];
  const fields = form.map(([name, value]) => [name, typeof value === 'string' ? value : ''] as const);
  const { pathname, search } = new URL(c.req.url);
  const meant = c.req.method === 'POST' ? [] : [['_method', c.req.method] as const];
  return { action: pathname + search, fields: [...fields, ...meant] };
}
