/** The design that a field names: by words, or by its number, as links and choices carry it. Changes nothing. */
import { isCalled, type Meant, meantBy } from '#core/finding/named.ts';
import type { Design } from '#core/stash/stash.ts';
import { readId } from '#shared/ids.ts';
import type { Database } from '#stores/database.ts';
import { readDesign } from '#stores/designs.ts';
import { likelyDesigns } from '#stores/likely.ts';

/** More alike than these are not told apart by one look at a list. */
const MOST_ALIKE = 24;

/** A number that is also a name is the name. */
export async function designNamed(
  db: Database,
  typed: string,
  { onShelf = false }: { readonly onShelf?: boolean } = {},
): Promise<Meant<Design>> {
  const likely = await likelyDesigns(db, typed, { limit: MOST_ALIKE, onShelf });
  const id = readId(typed);
  const numbered =
    id === undefined || likely.some((one) => isCalled(one, typed)) ? undefined : await readDesign(db, id);
  return numbered ? { one: numbered } : meantBy(typed, likely);
}

/** In the reader's words: why what was typed is no one design. */
export const sayMeant = (meant: Exclude<Meant<Design>, { one: Design }>, typed: string): string =>
  meant === 'none'
    ? `No design is called “${typed}”.`
    : 'More than one design is called so. Choose the one that is meant.';
