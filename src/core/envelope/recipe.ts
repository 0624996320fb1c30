/**
 * The words of an envelope: the card, the tool, what is wanted, and a recipe with all its measures. Types only; every
 * value is plain JSON, so that a recipe can be kept with its project. Knows no method of working any of them out.
 */
import type { Finish, FoldName } from '#shared/fold.ts';
import type { Length } from '#shared/length.ts';
import type { Fit, WantedFit } from '#shared/outcome.ts';
import type { FrontLie } from '#shared/print.ts';
import type { Size } from '#shared/size.ts';

/** A finished card: as it goes into the envelope. `bulk` is its thickness. */
export interface Card extends Size {
  readonly bulk: Length;
}

/** Which way the maker turns the sheet between notches, as she sees it. */
export type Turning = 'clockwise' | 'anticlockwise';

/**
 * The maker's tool. `inset`: how far the pocket's corner lies in from the sheet's edge. `zeroOffset`: added to what
 * its ruler reads, may be negative. `graduation`: its ruler's finest step. `largestSheet`: the longest side it takes.
 */
export interface Notcher {
  readonly inset: Length;
  readonly zeroOffset: Length;
  readonly graduation: Length;
  readonly largestSheet: Length;
  readonly turning?: Turning;
}

/**
 * What the maker wishes for. `largestOuter` limits the folded envelope: one side alone as the card lies; both sides
 * with turning allowed. `front` is how the print must lie on the front.
 */
export interface Want {
  readonly fit?: WantedFit;
  readonly largestOuter?: { readonly width?: Length; readonly height?: Length };
  readonly front?: FrontLie;
}

/**
 * Clearances after bulk at which a grade begins: below 0 won't go, from 0 tight, from `snug` snug, from `easy` easy,
 * and above `loose` loose.
 */
export interface FitLimits {
  readonly snug: Length;
  readonly easy: Length;
  readonly loose: Length;
}

/** In folding order: A and B are the sides that go in first, C is glued onto them, D closes. */
export type FlapLetter = 'A' | 'B' | 'C' | 'D';

/** Whatever is hinged to a panel: a flap, or E, the tab at the foot of a back that is a piece of its own. */
export type HingedLetter = FlapLetter | 'E';

export type Side = 'left' | 'right' | 'top' | 'bottom';

/** The maker's own finishes, flap by flap; what is not named is finished as the recipe proposes. */
export type Finishes = { readonly [Letter in FlapLetter]?: Finish };

export interface Flap {
  readonly letter: FlapLetter;
  /** The pocket's side it is hinged to, the folded envelope seen from the back with the closing flap on top. */
  readonly side: Side;
  /** The length of its score line. */
  readonly score: Length;
  /** How far it reaches in from its score, uncut. */
  readonly depth: Length;
  /** How far it would pass the opposite fold, uncut; 0 when it does not. */
  readonly overrun: Length;
  readonly finish: Finish;
  /** How far it reaches in from its score once finished. */
  readonly reach: Length;
  /** How far it may be cut back, from its score, before the seam gets smaller; only where a seam is glued. */
  readonly keepsSeamTo?: Length;
}

/** Where flap C lies on flaps A and B. */
export interface Seam {
  /** Across the band. */
  readonly width: Length;
  /** Both bands together, in square inches, and what it would be with no flap cut. */
  readonly area: number;
  readonly areaUncut: number;
  /** Where glue may go, in square inches. */
  readonly glueArea: number;
  /** Across the band, where glue may go; 0 when there is no room for any. */
  readonly glueWidth: Length;
}

/** What comes out when the square or the start is off by `by`; the rest as in the recipe. */
export interface Slip {
  readonly off: 'square' | 'start';
  readonly by: Length;
  readonly pocket: Size;
  readonly clearance: Size;
  readonly fit: Fit;
}

export type WarningKind =
  | "won't go"
  | 'turn the card'
  | 'larger than the tool'
  | 'larger than the limit'
  | 'flaps do not meet'
  | 'back open'
  | 'flap passes the fold'
  | 'seam too thin'
  | 'seam cut away'
  | 'print lies otherwise';

/** `message` is a sentence without figures; `describeWarning` adds `amount` or `area` in the reader's units. */
export interface Warning {
  readonly kind: WarningKind;
  readonly message: string;
  readonly amount?: Length;
  /** In square inches. */
  readonly area?: number;
}

/** Width and height of pocket, clearance and fits run as the card lies, unless `cardTurned`. */
export interface Recipe {
  readonly fold: FoldName;
  readonly card: Card;
  readonly notcher: Notcher;
  readonly limits: FitLimits;
  /** The cut piece; where a fold needs two, the larger one (`Fold.blanks` gives both). */
  readonly blank: Size;
  /** What the ruler reads: the start that makes the pocket's height, and its twin from the other corner. */
  readonly starts: readonly [Length, Length];
  readonly pocket: Size;
  /** Pocket less card less bulk; negative where the card won't go. */
  readonly clearance: Size;
  readonly fits: { readonly width: Fit; readonly height: Fit };
  readonly fit: Fit;
  readonly cardTurned: boolean;
  readonly front: FrontLie;
  readonly flaps: readonly Flap[];
  readonly seam: Seam;
  readonly slips: readonly Slip[];
  /** Whether the card still goes in without force after every slip of that kind. */
  readonly survives: { readonly square: boolean; readonly start: boolean };
  readonly warnings: readonly Warning[];
  /** The nearest start on the same square that fits better; only where measures were tried. */
  readonly better?: Recipe;
}
