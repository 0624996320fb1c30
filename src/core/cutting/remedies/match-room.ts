/**
 * How many more copies of a part may come from each design, given what its match label leaves open once some are placed.
 * Knows counts by design; no sizes and no pieces.
 */
import type { Part } from '../order.ts';

const NONE: ReadonlyMap<string, number> = new Map();

/** Copies placed so far, by part and design; a piece without a design counts as of ''. */
export type PlacedByDesign = ReadonlyMap<string, ReadonlyMap<string, number>>;

/**
 * By design, among those asked about. With the parts of the label, given in order of rising copies c, design d takes
 * max n(i, d), i ≤ j, of the first c(j) sets, so that a part may have what the others leave of every c(j) from its own on.
 */
export function roomByDesign(
  part: Part,
  label: readonly Part[],
  placed: PlacedByDesign,
  designs: Iterable<string>,
): Map<string, number> {
  const room = new Map([...designs].map((design) => [design, Number.POSITIVE_INFINITY]));
  const needed = new Map<string, number>();
  let sets = 0;
  let from = false;
  for (const one of label) {
    for (const [design, count] of placed.get(one.id) ?? NONE) {
      const before = needed.get(design) ?? 0;
      if (count <= before) continue;
      needed.set(design, count);
      sets += count - before;
    }
    from ||= one.id === part.id;
    for (const [design, least] of from ? room : NONE) {
      const most = one.copies - sets + (needed.get(design) ?? 0);
      if (most < least) room.set(design, most);
    }
  }
  const only = label.some(({ oneDesign }) => oneDesign) && needed.size > 0;
  for (const [design, most] of room) {
    const had = placed.get(part.id)?.get(design) ?? 0;
    room.set(design, only && !needed.has(design) ? 0 : Math.max(0, most - had));
  }
  return room;
}
