/**
 * What is to be cut and from what: parts, pieces, and the limits of the maker's trimmer. Knows no plan, no search and
 * no database; every length is a whole number, all in one unit of the caller's choosing.
 */

/** How wide and how high something is. */
export interface Sides {
  readonly width: number;
  readonly height: number;
}

/** An edge of a piece as it lies on the table: `x` runs right and `y` down from its top left corner. */
export type Edge = 'top' | 'right' | 'bottom' | 'left';

/** Where on a sheet a part must lie: with its like-named side on that edge, or its top left corner at a place. */
export type Pin = { readonly edge: Edge } | { readonly x: number; readonly y: number };

/** A sheet or an offcut, or `copies` alike of it (1 when absent). */
export interface Piece {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  readonly kind: 'sheet' | 'offcut';
  readonly copies?: number;
  readonly design?: string;
  /** Its print has a direction, and its height runs along it. */
  readonly upright?: boolean;
  /** Edges of the printed sheet that it still has; when absent, all four for a sheet and none for an offcut. */
  readonly edges?: readonly Edge[];
  /** Depth of a border along its bottom edge, into which only what is pinned may reach; none when absent. */
  readonly border?: number;
  /** Left on the shelf whatever the plan. */
  readonly keep?: boolean;
}

export interface Part {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  readonly copies: number;
  /** May not be turned by a quarter on an upright piece. */
  readonly upright?: boolean;
  /** Designs that will do; any piece when absent. */
  readonly designs?: readonly string[];
  /** Copy k of every part with this label comes from one design. */
  readonly match?: string;
  /** With `match`: all copies of all parts with the label come from one design. */
  readonly oneDesign?: boolean;
  /** Never turned; an edge only where the piece still has it, a place only on sheets. */
  readonly pin?: Pin;
}

/** What the maker's tools and shelf allow. */
export interface Limits {
  /** The longest cut that the trimmer can make; no limit when absent. */
  readonly longestCut?: number;
  /** A leftover whose shorter side is under this is waste; 0 when absent. */
  readonly keepAtLeast?: number;
}

export interface Order extends Limits {
  readonly parts: readonly Part[];
}

/** The limits alone, of what carries them beside other things. */
export const limitsOf = ({ longestCut, keepAtLeast }: Limits): Limits => ({
  ...(longestCut !== undefined && { longestCut }),
  ...(keepAtLeast !== undefined && { keepAtLeast }),
});

/** How a plan is looked for. */
export interface PlanOptions {
  /** Time limit, read from `now`, or reckoned as work where there is no clock; 1000 when absent. */
  readonly timeMs?: number;
  readonly seed?: number;
  /** At most this many repackings are tried; with it and without `now`, the same input gives the same plan. */
  readonly work?: number;
  /** What the third goal spares: the worth of what is used up (the default) or the area of the offcuts used. */
  readonly spare?: 'worth' | 'offcutArea';
  /** The clock, in milliseconds. */
  readonly now?: () => number;
  readonly shouldStop?: () => boolean;
  readonly onProgress?: (progress: PlanSoFar) => void;
}

/** The best plan so far against what no plan can beat; areas in square units. */
export interface PlanSoFar {
  readonly placed: number;
  readonly unplaced: number;
  readonly newSheets: number;
  readonly newSheetArea: number;
  readonly bounds: Bounds;
}

/** No plan leaves fewer copies unplaced; none that places as many as this one opens less new sheet area. */
export interface Bounds {
  readonly unplaced: number;
  readonly newSheetArea: number;
}

export const copiesOf = (piece: Piece): number => (piece.keep ? 0 : (piece.copies ?? 1));

const ALL_EDGES: readonly Edge[] = ['top', 'right', 'bottom', 'left'];

export const edgesOf = (piece: Piece): readonly Edge[] =>
  piece.edges ?? (piece.kind === 'sheet' ? ALL_EDGES : []);

/** Whether the part may come from the piece as far as paper goes, whatever their sizes. */
export function suits(part: Part, piece: Piece): boolean {
  if (part.designs && (piece.design === undefined || !part.designs.includes(piece.design))) return false;
  if (!part.pin) return true;
  return 'edge' in part.pin ? edgesOf(piece).includes(part.pin.edge) : piece.kind === 'sheet';
}

/** Whether the part may be turned by a quarter on the piece. */
export const mayTurn = (part: Part, piece: Piece): boolean =>
  part.pin === undefined && !(part.upright === true && piece.upright === true);
