/** The best of goals 1 and 2 by trying everything, for a handful of parts on small pieces; shares nothing with the planner. */
import { copiesOf, type Part, type Piece } from '#core/cutting/order.ts';

export interface Best {
  readonly placed: number;
  readonly area: number;
  readonly newSheetArea: number;
}

/** At most about six copies on pieces of up to about 12 units; parts without pins. */
export function bruteForce(parts: readonly Part[], pieces: readonly Piece[]): Best {
  const copies = parts.flatMap((part) => Array<Part>(part.copies).fill(part));
  const stock = pieces.flatMap((piece) => Array<Piece>(copiesOf(piece)).fill(piece));
  const all = 1 << copies.length;
  const matched = matcher(parts, stock);
  const areaOf = (set: number): number =>
    copies.reduce((sum, part, bit) => sum + (set & (1 << bit) ? part.width * part.height : 0), 0);
  let states = new Map<string, State>([['', { used: 0, from: copies.map(() => ''), opened: 0 }]]);
  for (const piece of stock) {
    const fits = cutter(copies, piece);
    const next = new Map(states);
    for (const { used, from, opened } of states.values()) {
      for (let set = 1; set < all; set += 1) {
        if (set & used || !fits(set, piece.width, piece.height)) continue;
        const more = opened + (piece.kind === 'sheet' ? piece.width * piece.height : 0);
        const designs = matched
          ? from.map((one, bit) => (set & (1 << bit) ? (piece.design ?? '-') : one))
          : from;
        const key = `${set | used} ${designs.join()}`;
        if (more < (next.get(key)?.opened ?? Infinity))
          next.set(key, { used: set | used, from: designs, opened: more });
      }
    }
    states = next;
  }
  let best: Best = { placed: 0, area: 0, newSheetArea: 0 };
  for (const { used: set, from, opened: newSheetArea } of states.values()) {
    if (matched && !matched(from)) continue;
    const one = { placed: bits(set), area: areaOf(set), newSheetArea };
    const order = one.placed - best.placed || one.area - best.area || best.newSheetArea - one.newSheetArea;
    if (order > 0) best = one;
  }
  return best;
}

/** Which copies are placed, from which design each, and the area of the sheets opened for them. */
interface State {
  readonly used: number;
  readonly from: readonly string[];
  readonly opened: number;
}

/** By the definition: copy k of all parts of a label from one design, or all copies; undefined where nothing matches. */
function matcher(
  parts: readonly Part[],
  stock: readonly Piece[],
): ((from: readonly string[]) => boolean) | undefined {
  if (parts.every(({ match }) => match === undefined) || stock.length === 0) return undefined;
  const sets = parts.flatMap(({ match, copies }) =>
    Array.from({ length: copies }, (_, copy) => {
      const whole = parts.some((one) => one.match === match && one.oneDesign);
      return match === undefined ? undefined : `${match} ${whole ? '' : copy}`;
    }),
  );
  return (from) =>
    from.every((design, bit) => {
      if (design === '' || sets[bit] === undefined) return true;
      return from.every((other, at) => other === '' || sets[at] !== sets[bit] || other === design);
    });
}

const bits = (set: number): number => (set === 0 ? 0 : (set & 1) + bits(set >> 1));

/** Whether a set of copies can be cut from a block, by every cut and every division of the set. */
function cutter(
  copies: readonly Part[],
  piece: Piece,
): (set: number, width: number, height: number) => boolean {
  const known = new Map<string, boolean>();
  const single = (part: Part, width: number, height: number): boolean =>
    (!part.designs || part.designs.includes(piece.design!)) &&
    ((part.width <= width && part.height <= height) ||
      (!(part.upright && piece.upright) && part.height <= width && part.width <= height));
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
