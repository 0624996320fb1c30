/**
 * How many more copies of a part may come from each design, given what its match label leaves open once some are placed.
 * Knows counts by design; no sizes and no pieces.
 */
import type { Part } from './order.ts';

/** Copies placed so far, by part and design; a piece without a design counts as of ''. */
export type Placed = ReadonlyMap<string, ReadonlyMap<string, number>>;

/**
 * By design, among those asked about. With the parts of a label in order of rising copies c, design d takes
 * max n(i, d), i ≤ j, of the first c(j) sets, so that a part may have what the others leave of every c(j) from its own on.
 */
export function roomByDesign(
  part: Part,
  label: readonly Part[],
  placed: Placed,
  designs: Iterable<string>,
): Map<string, number> {
  const room = new Map([...designs].map((design) => [design, Number.POSITIVE_INFINITY]));
  const needed = new Map<string, number>();
  let from = false;
  for (const one of label.toSorted((a, b) => a.copies - b.copies)) {
    for (const [design, count] of placed.get(one.id) ?? [])
      needed.set(design, Math.max(needed.get(design) ?? 0, count));
    from ||= one.id === part.id;
    const sets = [...needed.values()].reduce((sum, count) => sum + count, 0);
    for (const [design, least] of from ? room : [])
      room.set(design, Math.min(least, one.copies - sets + (needed.get(design) ?? 0)));
  }
  const only = label.some(({ oneDesign }) => oneDesign) && needed.size > 0;
  for (const [design, most] of room) {
    const had = placed.get(part.id)?.get(design) ?? 0;
    room.set(design, only && !needed.has(design) ? 0 : Math.max(0, most - had));
  }
  return room;
}
