/**
 * What one straight-sided fold tells the parts that all of them share: its sheets, how they lie on each other when
 * folded, and what is glued. Knows no fold in particular and no recipe.
 */
import type { Line, Polygon } from '#core/geometry/point.ts';
import { inset, overlap } from '#core/geometry/polygon.ts';
import type { Finish, FoldName } from '#shared/fold.ts';
import { inches, type Length } from '#shared/length.ts';
import type { HingedLetter } from './recipe.ts';
import type { Straight } from './straight.ts';

/** One blank in the back view, opened out: a panel, and flaps hinged to its sides. */
export interface Sheet {
  readonly panel: Polygon;
  /** In the order their scores are made. */
  readonly flaps: readonly SheetFlap[];
  /** Where something will be glued to it, and where the glue goes. */
  readonly seams: readonly Polygon[];
  readonly glue: readonly Polygon[];
  /** Its inside faces away from whoever looks at the back. */
  readonly mirrored: boolean;
}

export interface SheetFlap {
  readonly letter: HingedLetter;
  readonly hinge: Line;
  /** In its own frame: as cut, and the strip it is cut from. */
  readonly shape: Polygon;
  readonly strip: Polygon;
  readonly finish: Finish;
}

/** What is glued onto what, folded and seen from the back. */
export interface Joint {
  readonly under: Polygon;
  readonly over: Polygon;
}

export interface Form {
  readonly name: FoldName;
  /** How wide the seam is at its narrowest, of a tab this wide. */
  seamWidth(seam: Length): Length;
  /** The taper of tabs this wide. */
  tabTaper(seam: Length): Length;
  /** As the closing flap is finished unless the maker says otherwise. */
  closingFinish(one: Omit<Straight, 'finish'>): Finish;
  /** How C is cut, told from its score. */
  backFinish(one: Straight): Finish;
  /** The one with the closing flap first. */
  sheets(one: Straight): readonly Sheet[];
  /** Folded, in stacking order, seen from the back. */
  stack(one: Straight): readonly { readonly letter: HingedLetter; readonly shape: Polygon }[];
  joints(one: Straight): readonly Joint[];
}

/** Where one lies on the other: a band along their joint. */
export const bandOf = ({ under, over }: Joint): Polygon => overlap(under, over);

/** Where the glue goes: inside the edges of both, so that nothing oozes into the pocket or past a cut. */
export const glueOf = ({ under, over }: Joint): Polygon => overlap(inset(under, MARGIN), inset(over, MARGIN));

const MARGIN = inches(1 / 16);
