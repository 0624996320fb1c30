/**
 * The one interface of a way to fold an envelope, and the shapes it hands to drawings and pages. Shapes are plain
 * numbers of 25 nm, x to the right and y down. Knows no fold of its own: each is one file, named in `folds.ts`.
 */
import type { Line, Point, Polygon } from '#core/geometry/point.ts';
import type { Transform } from '#core/geometry/transform.ts';
import type { Finish, FoldName } from '#shared/fold.ts';
import type { Length, Units } from '#shared/length.ts';
import type { FrontLie, Print } from '#shared/print.ts';
import type { Size } from '#shared/size.ts';
import type {
  Card,
  Finishes,
  FitLimits,
  FlapLetter,
  HingedLetter,
  Notcher,
  Recipe,
  Side,
  Turning,
  Want,
} from './recipe.ts';

export interface Question {
  readonly card: Card;
  readonly notcher: Notcher;
  readonly want: Want;
  readonly limits: FitLimits;
}

export interface Fold {
  readonly name: FoldName;
  /** How a print can lie on the front. */
  readonly fronts: readonly FrontLie[];
  /** Best first, a handful; empty only where the tool's ruler has no mark for any. */
  recipes(question: Question): Recipe[];
  /** The pieces to cut, one or two. */
  blanks(recipe: Recipe): readonly Size[];
  /**
   * One layout for each blank, as it lies on the tool with the inside of the envelope up. Notches and scores are
   * numbered as `turning` makes them; without it, as the recipe's notcher does.
   */
  flat(recipe: Recipe, turning?: Turning): readonly FlatLayout[];
  folded(recipe: Recipe): FoldedLayout;
  /** What to do, in order; with a look, how to lay the blank down comes first. */
  steps(recipe: Recipe, turning: Turning, look?: Look): readonly Step[];
  /** The same measures with her own finishes; flaps that she does not name keep the proposed one. */
  finish(recipe: Recipe, own: Finishes): Recipe;
  /** Why a flap can't be finished so, in the reader's units; undefined when it can. */
  finishProblem(recipe: Recipe, letter: FlapLetter, finish: Finish, units: Units): FinishProblem | undefined;
  /** What the eye can tell apart, the plainest first. */
  looks(recipe: Recipe, paper: LookPaper): readonly Look[];
}

/** What is wrong with a finish, and the measure of it that is. */
export interface FinishProblem {
  readonly measure: 'depth' | 'taper' | 'radius';
  readonly message: string;
}

/** The uncut blank fills (0, 0) to (width, height). */
export interface FlatLayout {
  readonly blank: Size;
  readonly outline: Polygon;
  /** In the order they are made. */
  readonly notches: readonly Notch[];
  /** In the order they are made. */
  readonly scores: readonly ScoreLine[];
  readonly pocket: Polygon;
  readonly flaps: readonly FlatFlap[];
  /** Where one flap will lie on another. */
  readonly seams: readonly Polygon[];
  /** Where the glue goes, on the inside of flap C. */
  readonly glue: readonly Polygon[];
}

export interface Notch {
  readonly order: number;
  readonly edge: Side;
  /** Where its middle meets the edge, and its far corner: a corner of the pocket. */
  readonly mouth: Point;
  readonly corner: Point;
  /** What falls out. */
  readonly cut: Polygon;
  /** What a ruler along that edge reads there, from the corner before it going clockwise. */
  readonly reading: Length;
  /** True for the one that is measured; the others are found by the score before. */
  readonly measured: boolean;
}

export interface ScoreLine extends Line {
  readonly order: number;
  readonly flap: HingedLetter;
}

export interface FlatFlap {
  readonly letter: HingedLetter;
  /** As finished. */
  readonly shape: Polygon;
  /** What is cut from it, to be hatched. */
  readonly trims: readonly Polygon[];
  readonly finish: Finish;
}

/**
 * The closed envelope from both sides, the closing flap on top; the pocket fills (0, 0) to (width, height) in either
 * view. The card's outline has its bulk added, so that what is left beside it is the clearance.
 */
export interface FoldedLayout {
  readonly width: number;
  readonly height: number;
  readonly front: FoldedView;
  readonly back: FoldedView;
}

export interface FoldedView {
  readonly pocket: Polygon;
  /** In stacking order, the first nearest to the pocket; none on the front. */
  readonly flaps: readonly { readonly letter: HingedLetter; readonly shape: Polygon }[];
  readonly seams: readonly Polygon[];
  readonly glue: readonly Polygon[];
  readonly card: Polygon;
  readonly gaps: readonly Gap[];
}

/** A clearance to be dimensioned: between card and fold. A negative one runs back over the card. */
export interface Gap extends Line {
  readonly along: 'width' | 'height';
  readonly clearance: Length;
}

/** What a step points at on the flat sheet, after this many clockwise quarter turns of it. */
export interface Lit {
  readonly notch?: number;
  readonly score?: number;
  readonly flaps?: readonly HingedLetter[];
}

export type Caution = 'blade' | 'adhesive';

/**
 * `turns`: how the sheet lies by now, in clockwise quarter turns from where it was laid down (0–3). `sheet`: which of
 * the fold's blanks it is done on, the first when absent.
 */
export type Step = {
  readonly lit: Lit;
  readonly turns: number;
  readonly sheet?: number;
  readonly caution?: Caution;
} & StepAction;

export type StepAction =
  | { readonly kind: 'cut'; readonly blank: Size }
  | { readonly kind: 'lay'; readonly placement: Placement }
  | { readonly kind: 'measure'; readonly start: Length }
  | { readonly kind: 'turn'; readonly turning: Turning; readonly lineUpWith: number }
  | { readonly kind: 'notch'; readonly notch: number }
  | { readonly kind: 'score'; readonly score: number; readonly at?: ScorePlace }
  | { readonly kind: 'trim'; readonly flap: HingedLetter; readonly finish: Finish }
  | { readonly kind: 'fold'; readonly flaps: readonly HingedLetter[] }
  | { readonly kind: 'glue'; readonly flap: FlapLetter; readonly onto: readonly HingedLetter[] }
  | { readonly kind: 'close'; readonly flap: FlapLetter };

/** Where no notch gives it: this far from an edge of the blank, and parallel to it. */
export interface ScorePlace {
  readonly from: 'left' | 'top';
  readonly distance: Length;
}

export interface LookPaper {
  readonly print: Print;
  readonly doubleSided: boolean;
}

/**
 * How to lay the blank down. `faceDown`: the paper's face that comes out on the outside. `towards`: the edge of the
 * tool that the border, or the top of an upright print, points to; absent when the print may lie any way.
 */
export interface Placement {
  readonly faceDown: 'print' | 'back';
  readonly towards?: { readonly what: 'border' | 'top'; readonly side: Side };
}

/**
 * One way the envelope can come out. Transforms run from the paper's outer face (seen from that face, upright, its
 * top left corner at 0, 0) to the front, and flap by flap to the back, of the folded layout.
 */
export interface Look {
  readonly id: string;
  readonly words: string;
  readonly placement: Placement;
  /** Which way the top of an upright print leans on the front, or where its border lies; neither for any way. */
  readonly leans?: Corner;
  readonly border?: FrontBorder;
  readonly front: Transform;
  readonly flaps: readonly { readonly letter: FlapLetter; readonly transform: Transform }[];
}

export type Corner = 'top left' | 'top right' | 'bottom left' | 'bottom right';

/** A border's triangle in one corner of the front; `legs` is 0 where it shows on the back's flaps only. */
export interface FrontBorder {
  readonly corner: Corner;
  readonly legs: Length;
}
