/**
 * What is cut alike: pieces of one size whose cuts differ only in mirroring, in turning where the print allows it or in the
 * order of strips are given the same cuts. Knows orders and the pieces used; looks for no better plan.
 */
import { type CutTree, isCut, type PlacedPart, type Rectangle, type UsedPiece } from '../cuts.ts';
import { mayTurn, type Order, type Piece } from '../order.ts';
import { Arranger, type Block, measure, needsOf, partBlock, restBlock, rowOf, simpler } from './rows.ts';
import { halvesOf, stripsOf } from './tree.ts';
import { trimmer } from './trimmer.ts';

/**
 * The same parts on the same pieces, those cut alike one after the other with the very same cuts. In each direction what
 * is wanted comes first, the widest before the others, and what is left over last; rests side by side become one, so that
 * no less is worth keeping. Pins, prints and the longest cut are kept to, and pieces with a border stay as they lie. Throws for a piece or part that there isn't.
 */
export function alike(order: Order, pieces: readonly Piece[], used: readonly UsedPiece[]): UsedPiece[] {
  const byId = new Map(pieces.map((piece) => [piece.id, piece]));
  const numbers = new Map(order.parts.map(({ id }, index) => [id, index]));
  const { longestCut = Number.POSITIVE_INFINITY } = order;
  const arrangers = { upright: new Arranger(longestCut), anyWay: new Arranger(longestCut) };
  const read = used.map((one) => {
    const piece = named(byId, one.piece);
    const block = blockOf(order, numbers, piece, one.cuts, whole(piece));
    const arranger = arrangers[piece.upright ? 'upright' : 'anyWay'];
    return { piece, choices: piece.border ? [block] : arranger.arrangements(block) };
  });
  const trim = trimmer(order);
  const cut = mostAlike(read).map(({ piece, block }) => trim(write(order, piece, block), piece));
  return patternsOf(pieces, cut).flatMap((pattern) => pattern.map((index) => cut[index]!));
}

/** Of the ways in which each piece may lie, the one that most of the others of its size may lie in too. */
function mostAlike(read: readonly { piece: Piece; choices: readonly Block[] }[]) {
  const votes = new Map<string, number>();
  for (const { piece, choices } of read) {
    for (const { key } of choices) {
      const name = patternName(piece, key);
      votes.set(name, (votes.get(name) ?? 0) + 1);
    }
  }
  return read.map(({ piece, choices }) => {
    const rank = ({ key }: Block): number => votes.get(patternName(piece, key))!;
    const block = choices.reduce((best, one) => {
      if (rank(one) !== rank(best)) return rank(one) > rank(best) ? one : best;
      return simpler(best, one);
    });
    return { piece, block };
  });
}

/** The indices of pieces of one size that have the very same cuts, each group in the order of its first. */
export function patternsOf(pieces: readonly Piece[], used: readonly UsedPiece[]): number[][] {
  const byId = new Map(pieces.map((piece) => [piece.id, piece]));
  const patterns = new Map<string, number[]>();
  used.forEach(({ piece, cuts }, index) => {
    const name = patternName(named(byId, piece), JSON.stringify(cuts));
    const known = patterns.get(name);
    if (known) known.push(index);
    else patterns.set(name, [index]);
  });
  return [...patterns.values()];
}

const patternName = ({ width, height }: Piece, key: string): string => [width, height, key].join('|');

function named<T>(all: ReadonlyMap<string, T>, id: string): T {
  const one = all.get(id);
  if (one === undefined) throw new Error(`invalid piece or part: ${id}`);
  return one;
}

const whole = ({ width, height }: Piece): Rectangle => ({ x: 0, y: 0, width, height });

function blockOf(
  order: Order,
  numbers: ReadonlyMap<string, number>,
  piece: Piece,
  tree: CutTree,
  block: Rectangle,
): Block {
  if (isCut(tree)) {
    const strips = stripsOf(tree, tree.along, block);
    return rowOf(
      tree.along,
      strips.map(([one, at]) => blockOf(order, numbers, piece, one, at)),
    );
  }
  if (!('part' in tree)) return restBlock(block);
  const number = named(numbers, tree.part);
  const part = order.parts[number]!;
  const lies = part.width !== part.height && !mayTurn(part, piece);
  return partBlock(number, tree.turned, block, needsOf(part.pin, lies));
}

function write(order: Order, piece: Piece, block: Block): UsedPiece {
  const rectangles: PlacedPart[] = [];
  const leftovers: Rectangle[] = [];
  const leaf = (one: Exclude<Block, { kind: 'row' }>, at: Rectangle): CutTree => {
    if (one.kind === 'part') {
      const { id: part } = order.parts[one.part]!;
      rectangles.push({ part, ...at, turned: one.turned });
      return { part, turned: one.turned };
    }
    if (Math.min(at.width, at.height) < (order.keepAtLeast ?? 0)) return { waste: true };
    leftovers.push(at);
    return { leftover: true };
  };
  /** In halves, since a row may hold thousands. */
  const cut = (along: 'x' | 'y', blocks: readonly Block[], at: Rectangle): CutTree => {
    if (blocks.length === 1) return tree(blocks[0]!, at);
    const [first, others] = [blocks.slice(0, blocks.length >> 1), blocks.slice(blocks.length >> 1)];
    const place = first.reduce((sum, one) => sum + measure(one, along), at[along]);
    const [near, far] = halvesOf({ at: place, along }, at);
    return { at: place, along, parts: [cut(along, first, near), cut(along, others, far)] };
  };
  const tree = (one: Block, at: Rectangle): CutTree =>
    one.kind === 'row' ? cut(one.along, one.blocks, at) : leaf(one, at);
  const cuts = tree(block, whole(piece));
  return { piece: piece.id, rectangles, leftovers, cuts };
}
