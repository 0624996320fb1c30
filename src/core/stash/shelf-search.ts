/**
 * Whether a blank comes out of a piece, what that costs the shelf, and what is lacking where it does not. Knows one
 * piece at a time; the store finds the pieces, ranking by the same regret.
 */
import { regret } from '#core/cutting/worth.ts';
import type { Length } from '#shared/length.ts';
import { holds, type Size } from '#shared/size.ts';
import { type Block, cutOut, leftoversOf } from './layout.ts';
import type { Piece, PieceCut } from './stash.ts';
import { type PaperWanted, roomFor, type Unsuited, unsuited, waysToLie } from './suits.ts';

/** What is looked for; without a border asked for it is taken from the end away from it, and ends above it. */
export type BlankWanted = Pick<PaperWanted, 'width' | 'height' | 'mayTurn' | 'border' | 'kinds' | 'designs'>;

/** A piece that will do: how one blank is cut from it, what that costs, and how many it could yield. */
export interface Choice {
  readonly piece: Piece;
  readonly cut: PieceCut;
  readonly regret: number;
  readonly yields: number;
}

/** The piece that comes nearest, and what it lacks on each side as the blank would lie; 0 where it is enough. */
export interface Nearest {
  readonly piece: Piece;
  readonly short: Size;
}

/** Of the paper asked for, what is not large enough: sheets by the reason, and how many kinds of offcut; and how many do. */
export interface LeftOutHere {
  /** The first few by name, all of them counted. */
  readonly sheets: readonly {
    readonly why: Unsuited;
    readonly names: readonly string[];
    readonly count: number;
  }[];
  readonly offcuts: number;
  readonly fitting: number;
}

/** The choice for one piece, or undefined when the blank does not fit on it with its print as wanted. */
export function chooseFrom(piece: Piece, wanted: BlankWanted, keepAtLeast: Length): Choice | undefined {
  const cut = layOut(piece, wanted, 1, keepAtLeast);
  return (
    cut && { piece, cut, regret: regret(piece, cut.leftovers, keepAtLeast), yields: yieldOf(piece, wanted) }
  );
}

/**
 * The least regretted way to cut `copies` blanks from one piece as one block in a corner, in rows that lie alike.
 * Of two ways alike, the one that keeps a border in one length. Undefined when that many do not fit so; what a
 * cleverer layout would yield is the planner's to say.
 */
export function layOut(
  piece: Piece,
  wanted: BlankWanted,
  copies: number,
  keepAtLeast: Length,
): PieceCut | undefined {
  const below = wanted.border === true;
  const firsts = piece.border ? (['y', 'x'] as const) : (['x', 'y'] as const);
  const ways = blocksOn(piece, wanted, copies).flatMap((block) =>
    firsts.map((first) => {
      const way = { first, below, keepAtLeast };
      return { block, way, cost: regret(piece, leftoversOf(piece, block, way), keepAtLeast) };
    }),
  );
  if (ways.length === 0) return undefined;
  const { block, way } = ways.reduce((best, one) => (best.cost <= one.cost ? best : one));
  return cutOut(piece, block, way);
}

/** The most blanks that lie alike in rows on the piece. */
export const yieldOf = (piece: Piece, wanted: BlankWanted): number =>
  Math.max(
    0,
    ...orientations(piece, wanted).map((blank) => across(piece, blank) * down(piece, blank, wanted)),
  );

function blocksOn(piece: Piece, wanted: BlankWanted, copies: number): Block[] {
  return orientations(piece, wanted).flatMap((blank) =>
    Array.from({ length: Math.min(across(piece, blank), copies) }, (_, one) => ({
      blank,
      turned: blank.width !== wanted.width,
      columns: one + 1,
      copies,
    })).filter(({ columns }) => Math.ceil(copies / columns) <= down(piece, blank, wanted)),
  );
}

const orientations = (piece: Piece, wanted: BlankWanted): Size[] => {
  if (unsuited(wanted, piece)) return [];
  const room = roomFor(wanted, piece);
  return waysToLie(wanted, piece).filter((blank) => holds(room, blank));
};

const across = (piece: Size, blank: Size): number => Math.floor(piece.width / blank.width);

const down = (piece: Piece, blank: Size, wanted: BlankWanted): number =>
  wanted.border ? 1 : Math.floor(roomFor(wanted, piece).height / blank.height);
