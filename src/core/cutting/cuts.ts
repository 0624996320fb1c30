/**
 * What a plan is: a tree of edge-to-edge cuts over each piece used, what comes off, what is left, in which steps that is
 * done, and how good any plan could be. Types and what tells a cut from a leaf, shared by the search, the judge and the pages; plain JSON.
 */
import type { Bounds, Edge, Limits, Sides } from './order.ts';

export interface Rectangle extends Sides {
  readonly x: number;
  readonly y: number;
}

/** One copy of a part in place; width and height as it lies, so swapped when `turned`. */
export interface PlacedPart extends Rectangle {
  readonly part: string;
  readonly turned: boolean;
}

/**
 * One cut through the whole of a block at the position `at` along an axis of the piece (measured from the piece's top
 * left corner, so `along: 'x'` is a cut from top to bottom), and the two blocks it makes: the nearer to the corner first.
 */
export interface Cut {
  readonly at: number;
  readonly along: 'x' | 'y';
  readonly parts: readonly [CutTree, CutTree];
}

/** A block that is not cut further: a part, a leftover for the shelf, or waste. */
export type Leaf =
  | { readonly part: string; readonly turned: boolean }
  | { readonly leftover: true }
  | { readonly waste: true };

export type CutTree = Cut | Leaf;

/** One sheet or one offcut that is cut. */
export interface UsedPiece {
  readonly piece: string;
  readonly rectangles: readonly PlacedPart[];
  /** What goes back to the shelf: nothing narrower than the keeping size. */
  readonly leftovers: readonly Rectangle[];
  readonly cuts: CutTree;
}

/** A block after a cut: to be cut further, or done. `leftover` is its index among the leftovers of its pattern. */
export interface Block extends Rectangle {
  readonly becomes:
    | { readonly kind: 'more' }
    | { readonly kind: 'part'; readonly part: string; readonly turned: boolean }
    | { readonly kind: 'leftover'; readonly leftover: number }
    | { readonly kind: 'waste' };
}

/** A block of a pattern laid with an edge to the fence and cut, and what stays of it again, as often as `kept` is long. */
export interface Laid {
  /** Index into the plan's patterns. */
  readonly pattern: number;
  readonly block: Rectangle;
  /** With the piece lying as it is drawn. */
  readonly fence: Edge;
  /** What lay between fence and knife, one cut after another. */
  readonly kept: readonly Block[];
  readonly rest: Block;
}

/** What is cut at one measure from the fence; steps of one measure that follow one another are one setting. */
export interface Step {
  /** Its tick; minted once and kept with the plan. */
  readonly number: number;
  readonly set: number;
  readonly along: Cut['along'];
  readonly keeps: 'part' | 'block' | 'leftover';
  /** Cuts in all, on every sheet of its patterns. */
  readonly times: number;
  readonly patterns: readonly number[];
  readonly laid: readonly Laid[];
}

/** Pieces of one size that are cut alike, with the steps that they go through. */
export interface Pattern {
  /** One for each sheet or offcut, as in `used`. */
  readonly pieces: readonly string[];
  /** Their places in the plan's `used`. */
  readonly used: readonly number[];
  readonly rectangles: UsedPiece['rectangles'];
  readonly steps: readonly number[];
}

export interface CutSheet {
  readonly patterns: readonly Pattern[];
  readonly steps: readonly Step[];
}

/**
 * What would make room for a part that could not be placed: so many more of a piece for some of its copies, matching
 * less, a piece that was to be kept, turning it, a trimmer that cuts so far, a smaller part, or no paper that there is.
 */
export type Remedy =
  | { readonly kind: 'another'; readonly piece: string; readonly copies: number; readonly takes: number }
  | { readonly kind: 'apart' }
  | { readonly kind: 'kept'; readonly piece: string }
  | { readonly kind: 'smaller'; readonly width: number; readonly height: number }
  | { readonly kind: 'turned'; readonly piece: string }
  | { readonly kind: 'longer cut'; readonly length: number }
  | { readonly kind: 'paper' };

export interface Unplaced {
  readonly part: string;
  readonly copies: number;
  readonly remedies: readonly Remedy[];
}

/** What is cut, and how good that is. Areas in square units, worth in cubic units (see worth.ts), as floating numbers. */
export interface PlannedCuts {
  readonly placed: number;
  readonly unplaced: readonly Unplaced[];
  readonly newSheets: number;
  readonly newSheetArea: number;
  /** Whole offcuts, also where only a corner of one is used. */
  readonly offcutAreaUsed: number;
  readonly worthLost: number;
  readonly bounds: Bounds;
  /** No plan places more copies, and none that places as many opens less new sheet area. */
  readonly proved: boolean;
  readonly timeMs: number;
  /** The limits it was made under. */
  readonly limits: Limits;
  readonly used: readonly UsedPiece[];
}

export interface CutPlan extends PlannedCuts, CutSheet {}

export const isCut = (node: CutTree): node is Cut => 'at' in node;
