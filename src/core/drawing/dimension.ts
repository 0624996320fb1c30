/**
 * Dimension lines as on a workshop drawing: two witness lines, a line between slanted ticks, and the figure in its
 * middle, or beside it where the line is shorter than its figure. Knows no lengths: the figure comes as text.
 */
import type { Point } from '#core/geometry/point.ts';
import { textWidth } from './boxes.ts';
import { type Label, type Line, label, line, TEXT, type Weight } from './drawing.ts';
import { between, direction, leftOf, moved } from './vectors.ts';

export interface DimensionStyle {
  /** How far the line stands off the measured points, to the left of going from the first to the second. */
  readonly away: number;
  readonly weight?: Weight;
  /** Where a figure goes that is longer than its line: past the second point (the default) or before the first. */
  readonly beside?: 'after' | 'before';
  /** A figure past the line's end, level whatever way the line runs. */
  readonly level?: boolean;
  readonly size?: number;
}

/** The distance between two points, drawn `away` from them with `text` on it. */
export function dimension(from: Point, to: Point, text: string, style: DimensionStyle): (Line | Label)[] {
  const run = Math.hypot(to.x - from.x, to.y - from.y);
  const along = direction(from, to);
  const left = leftOf(along);
  const [start, end] = [moved(from, left, style.away), moved(to, left, style.away)];
  const weight = style.weight ?? 'plain';
  const size = style.size ?? TEXT.dimension;
  const width = textWidth(text, size, weight === 'lit');
  const inside = width + 2 * ROOM <= run;
  return [
    ...(style.away === 0 ? [] : [from, to].map((point) => witness(point, left, style.away, weight))),
    ...(inside ? broken(start, end, along, width / 2 + 3) : [overshoot(start, end, along)]).map((run) =>
      line('dimension', run, weight),
    ),
    ...[start, end].map((point) => tick(point, along, left, weight)),
    inside
      ? onLine([start, end], text, { size, weight })
      : besideLine([start, end], along, text, { ...style, size, weight }),
  ];
}

/** Degrees, clockwise, at which text along `along` reads from the bottom or from the right of the page. */
export function readingTurn(along: Point): number {
  const turn = (Math.atan2(along.y, along.x) * 180) / Math.PI;
  if (turn > 89.5) return turn - 180;
  return turn < -90.5 ? turn + 180 : turn;
}

const ROOM = 6;
const TICK = 3.5;
const PAST = 4;

function witness(point: Point, left: Point, away: number, weight: Weight): Line {
  const side = Math.sign(away);
  return line('witness', [moved(point, left, 2 * side), moved(point, left, away + PAST * side)], weight);
}

function tick(point: Point, along: Point, left: Point, weight: Weight): Line {
  const slant = { x: along.x + left.x, y: along.y + left.y };
  return line('tick', [moved(point, slant, -TICK), moved(point, slant, TICK)], weight);
}

/** The line in two runs that leave `half` free on either side of its middle for the figure. */
function broken(start: Point, end: Point, along: Point, half: number): Point[][] {
  const middle = between(start, end, 0.5);
  return [
    [start, moved(middle, along, -half)],
    [moved(middle, along, half), end],
  ];
}

const overshoot = (start: Point, end: Point, along: Point): Point[] => [
  moved(start, along, -2 * PAST),
  moved(end, along, 2 * PAST),
];

type Ends = readonly [Point, Point];
type Lettering = Required<Pick<DimensionStyle, 'size' | 'weight'>>;

function onLine([start, end]: Ends, text: string, lettering: Lettering): Label {
  const middle = between(start, end, 0.5);
  const turn = readingTurn({ x: end.x - start.x, y: end.y - start.y });
  return label('dimension', middle, text, { turn, ...lettering });
}

function besideLine(
  [start, end]: Ends,
  along: Point,
  text: string,
  { beside, level, size, weight }: DimensionStyle & Lettering,
): Label {
  const after = beside !== 'before';
  const step = 2 * PAST + 3;
  const way = after ? along : { x: -along.x, y: -along.y };
  const point = moved(after ? end : start, way, step);
  if (level) return levelBeside(point, way, text, { size, weight });
  const turn = readingTurn(along);
  const forwards = Math.cos((turn * Math.PI) / 180) * way.x + Math.sin((turn * Math.PI) / 180) * way.y > 0;
  return label('dimension', point, text, { turn, anchor: forwards ? 'start' : 'end', size, weight });
}

function levelBeside(point: Point, way: Point, text: string, lettering: Lettering): Label {
  const upright = Math.abs(way.x) < 0.5;
  const at = upright ? moved(point, way, lettering.size / 2) : point;
  const anchor = upright ? 'middle' : way.x > 0 ? 'start' : 'end';
  return label('dimension', at, text, { anchor, ...lettering });
}
