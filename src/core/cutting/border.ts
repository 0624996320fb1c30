/**
 * A border printed along the bottom edge of a piece, which only what is pinned may reach into. Knows how far down other
 * parts may lie, and how to put the border back under a plan that was looked for above it; plans nothing.
 */
import { type CutTree, isCut, type Rectangle, type UsedPiece } from './cuts.ts';
import type { Limits, Part, Piece } from './order.ts';

type Bordered = Pick<Piece, 'width' | 'height' | 'border'>;

/** How far down from the top of the piece the part may reach. */
export const reachOf = ({ pin }: Pick<Part, 'pin'>, piece: Omit<Bordered, 'width'>): number =>
  pin ? piece.height : heightAbove(piece);

/** Of the piece above its border; 0 where the border is all of it. */
export const heightAbove = ({ height, border = 0 }: Omit<Bordered, 'width'>): number =>
  Math.max(0, height - border);

/** Whether the trimmer can cut the border off in one length; where nothing lies above or below there is no such cut. */
export const canPart = (piece: Bordered, { longestCut = Number.POSITIVE_INFINITY }: Limits): boolean =>
  !piece.border || heightAbove(piece) === 0 || piece.width <= longestCut;

/**
 * The same cuts on the whole piece, given those of the part above its border: a leftover above it as wide as the piece
 * grows down over the border, else the border comes off in one length, kept where it is wide enough.
 */
export function withBorder(above: UsedPiece, piece: Bordered, { keepAtLeast = 0 }: Limits): UsedPiece {
  const { width, height, border = 0 } = piece;
  if (border === 0) return above;
  const line = heightAbove(piece);
  const kept = (high: number): CutTree =>
    Math.min(width, high) < keepAtLeast ? { waste: true } : { leftover: true };
  const top = lowestRest(above.cuts, 0);
  const grown = top === undefined ? undefined : { x: 0, y: top, width, height: height - top };
  const strip = grown ?? { x: 0, y: line, width, height: border };
  const leaf = kept(strip.height);
  const others = above.leftovers.filter((one) => !grown || !sameCorner(one, grown));
  return {
    ...above,
    leftovers: 'leftover' in leaf ? [...others, strip] : others,
    cuts: grown ? withLowest(above.cuts, leaf) : { at: line, along: 'y', parts: [above.cuts, leaf] },
  };
}

/** Where the rest begins that lies lowest and is as wide as the piece; undefined where there is none. */
function lowestRest(tree: CutTree, top: number): number | undefined {
  if (isCut(tree)) return tree.along === 'y' ? lowestRest(tree.parts[1], tree.at) : undefined;
  return 'part' in tree ? undefined : top;
}

const withLowest = (tree: CutTree, leaf: CutTree): CutTree =>
  isCut(tree) ? { ...tree, parts: [tree.parts[0], withLowest(tree.parts[1], leaf)] } : leaf;

const sameCorner = (one: Rectangle, other: Rectangle): boolean =>
  one.x === other.x && one.y === other.y && one.width === other.width;
