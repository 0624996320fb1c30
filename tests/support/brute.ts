/** The best of goals 1 and 2 by trying everything, for a handful of parts on small pieces; shares nothing with the planner. */
import { copiesOf, type Part, type Piece } from '#core/cutting/order.ts';

export interface Best {
  readonly placed: number;
  readonly area: number;
  readonly newSheetArea: number;
}

/** At most about six copies on pieces of up to about 12 units; parts without pins, designs or matching. */
export function bruteForce(parts: readonly Part[], pieces: readonly Piece[]): Best {
  const copies = parts.flatMap((part) => Array<Part>(part.copies).fill(part));
  const stock = pieces.flatMap((piece) => Array<Piece>(copiesOf(piece)).fill(piece));
  const all = 1 << copies.length;
  const areaOf = (set: number): number =>
    copies.reduce((sum, part, bit) => sum + (set & (1 << bit) ? part.width * part.height : 0), 0);
  let states = new Map([[0, 0]]);
  for (const piece of stock) {
    const fits = cutter(copies, piece);
    const next = new Map(states);
    for (const [used, area] of states) {
      for (let set = 1; set < all; set += 1) {
        if (set & used || !fits(set, piece.width, piece.height)) continue;
        const opened = area + (piece.kind === 'sheet' ? piece.width * piece.height : 0);
        if (opened < (next.get(set | used) ?? Infinity)) next.set(set | used, opened);
      }
    }
    states = next;
  }
  let best: Best = { placed: 0, area: 0, newSheetArea: 0 };
  for (const [set, newSheetArea] of states) {
    const one = { placed: bits(set), area: areaOf(set), newSheetArea };
    const order = one.placed - best.placed || one.area - best.area || best.newSheetArea - one.newSheetArea;
    if (order > 0) best = one;
  }
  return best;
}

const bits = (set: number): number => (set === 0 ? 0 : (set & 1) + bits(set >> 1));

/** Whether a set of copies can be cut from a block, by every cut and every division of the set. */
function cutter(
  copies: readonly Part[],
  piece: Piece,
): (set: number, width: number, height: number) => boolean {
  const known = new Map<string, boolean>();
  const single = (part: Part, width: number, height: number): boolean =>
    (part.width <= width && part.height <= height) ||
    (!(part.upright && piece.upright) && part.height <= width && part.width <= height);
  const fits = (set: number, width: number, height: number): boolean => {
    const key = `${set},${width},${height}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const result =
      bits(set) === 1 ? single(copies[31 - Math.clz32(set)]!, width, height) : divides(set, width, height);
    known.set(key, result);
    return result;
  };
  const divides = (set: number, width: number, height: number): boolean => {
    for (let one = (set - 1) & set; one > 0; one = (one - 1) & set) {
      for (let at = 1; at < width; at += 1)
        if (fits(one, at, height) && fits(set ^ one, width - at, height)) return true;
      for (let at = 1; at < height; at += 1)
        if (fits(one, width, at) && fits(set ^ one, width, height - at)) return true;
    }
    return false;
  };
  return fits;
}
