/**
 * Cuts a block of alike blanks out of a corner of one piece: the tree of cuts, where each blank lies, and what is left.
 * Knows one way to do it at a time; which is least regretted is for the search to say.
 */
import type { CutTree, Leaf } from '#core/cutting/cuts.ts';
import { type Length, length, subtract, times } from '#shared/length.ts';
import { type Size, shorter } from '#shared/size.ts';
import { ENVELOPE_PART, type PartCut, type Piece, type PieceCut, type Rectangle, refOf } from './stash.ts';

/** `copies` blanks in rows of `columns`, the last row perhaps not full; the blank's size as it lies. */
export interface Block {
  readonly blank: Size;
  readonly turned: boolean;
  readonly columns: number;
  readonly copies: number;
}

/** Which cut comes first, whether the block lies at the bottom edge instead of the top, and what is worth keeping. */
export interface Way {
  readonly first: 'x' | 'y';
  readonly below: boolean;
  readonly keepAtLeast: Length;
}

/** How the piece is cut up; leftovers under the keeping size are waste, the others go where the piece lay. */
export function cutOut(piece: Piece, block: Block, way: Way): PieceCut {
  const rests = around(piece, block, way);
  return {
    piece: refOf(piece),
    width: piece.width,
    height: piece.height,
    parts: partsOf(block, rests.top),
    leftovers: leftOf(rests, way).map((one) => ({
      ...one,
      border: piece.border && one.y + one.height === piece.height,
      place: piece.offcut?.place ?? '',
    })),
    cuts: treeOf(block, rests, way),
  };
}

/** What such a cut would leave worth keeping, without working the cut out. */
export const leftoversOf = (piece: Piece, block: Block, way: Way): Rectangle[] =>
  leftOf(around(piece, block, way), way);

const leftOf = ({ beside, beyond, spare }: Rests, way: Way): Rectangle[] =>
  [beside, beyond, spare].filter(keeps(way));

interface Rests {
  /** The block's own top edge. */
  readonly top: Length;
  /** To the right of the block, under or over it, and in its last row; any of them may have no width or height. */
  readonly beside: Rectangle;
  readonly beyond: Rectangle;
  readonly spare: Rectangle;
}

function around(piece: Piece, block: Block, { first, below }: Way): Rests {
  const rows = Math.ceil(block.copies / block.columns);
  const [width, height] = [times(block.blank.width, block.columns), times(block.blank.height, rows)];
  const beyond = subtract(piece.height, height);
  const top = below ? beyond : ZERO;
  const inLastRow = times(block.blank.width, block.copies - block.columns * (rows - 1));
  return {
    top,
    beside: {
      x: width,
      y: first === 'x' ? ZERO : top,
      width: subtract(piece.width, width),
      height: first === 'x' ? piece.height : height,
    },
    beyond: { x: ZERO, y: below ? ZERO : height, width: first === 'x' ? width : piece.width, height: beyond },
    spare: {
      x: inLastRow,
      y: length(top + height - block.blank.height),
      width: subtract(width, inLastRow),
      height: block.blank.height,
    },
  };
}

const ZERO = length(0);

const keeps =
  ({ keepAtLeast }: Way) =>
  (rest: Size): boolean =>
    shorter(rest) > 0 && shorter(rest) >= keepAtLeast;

function partsOf({ blank, turned, columns, copies }: Block, top: Length): PartCut[] {
  return Array.from({ length: copies }, (_, one) => ({
    part: ENVELOPE_PART,
    turned,
    x: times(blank.width, one % columns),
    y: length(top + blank.height * Math.floor(one / columns)),
    width: blank.width,
    height: blank.height,
  }));
}

function treeOf(block: Block, rests: Rests, way: Way): CutTree {
  const leaf = (rest: Size): Leaf => (keeps(way)(rest) ? { leftover: true } : { waste: true });
  const { beside, beyond } = rests;
  const freeX = (tree: CutTree): CutTree =>
    beside.width === 0 ? tree : { at: beside.x, along: 'x', parts: [tree, leaf(beside)] };
  const freeY = (tree: CutTree): CutTree => {
    if (beyond.height === 0) return tree;
    if (way.below) return { at: rests.top, along: 'y', parts: [leaf(beyond), tree] };
    return { at: beyond.y, along: 'y', parts: [tree, leaf(beyond)] };
  };
  const rows = rowsOf(block, rests, leaf(rests.spare));
  return way.first === 'x' ? freeX(freeY(rows)) : freeY(freeX(rows));
}

function rowsOf({ blank, turned, columns, copies }: Block, { top, spare }: Rests, rest: Leaf): CutTree {
  const one: CutTree = { part: ENVELOPE_PART, turned };
  const across = (count: number): CutTree[] => Array.from({ length: count }, () => one);
  const full = Math.floor(copies / columns);
  const rows = Array.from({ length: full }, () => chain(across(columns), 'x', ZERO, blank.width));
  const last = spare.width === 0 ? [] : [chain([...across(copies % columns), rest], 'x', ZERO, blank.width)];
  return chain([...rows, ...last], 'y', top, blank.height);
}

/** The trees one after the other, each but the last cut off at a step from the one before. */
function chain(trees: readonly CutTree[], along: 'x' | 'y', from: number, step: number): CutTree {
  const [last, ...before] = [...trees].reverse() as [CutTree, ...CutTree[]];
  return before.reduce<CutTree>(
    (rest, one, index) => ({ at: from + step * (before.length - index), along, parts: [one, rest] }),
    last,
  );
}
