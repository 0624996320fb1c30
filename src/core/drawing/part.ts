/**
 * A part of a set to scale: its outline, scores in their order, what is measured from which edge, the grain. Knows no
 * part in particular.
 */
import { type Point, point } from '#core/geometry/point.ts';
import { outlineOf, type Score, type SetPart, scoreLines } from '#core/sets/part.ts';
import type { Opening } from '#core/sets/wraps.ts';
import { type Length, PER_INCH, printExact, printExactSize, type Units } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';
import { compose } from './composition.ts';
import { dimension } from './dimension.ts';
import { area, type Drawing, label, line, rectangle, type Shape, TEXT, WIDEST } from './drawing.ts';
import { between } from './vectors.ts';

/** A part with what only some kinds have. */
export interface DrawnPart extends SetPart {
  readonly hole?: { readonly middle: Point; readonly diameter: Length };
  readonly notchAt?: Length;
  readonly opening?: Opening;
}

/** Drawing units per length at which the part goes on a page, and no more than keeps a tag small. */
export function partScale(part: DrawnPart, tallest: number): number {
  const room = roomFor(part);
  const [across, down] = [WIDEST - room.left - room.right, tallest - room.top - room.bottom];
  return Math.min(across / part.width, down / part.height, LARGEST);
}

/** The part from its good side at `scale` drawing units per length. */
export function partDrawing(part: DrawnPart, units: Units, scale: number): Drawing {
  const room = roomFor(part);
  const [width, height] = [part.width * scale, part.height * scale];
  const at = ({ x, y }: Point): Point => point(room.left + x * scale, room.top + y * scale);
  const sheet = compose(room.left + width + room.right, room.top + height + room.bottom);
  const outline = outlineOf(part).map(at);
  if (part.outline) sheet.add(line('hidden', closed(rectangle(room.left, room.top, width, height))));
  sheet.add(area('paper', outline), ...holeShapes(part, at, scale));
  for (const { from, to } of scoreLines(part)) sheet.add(line('score', [at(from), at(to)]));
  sheet.add(...outerMeasures(part, at, units));
  for (const candidates of scoreMeasures(part, at, units)) sheet.settle(candidates);
  for (const shapes of orderDiscs(part, at, scale)) sheet.settle(shapes);
  sheet.settle(grainShapes(part, at, width, height));
  return sheet.finish(part.name, inWords(part, units));
}

/** Of one inch. */
const LARGEST = 44 / PER_INCH;
const LEVEL = 19;
const MARGIN = 8;

interface Room {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Dimensions stand in rows off the edge that they are measured along. */
function roomFor(part: DrawnPart): Room {
  const across = measured(part, 'left').length;
  const down = measured(part, 'top').length;
  return { left: MARGIN + down * LEVEL, top: MARGIN + across * LEVEL + 4, right: 90, bottom: 30 };
}

/** What is measured from that edge, the nearest first. */
function measured({ scores, notchAt, outline }: DrawnPart, from: Score['from']): Length[] {
  const notch = notchAt !== undefined && outline && notchedFrom(outline) === from ? [notchAt] : [];
  return [...scores.filter((score) => score.from === from).map(({ at }) => at), ...notch].sort(
    (one, other) => one - other,
  );
}

/** Notches in top and bottom are told from the left, those at the sides from the top. */
const notchedFrom = (outline: readonly Point[]): Score['from'] =>
  outline.filter(({ y }) => y === 0).length > 2 ? 'left' : 'top';

const closed = (points: readonly Point[]): Point[] => [...points, points[0]!];

function outerMeasures(part: SetPart, at: (one: Point) => Point, units: Units): Shape[] {
  const [bottomLeft, bottomRight, topRight] = [
    at(point(0, part.height)),
    at(point(part.width, part.height)),
    at(point(part.width, 0)),
  ];
  return [
    ...dimension(bottomLeft, bottomRight, printExact(part.width, units), { away: -14, level: true }),
    ...dimension(topRight, bottomRight, printExact(part.height, units), { away: 14, level: true }),
  ];
}

/** Each from the same edge, one row above the other; its figure past either end where there is no room on its line. */
function scoreMeasures(part: DrawnPart, at: (one: Point) => Point, units: Units): Shape[][][] {
  const along = (from: Score['from'], one: Length): Point =>
    from === 'left' ? point(one, 0) : point(0, one);
  return (['left', 'top'] as const).flatMap((from) =>
    measured(part, from).map((one, row) =>
      (['after', 'before'] as const).map((beside) =>
        dimension(at(point(0, 0)), at(along(from, one)), printExact(one, units), {
          away: (from === 'left' ? 1 : -1) * (12 + row * LEVEL),
          level: from === 'left',
          beside,
        }),
      ),
    ),
  );
}

/** Numbers on the scores, where there are several to make and room between them. */
function orderDiscs(part: SetPart, at: (one: Point) => Point, scale: number): Shape[][][] {
  const steps = part.scores.slice(1).map((score, index) => score.at - part.scores[index]!.at);
  if (steps.length === 0 || Math.min(...steps) * scale < 2 * TEXT.order) return [];
  return scoreLines(part).map(({ from, to }, index) =>
    [0.5, 0.3, 0.7].map((share) => [label('order', between(at(from), at(to), share), `${index + 1}`)]),
  );
}

/** An arrow both ways and its word, where the part is large enough for them. */
function grainShapes(part: SetPart, at: (one: Point) => Point, width: number, height: number): Shape[][] {
  if (!part.grain || Math.min(width, height) < 34) return [];
  const lying = part.grain === 'width';
  return [0.25, 0.75, 0.15, 0.85].map((share) => {
    const middle = at(
      lying ? point(part.width / 2, part.height * share) : point(part.width * share, part.height / 2),
    );
    const reach = Math.min((lying ? width : height) / 2 - 8, 30);
    const tip = (by: number): Point =>
      lying ? point(middle.x + by, middle.y) : point(middle.x, middle.y + by);
    const word = lying ? point(middle.x, middle.y - 10) : point(middle.x + 10, middle.y);
    return [
      line('arrow', [tip(-reach), tip(reach)]),
      ...[-1, 1].map((way) => line('arrow', head(tip(way * reach), lying, -way))),
      label('note', word, 'grain', { turn: lying ? 0 : -90 }),
    ];
  });
}

const head = ({ x, y }: Point, lying: boolean, back: number): Point[] =>
  [-4, 0, 4].map((aside) => {
    const by = aside === 0 ? 0 : back * 7;
    return lying ? point(x + by, y + aside) : point(x + aside, y + by);
  });

function holeShapes({ hole }: DrawnPart, at: (one: Point) => Point, scale: number): Shape[] {
  if (!hole) return [];
  const { x, y } = at(hole.middle);
  const radius = (hole.diameter * scale) / 2;
  const ring = Array.from({ length: 24 }, (_, index) => {
    const turn = (index / 24) * 2 * Math.PI;
    return point(x + radius * Math.cos(turn), y + radius * Math.sin(turn));
  });
  return [line('outline', closed(ring))];
}

function inWords(part: DrawnPart, units: Units): string {
  const scores = part.scores.map(
    ({ from, at }, index) => `${index + 1} at ${printExact(at, units)} from the ${from}`,
  );
  return [
    `${part.name}, ${printExactSize(part as Size, units)}.`,
    ...(scores.length > 0 ? [`Scores: ${scores.join(', ')}.`] : []),
    ...(part.notchAt === undefined ? [] : [`Notches at ${printExact(part.notchAt, units)}.`]),
    ...(part.hole ? [`A hole of ${printExact(part.hole.diameter, units)}.`] : []),
    ...(part.outline ? ['It is cut to shape within that rectangle.'] : []),
    ...(part.grain ? [`The grain runs along its ${part.grain}.`] : []),
  ].join(' ');
}
