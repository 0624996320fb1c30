/** What every page with a shelf of offcuts on it hands to that shelf. Knows no page. */
import { type Alike, alikeIn } from '#core/stash/alike.ts';
import { type Design, type Movement, type Offcut, wentByHand } from '#core/stash/stash.ts';
import { listMovements } from '#stores/movements.ts';
import { readOffcut } from '#stores/offcuts.ts';
import { browseShelf } from '#stores/shelf.ts';
import type { ShelfProps } from '#views/offcuts/tile.tsx';
import type { Request } from '../http/env.ts';
import { newToken } from '../http/once.ts';
import { here, queryId } from '../http/url.ts';

export async function shelfOf(c: Request, alike: readonly Alike[], back = here(c)): Promise<ShelfProps> {
  return { alike, went: await justGone(c), back, token: newToken(c), units: c.get('units') };
}

/** More than these on one page are too many to look through. */
const MOST_DRAWN = 200;

/** The newest offcuts of one design or pad, whose designs are read already. */
export async function shelfOfPaper(
  c: Request,
  {
    designs,
    ...paper
  }: {
    readonly design?: number;
    readonly pad?: number;
    readonly designs: readonly Design[];
  },
  back: string,
): Promise<ShelfProps> {
  const offcuts = await browseShelf(c.get('db'), { ...paper, limit: MOST_DRAWN + 1 }, designs);
  const shelf = await shelfOf(c, alikeIn(offcuts.slice(0, MOST_DRAWN)), back);
  return { ...shelf, more: offcuts.length > MOST_DRAWN };
}

/** Whether the newest line of a ledger is paper taken off the shelf by hand. */
export const endsGone = ([newest]: readonly Movement[]): boolean =>
  newest !== undefined && wentByHand(newest);

/** What the address says is gone, unless something has happened to it since. */
async function justGone(c: Request): Promise<Offcut | undefined> {
  const id = queryId(c, 'gone');
  const offcut = id === undefined ? undefined : await readOffcut(c.get('db'), id);
  if (!offcut) return undefined;
  const piece = { design: offcut.design.id, offcut: offcut.id };
  return endsGone(await listMovements(c.get('db'), { piece, limit: 1 })) ? offcut : undefined;
}
