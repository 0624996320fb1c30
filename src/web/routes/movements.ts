/** Lines of the stash ledger: undoing one that was written by hand. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import type { PieceRef } from '#core/stash/stash.ts';
import { readDesign } from '#stores/designs.ts';
import { listMovements, undoMovement } from '#stores/movements.ts';
import { readOffcut } from '#stores/offcuts.ts';
import { sayOvertaken } from '#views/common/overtaken.ts';
import { Refused } from '#views/stash/refused.tsx';
import { nowIn } from '../http/clock.ts';
import type { Env, Request } from '../http/env.ts';
import { readForm } from '../http/form.ts';
import { notFound } from '../http/not-found.ts';
import { goTo, reply } from '../http/reply.ts';
import { rowId, wayBack } from '../http/url.ts';

export const movements = new Hono<Env>();

/** Undoing is by nature done once: the ledger keeps one reversal for each line. */
movements.delete('/:id', async (c) => {
  const id = rowId(c);
  const [line] = id === undefined ? [] : await listMovements(c.get('db'), { id });
  if (!line) return notFound(c);
  const back = wayBack(await readForm(c), `/designs/${line.piece.design}`);
  const undone = await undoMovement(c.get('db'), line.id, nowIn(c));
  if (undone === undefined)
    return refuse(c, 'A count is put right by counting again, a cut at its project.', back);
  if (!('refused' in undone)) return goTo(c, back);
  const name = await nameOf(c, line.piece);
  return refuse(
    c,
    sayOvertaken(undone, () => name),
    back,
  );
});

async function nameOf(c: Request, { design, offcut }: PieceRef): Promise<string> {
  if (offcut !== null) return `offcut ${(await readOffcut(c.get('db'), offcut))!.code}`;
  return `the sheets of ${(await readDesign(c.get('db'), design))!.name}`;
}

const refuse = (c: Request, why: string, back: string): Response | Promise<Response> =>
  reply(c, { title: 'Not undone', section: 'stash', body: jsx(Refused, { why, back }), status: 409 });
