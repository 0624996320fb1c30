/**
 * How much room a label takes, from a table of widths a little above those of common sans-serif fonts, and whether
 * two labels collide. Knows no fonts and measures no screen.
 */
import type { Point } from '#core/geometry/point.ts';
import type { Drawing, Label } from './drawing.ts';

/** The label's four corners, clockwise from the reading direction's top left. */
export function labelCorners(label: Label): Point[] {
  const [width, height] = labelSize(label);
  const left = -width * BEFORE[label.anchor];
  const turn = (label.turn * Math.PI) / 180;
  return [
    [left, -height / 2],
    [left + width, -height / 2],
    [left + width, height / 2],
    [left, height / 2],
  ].map(([x, y]) => ({
    x: label.at.x + x! * Math.cos(turn) - y! * Math.sin(turn),
    y: label.at.y + x! * Math.sin(turn) + y! * Math.cos(turn),
  }));
}

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
  const labels = drawing.shapes.filter((shape) => shape.kind === 'label');
  const outside = labels.filter((one) => !within(drawing.width, drawing.height, one));
  const touching = labels.flatMap((one, index) =>
    labels
      .slice(index + 1)
      .flatMap((other) => (overlap(one, other) ? [`“${one.text}” touches “${other.text}”`] : [])),
  );
  return [...outside.map((one) => `“${one.text}” leaves the drawing`), ...touching];
}

/** Whether two labels' boxes share any area. */
export function overlap(one: Label, other: Label): boolean {
  if (Math.hypot(one.at.x - other.at.x, one.at.y - other.at.y) > reach(one) + reach(other)) return false;
  const [mine, theirs] = [labelCorners(one), labelCorners(other)];
  return [...normals(mine), ...normals(theirs)].every((axis) => shadowsMeet(mine, theirs, axis));
}

/** Whether the label stays inside a picture of this size. */
export const within = (width: number, height: number, one: Label): boolean =>
  labelCorners(one).every(({ x, y }) => x >= 0 && y >= 0 && x <= width && y <= height);

/** Whether a run of straight lines passes through the label's box. */
export function crosses(points: readonly Point[], one: Label): boolean {
  if (!comesNear(points, one.at, reach(one))) return false;
  const corners = labelCorners(one);
  return points.slice(1).some((to, index) => segmentMeets(corners, points[index]!, to));
}

/** Whether the box round a run of points comes within a distance of a point: cheap, and never wrong to say yes. */
const comesNear = (points: readonly Point[], { x, y }: Point, distance: number): boolean =>
  isBetween(
    x,
    distance,
    points.map((point) => point.x),
  ) &&
  isBetween(
    y,
    distance,
    points.map((point) => point.y),
  );

const isBetween = (value: number, slack: number, values: readonly number[]): boolean =>
  value >= Math.min(...values) - slack && value <= Math.max(...values) + slack;

/** No part of a label is further from where it stands than this. */
const reach = (one: Label): number => labelSize(one)[0] + labelSize(one)[1];

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

const normals = (corners: readonly Point[]): Point[] =>
  corners.slice(0, 2).map((from, index) => {
    const to = corners[index + 1]!;
    return { x: from.y - to.y, y: to.x - from.x };
  });

function shadowsMeet(one: readonly Point[], other: readonly Point[], axis: Point): boolean {
  const along = (corner: Point): number => corner.x * axis.x + corner.y * axis.y;
  const [mine, theirs] = [one.map(along), other.map(along)];
  return Math.max(...mine) > Math.min(...theirs) + TOUCH && Math.max(...theirs) > Math.min(...mine) + TOUCH;
}

function segmentMeets(corners: readonly Point[], from: Point, to: Point): boolean {
  const across = { x: from.y - to.y, y: to.x - from.x };
  return [...normals(corners), across].every((axis) => shadowsMeet(corners, [from, to], axis));
}
