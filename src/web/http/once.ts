/** Lets a form sent twice do its thing once. Knows no resource. */
import type { Database } from '#stores/database.ts';
import { once as submitOnce } from '#stores/submissions.ts';
import { nowIn } from './clock.ts';
import type { Request } from './env.ts';
import type { Typed } from './form.ts';
import { goTo } from './reply.ts';

/** A domain refusal carries no location: nothing was done, and the form may be sent again. */
export type Done<Refused> = { readonly location: string } | (Refused & { readonly location?: undefined });

/**
 * Runs `act` in one transaction, unless this form's token was carried out before; either way the reader is sent to
 * where the first sending led. A refusal is handed to `refused`, which answers with the form again.
 */
export async function once<Refused extends object>(
  c: Request,
  typed: Typed,
  act: (db: Database) => Promise<Done<Refused>>,
  refused?: (reason: Refused) => Response | Promise<Response>,
): Promise<Response> {
  const { token } = c.get('services');
  const sent = typed.once ?? '';
  const key = /^[\w-]{8,100}$/.test(sent) ? sent : token();
  const answer = await submitOnce(c.get('db'), key, nowIn(c), act);
  if (answer.repeated) return goTo(c, answer.location);
  if (answer.value.location !== undefined) return goTo(c, answer.value.location);
  if (!refused) throw new Error('invalid refusal: this form cannot be refused');
  return refused(answer.value);
}

export const newToken = (c: Request): string => c.get('services').token();
