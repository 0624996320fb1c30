/** What the shelf is searched for, as it was typed: a code, or a search whose design and place were named in words. */
import { meantBy } from '#core/finding/named.ts';
import type { Problem } from '#shared/checked.ts';
import { readId } from '#shared/ids.ts';
import { PAPER_KINDS } from '#shared/paper-kind.ts';
import { shelfForm } from '#shared/schemas/offcut.ts';
import type { Database } from '#stores/database.ts';
import { readDesign } from '#stores/designs.ts';
import { likelyDesigns, likelyPlaces } from '#stores/likely.ts';
import type { ShelfQuery } from '#stores/shelf.ts';
import { NOWHERE } from '#views/stash/search.tsx';
import type { Request } from '../http/env.ts';
import { check, readQuery } from '../http/form.ts';

export type ShelfAsked =
  | { readonly problems: readonly Problem[] }
  | { readonly code: string }
  | { readonly query: Omit<ShelfQuery, 'limit'>; readonly something: boolean; readonly list: boolean };

/** So many designs or places that a word begins are looked at together. */
const MOST_NAMED = 24;

export async function readShelfAsked(c: Request): Promise<ShelfAsked> {
  const read = check(shelfForm(c.get('units'), PAPER_KINDS), readQuery(c));
  if (!read.ok) return { problems: read.problems };
  const { code, sort, view, from = 0, design, place, ...rest } = read.value;
  if (code !== undefined) return { code };
  const db = c.get('db');
  const designs = design === undefined ? undefined : await designsNamed(db, design);
  const places = place === undefined ? undefined : await placesNamed(db, place);
  const problems = [
    ...(designs?.length === 0 ? [{ field: 'design', message: `No design is called “${design}”.` }] : []),
    ...(places?.length === 0 ? [{ field: 'place', message: `No place is called “${place}”.` }] : []),
  ];
  if (problems.length > 0) return { problems };
  const sized = rest.width !== undefined || rest.height !== undefined;
  return {
    query: { ...rest, designs, places, from, order: sort ?? (sized ? 'smallest' : 'newest') },
    something: [design, place, ...Object.values(rest)].some((one) => one !== undefined),
    list: view === 'list',
  };
}

/** All that the words may mean, since a search may show them all. */
async function designsNamed(db: Database, typed: string): Promise<number[]> {
  const likely = await likelyDesigns(db, typed, { limit: MOST_NAMED });
  const meant = meantBy(typed, likely);
  if (meant !== 'none') return ('one' in meant ? [meant.one] : meant.several).map(({ id }) => id);
  const numbered = await readDesign(db, readId(typed) ?? 0);
  return numbered ? [numbered.id] : [];
}

async function placesNamed(db: Database, typed: string): Promise<string[]> {
  if (typed === NOWHERE) return [''];
  const likely = await likelyPlaces(db, typed, { limit: MOST_NAMED });
  return likely[0] === typed ? [typed] : likely;
}
