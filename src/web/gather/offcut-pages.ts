/** The pages about one offcut and the form for new ones, from what the stores say. Changes nothing. */
import { jsx } from 'hono/jsx';
import { nameOf } from '#core/finding/named.ts';
import type { Design, Offcut } from '#core/stash/stash.ts';
import type { Standing } from '#shared/put-away.ts';
import type { Database } from '#stores/database.ts';
import { readDesign } from '#stores/designs.ts';
import { likelyDesigns, likelyPlaces } from '#stores/likely.ts';
import { listMovements } from '#stores/movements.ts';
import { readOffcut } from '#stores/offcuts.ts';
import { titlesOf } from '#stores/projects.ts';
import { readStanding } from '#stores/put-away.ts';
import type { Entry } from '#views/common/field.tsx';
import { AddOffcuts } from '#views/offcuts/add.tsx';
import { EditOffcut } from '#views/offcuts/edit.tsx';
import { OffcutPage } from '#views/offcuts/offcut.tsx';
import { AboutOffcut } from '#views/offcuts/tile.tsx';
import { Refused } from '#views/stash/refused.tsx';
import type { Request } from '../http/env.ts';
import { readQuery, statusOf, type Typed } from '../http/form.ts';
import { newToken } from '../http/once.ts';
import { reply } from '../http/reply.ts';
import { queryId, wayBack } from '../http/url.ts';
import { endsGone } from './shelf.ts';

/** So many are offered before anything is typed. */
const FIRST = { limit: 12 };

/** It is not as the form thought it was. */
export async function showChanged(c: Request, offcut: Offcut, typed: Typed, why: string): Promise<Response> {
  const back = wayBack(typed, `/offcuts/${offcut.id}`);
  return reply(c, {
    title: 'Changed since',
    section: 'stash',
    body: jsx(Refused, { why, back }),
    fragment: jsx(AboutOffcut, { offcut, why, back, units: c.get('units'), token: newToken(c), focus: true }),
    status: 409,
  });
}

/** Only what stands under its picture on a shelf. */
export const showAbout = (
  c: Request,
  offcut: Offcut,
  typed: Typed,
  rest: { justGone: boolean },
): Response | Promise<Response> =>
  reply(c, {
    title: `About ${offcut.code}`,
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

export async function showOffcut(c: Request, offcut: Offcut, entry: Entry): Promise<Response> {
  const db = c.get('db');
  const movements = await listMovements(db, { piece: { design: offcut.design.id, offcut: offcut.id } });
  return reply(c, {
    title: offcut.code,
    section: 'stash',
    body: jsx(OffcutPage, {
      offcut,
      standing: await paperAway(db, offcut.design),
      movements,
      projects: await titlesOf(
        db,
        movements.flatMap(({ project }) => project ?? []),
      ),
      went: c.req.query('gone') !== undefined && endsGone(movements),
      entry,
      units: c.get('units'),
      token: newToken(c),
    }),
    status: statusOf(entry),
  });
}

/** Its design, or the pad of that, where either is put away. */
async function paperAway(db: Database, { id, pad }: Design): Promise<Standing | undefined> {
  const own = await readStanding(db, { kind: 'designs', id });
  return own?.at ? own : readStanding(db, { kind: 'pads', id: pad.id });
}

export async function showEdit(c: Request, offcut: Offcut, entry: Entry): Promise<Response> {
  const places = await likelyPlaces(c.get('db'), '', FIRST);
  const back = wayBack({ ...readQuery(c), ...entry.typed }, `/offcuts/${offcut.id}`);
  return reply(c, {
    title: `Change ${offcut.code}`,
    section: 'stash',
    body: jsx(EditOffcut, { offcut, places, entry, back, units: c.get('units') }),
    status: statusOf(entry),
  });
}

/** `after`: the offcut before in this row; `design`: whose they are; `several`: whose they may be, by the name typed. */
export async function showAdd(c: Request, entry: Entry, several: readonly Design[] = []): Promise<Response> {
  const db = c.get('db');
  const [after, whose] = [queryId(c, 'after'), queryId(c, 'design')];
  const added = after === undefined ? undefined : await readOffcut(db, after);
  const design = added?.design ?? (whose === undefined ? undefined : await readDesign(db, whose));
  const [designs, places] = [await likelyDesigns(db, '', FIRST), await likelyPlaces(db, '', FIRST)];
  return reply(c, {
    title: 'Add offcuts',
    section: 'stash',
    body: jsx(AddOffcuts, {
      likely: designs.map(nameOf),
      several,
      places,
      added,
      design,
      entry,
      units: c.get('units'),
      token: newToken(c),
    }),
    status: statusOf(entry),
  });
}
