/**
 * An envelope's front with the place for the address, the largest label and what the post keeps for its bar code. Knows
 * where they are from the post's rules, no size classes and no print.
 */
import { type Point, point } from '#core/geometry/point.ts';
import type { AddressPlaces, Place } from '#core/post/address.ts';
import { printLength, printSize, subtract, type Units } from '#shared/length.ts';
import { textWidth } from './boxes.ts';
import { dimension } from './dimension.ts';
import { area, type Drawing, label, line, rectangle, type Shape, TEXT, WIDEST } from './drawing.ts';
import { legend } from './legend.ts';

/** The front as it is read, as wide as a page goes and no higher than it is wide. */
export function addressDrawing(places: AddressPlaces, units: Units): Drawing {
  const { front, area: read, clear, label: sticker } = places;
  const scale = Math.min((WIDEST - LEFT - RIGHT) / front.width, TALLEST / front.height);
  const put = (one: Place): Point[] =>
    rectangle(LEFT + one.x * scale, TOP + one.y * scale, one.width * scale, one.height * scale);
  const [width, height] = [front.width * scale, front.height * scale];
  const face = rectangle(LEFT, TOP, width, height);
  const key = legend(KEY, TOP + height + BELOW, WIDEST);
  return {
    title: 'Where the address goes',
    words: inWords(places, units),
    width: WIDEST,
    height: TOP + height + BELOW + key.height + 4,
    shapes: [
      area('paper', face),
      area('left', put(clear)),
      line('hidden', closed(put(read))),
      area('part', put(sticker), 'lit'),
      ...stamp(width),
      ...onLabel(put(sticker), printSize(sticker, units)),
      ...lowest(places, scale, units),
      ...key.shapes,
    ],
  };
}

const LEFT = 4;
const RIGHT = 62;
const TOP = 4;
const BELOW = 28;
const TALLEST = 330;

const KEY = [
  { line: 'hidden', word: 'where machines read' },
  { area: 'left', word: 'keep clear' },
] as const;

const closed = (points: readonly Point[]): Point[] => [...points, points[0]!];

/** Only so that a reader sees at once which way up the front is; smaller than any stamp. */
function stamp(width: number): Shape[] {
  const [across, down] = [Math.min(26, width / 8), Math.min(30, width / 7)];
  return [line('outline', closed(rectangle(LEFT + width - across - 8, TOP + 8, across, down)), 'quiet')];
}

/** The label's size on it, in as many lines as it has room for. */
function onLabel(corners: readonly Point[], size: string): Shape[] {
  const [first, , third] = corners as [Point, Point, Point, Point];
  const [middle, room] = [point((first.x + third.x) / 2, (first.y + third.y) / 2), third.x - first.x];
  const lines = textWidth(`label to ${size}`, TEXT.note) < room ? [`label to ${size}`] : ['label to', size];
  return lines.map((text, index) =>
    label('note', { x: middle.x, y: middle.y + (index - (lines.length - 1) / 2) * 15 }, text),
  );
}

/** How far up from the bottom edge the reading area begins and ends. */
function lowest({ front, area: read }: AddressPlaces, scale: number, units: Units): Shape[] {
  const right = LEFT + front.width * scale;
  const bottom = TOP + front.height * scale;
  const up = subtract(front.height, read.y);
  const clear = subtract(up, read.height);
  const at = (length: number): Point => point(right, bottom - length * scale);
  return [
    ...dimension(at(clear), at(up), printLength(read.height, units), { away: -14, level: true }),
    ...dimension(at(0), at(clear), printLength(clear, units), { away: -14, beside: 'before', level: true }),
  ].filter((shape) => shape.kind !== 'label' || shape.text !== '');
}

const inWords = ({ front, area: read, clear, label: sticker }: AddressPlaces, units: Units): string =>
  [
    `The front, ${printSize(front, units)}.`,
    `The address goes ${printLength(read.x, units)} in from left and right,`,
    `from ${printLength(subtract(subtract(front.height, read.y), read.height), units)}`,
    `to ${printLength(subtract(front.height, read.y), units)} up from the bottom.`,
    `A label may be ${printSize(sticker, units)}.`,
    `Keep ${printSize(clear, units)} clear in the lower right corner.`,
  ].join(' ');
