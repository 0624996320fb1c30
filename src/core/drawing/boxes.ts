/**
 * How much room a label takes, from a table of widths a little above those of common sans-serif fonts, and whether
 * two labels collide. Knows no fonts and measures no screen.
 */
import type { Point } from '#core/geometry/point.ts';
import type { Drawing, Label, Line } from './drawing.ts';

/** An upright rectangle round something. */
export interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The room a label takes, reckoned once: its corners, clockwise from the reading direction's top left. */
export interface Box extends Bounds {
  readonly corners: readonly Point[];
}

/** Straight lines from point to point, with what bounds them. */
export interface Run extends Bounds {
  readonly points: readonly Point[];
}

export function boxOf(label: Label): Box {
  const [width, height] = labelSize(label);
  const left = -width * BEFORE[label.anchor];
  const turn = (label.turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const corner = (x: number, y: number): Point => ({
    x: label.at.x + x * cos - y * sin,
    y: label.at.y + x * sin + y * cos,
  });
  const corners = [
    corner(left, -height / 2),
    corner(left + width, -height / 2),
    corner(left + width, height / 2),
    corner(left, height / 2),
  ];
  return { corners, ...boundsOf(corners) };
}

export const runOf = ({ points }: Line): Run => ({ points, ...boundsOf(points) });

/** Width and height of the label before it is turned; an order number stands in a disc. */
const labelSize = (label: Pick<Label, 'role' | 'text' | 'size' | 'weight'>): [number, number] =>
  label.role === 'order'
    ? [2 * discRadius(label.size), 2 * discRadius(label.size)]
    : [textWidth(label.text, label.size, isBold(label)), label.size];

export const discRadius = (size: number): number => size * 0.8;

export const textWidth = (text: string, size: number, bold = false): number =>
  [...text].reduce((sum, character) => sum + characterWidth(character), 0) * size * (bold ? BOLD : 1);

/** Letters, names and whatever is lit. */
const isBold = ({ role, weight }: Pick<Label, 'role' | 'weight'>): boolean =>
  role === 'letter' || role === 'name' || weight === 'lit';

/** Pairs of labels that touch, and labels that stick out of the drawing: both must be empty in any picture. */
export function labelTroubles(drawing: Drawing): string[] {
  const labels = drawing.shapes
    .filter((shape) => shape.kind === 'label')
    .map((label) => ({ text: label.text, box: boxOf(label) }));
  const outside = labels.filter(({ box }) => !within(drawing.width, drawing.height, box));
  const touching = labels.flatMap((one, index) =>
    labels
      .slice(index + 1)
      .flatMap((other) => (overlap(one.box, other.box) ? [`“${one.text}” touches “${other.text}”`] : [])),
  );
  return [...outside.map((one) => `“${one.text}” leaves the drawing`), ...touching];
}

/** Whether two labels' boxes share any area. */
export const overlap = (one: Box, other: Box): boolean =>
  !apart(one, other) &&
  meetAcrossSides(one.corners, one.corners, other.corners) &&
  meetAcrossSides(other.corners, one.corners, other.corners);

/** Whether the box stays inside a picture of this size. */
export const within = (width: number, height: number, { left, right, top, bottom }: Box): boolean =>
  left >= 0 && top >= 0 && right <= width && bottom <= height;

/** Whether a run of straight lines passes through the box. */
export function crosses(run: Run, box: Box): boolean {
  if (apart(run, box)) return false;
  for (let at = 1; at < run.points.length; at += 1)
    if (segmentMeets(box, run.points[at - 1]!, run.points[at]!)) return true;
  return false;
}

const apart = (one: Bounds, other: Bounds): boolean =>
  one.right < other.left || other.right < one.left || one.bottom < other.top || other.bottom < one.top;

function boundsOf(points: readonly Point[]): Bounds {
  let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { x, y } of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  return { left, right, top, bottom };
}

const TOUCH = 1e-6;
const BOLD = 1.13;

const BEFORE = { start: 0, middle: 0.5, end: 1 } as const;

const WIDTHS: readonly (readonly [RegExp, number])[] = [
  [/[\s.,:;'|!ijl·⁄]/, 0.32],
  [/[⁰¹²³⁴-⁹₀-₉″°]/, 0.46],
  [/[mwMW−⅛⅜⅝⅞¼½¾≈×→]/, 0.98],
  [/[A-Z]/, 0.74],
];

const characterWidth = (character: string): number =>
  WIDTHS.find(([pattern]) => pattern.test(character))?.[1] ?? 0.64;

/** Whether two shapes' shadows meet on lines across the first two sides of a rectangle. */
const meetAcrossSides = (
  [a, b, c]: readonly Point[],
  one: readonly Point[],
  other: readonly Point[],
): boolean =>
  shadowsMeet(one, other, a!.y - b!.y, b!.x - a!.x) && shadowsMeet(one, other, b!.y - c!.y, c!.x - b!.x);

function shadowsMeet(one: readonly Point[], other: readonly Point[], x: number, y: number): boolean {
  const [from, to] = shadow(one, x, y);
  const [start, end] = shadow(other, x, y);
  return to > start + TOUCH && end > from + TOUCH;
}

function shadow(corners: readonly Point[], x: number, y: number): [from: number, to: number] {
  let [from, to] = [Infinity, -Infinity];
  for (const corner of corners) {
    const along = corner.x * x + corner.y * y;
    from = Math.min(from, along);
    to = Math.max(to, along);
  }
  return [from, to];
}

function segmentMeets({ corners }: Box, from: Point, to: Point): boolean {
  const segment = [from, to];
  return (
    meetAcrossSides(corners, corners, segment) && shadowsMeet(corners, segment, from.y - to.y, to.x - from.x)
  );
}
