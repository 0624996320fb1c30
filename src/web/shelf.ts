/** What every page with a shelf of offcuts on it hands to that shelf. Knows no page. */
import type { Offcut } from '#core/project/stash.ts';
import { readOffcut } from '#stores/offcuts.ts';
import type { ShelfProps } from '#views/offcuts/tile.tsx';
import { here } from './address.ts';
import type { Request } from './env.ts';
import { newToken } from './once.ts';

export async function shelfOf(c: Request, offcuts: readonly Offcut[], back = here(c)): Promise<ShelfProps> {
  const gone = Number(c.req.query('gone'));
  const went = gone > 0 && Number.isSafeInteger(gone) ? await readOffcut(c.get('db'), gone) : undefined;
  return { offcuts, went, back, token: newToken(c), units: c.get('units') };
}
