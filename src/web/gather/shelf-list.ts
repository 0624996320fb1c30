/** One page of the shelf as a list to print: which places are on it, and what lies there. Writes nothing. */
import type { Offcut } from '#core/stash/stash.ts';
import type { Database } from '#stores/database.ts';
import { listAtPlaces, type PlaceTally, type Slice, tallyPlaces } from '#stores/shelf.ts';

export interface ListPage {
  readonly offcuts: readonly Offcut[];
  /** Of all pages. */
  readonly counted: number;
}

export async function readListPage(db: Database, from: number, size: number): Promise<ListPage> {
  const places = await tallyPlaces(db);
  return {
    offcuts: await listAtPlaces(db, slicesOf(places, from, size)),
    counted: places.reduce((sum, { offcuts }) => sum + offcuts, 0),
  };
}

/** The part of each place that lies between `from` and `from + size` when all follow each other. */
function slicesOf(places: readonly PlaceTally[], from: number, size: number): Slice[] {
  let before = 0;
  return places.flatMap(({ place, offcuts }) => {
    const [first, last] = [Math.max(from - before, 0), Math.min(from + size - before, offcuts)];
    before += offcuts;
    return first < last ? [{ place, from: first, limit: last - first }] : [];
  });
}
