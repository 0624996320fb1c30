/**
 * What a picture is made of: lines, areas and labels in plain numbers, y downwards. One unit is a CSS pixel on a phone
 * 390 wide, so text of 11 units or more can be read there. Knows no SVG and no colours, only the role of each shape.
 */
import type { Point } from '#core/geometry/point.ts';
import type { Transform } from '#core/geometry/transform.ts';
import type { Swatch } from '#shared/swatch.ts';

export type LineRole =
  | 'score'
  | 'crease'
  | 'card'
  | 'hidden'
  | 'dimension'
  | 'tick'
  | 'witness'
  | 'arrow'
  | 'cross'
  | 'outline';
export type AreaRole =
  | 'paper'
  | 'inside'
  | 'flap'
  | 'glue'
  | 'trim'
  | 'card'
  | 'gap'
  | 'part'
  | 'left'
  | 'waste'
  | 'notch';
/** A note stands on paper, maybe on hatching; a caption beside it. */
export type LabelRole = 'dimension' | 'letter' | 'name' | 'note' | 'caption' | 'order';

/** Lit: what the hands do next. Quiet: already done, or only there for company. */
export type Weight = 'plain' | 'lit' | 'quiet';

export interface Line {
  readonly kind: 'line';
  readonly role: LineRole;
  readonly points: readonly Point[];
  readonly weight: Weight;
}

export interface Area {
  readonly kind: 'area';
  readonly role: AreaRole;
  readonly outline: readonly Point[];
  readonly weight: Weight;
}

/**
 * Paper seen from its printed side. `lay` maps the sheet as printed (upright, y downwards, origin at its top left, in
 * drawing units) into the drawing; `height` is that sheet's, `border` the depth of the band along its bottom edge.
 */
export interface Printed {
  readonly kind: 'printed';
  readonly outline: readonly Point[];
  readonly swatch: Swatch;
  readonly lay: Transform;
  readonly height: number;
  readonly border: number;
  /** How strongly it shows, from 0 to 1: fully where nothing is said. */
  readonly ink?: number;
}

/** One line of text about the vertical middle of `at`; `turn` is clockwise in degrees. */
export interface Label {
  readonly kind: 'label';
  readonly role: LabelRole;
  readonly at: Point;
  readonly text: string;
  readonly size: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly turn: number;
  readonly weight: Weight;
}

export type Shape = Line | Area | Printed | Label;

/** `title` names the picture; `words` say what it shows to somebody who can't see it. */
export interface Drawing {
  readonly title: string;
  readonly words: string;
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly Shape[];
}

/** The widest a drawing gets: what a phone 390 pixels wide leaves beside the page's margins. */
export const WIDEST = 358;

export const line = (role: LineRole, points: readonly Point[], weight: Weight = 'plain'): Line => ({
  kind: 'line',
  role,
  points,
  weight,
});

export const area = (role: AreaRole, outline: readonly Point[], weight: Weight = 'plain'): Area => ({
  kind: 'area',
  role,
  outline,
  weight,
});

export const label = (
  role: LabelRole,
  at: Point,
  text: string,
  rest: Partial<Pick<Label, 'size' | 'anchor' | 'turn' | 'weight'>> = {},
): Label => ({
  kind: 'label',
  role,
  at,
  text,
  size: TEXT[role],
  anchor: 'middle',
  turn: 0,
  weight: 'plain',
  ...rest,
});

/** The text size of each role, in drawing units. */
export const TEXT: Record<LabelRole, number> = {
  dimension: 13,
  letter: 22,
  name: 13,
  note: 12,
  caption: 12,
  order: 12,
};

export const rectangle = (x: number, y: number, width: number, height: number): Point[] => [
  { x, y },
  { x: x + width, y },
  { x: x + width, y: y + height },
  { x, y: y + height },
];
