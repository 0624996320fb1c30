/**
 * A sheet or an offcut in proportion with what is cut from it laid over: parts named, leftovers hatched, waste
 * crossed, the print's direction beside it, code and size above. Knows neither plans nor shelves, only rectangles.
 */
import { type Length, printExact, printExactSize, type Units } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';
import type { Swatch } from '#shared/swatch.ts';
import { textWidth } from './boxes.ts';
import { area, type Drawing, type Label, label, line, rectangle, type Shape, TEXT } from './drawing.ts';

/** In lengths from the piece's top left corner, x right and y down, as in a plan. */
interface Laid extends Size {
  readonly x: Length;
  readonly y: Length;
}

interface LaidPart extends Laid {
  /** What it is called where there is room, and the short sign that stands for it where there is not. */
  readonly name: string;
  readonly sign: string;
  /** The next one to come off. */
  readonly lit?: boolean;
}

export interface DrawnPiece extends Size {
  /** What is pencilled on its back, or the design's name for a sheet. */
  readonly code: string;
  readonly parts: readonly LaidPart[];
  readonly leftovers: readonly Laid[];
  /** Its height runs along the print. */
  readonly upright: boolean;
  /** Depth of the printed border along its bottom edge. */
  readonly border?: Length;
  readonly swatch?: Swatch;
}

/** Drawing units per length at which every piece keeps within `width` and `height` units, for pictures to compare. */
export const pieceScale = (pieces: readonly Size[], width: number, height: number): number =>
  Math.min(...pieces.map((piece) => Math.min((width - SIDE - MARGIN) / piece.width, height / piece.height)));

/** The piece at `scale` drawing units per length. Parts that are too small for their sign stay blank. */
export function pieceDrawing(piece: DrawnPiece, units: Units, scale: number): Drawing {
  const [width, height] = [piece.width * scale, piece.height * scale];
  const heading = `${piece.code} · ${printExactSize(piece, units)}`;
  const swatchRoom = piece.swatch ? CHIP + 6 : 0;
  return {
    title: heading,
    words: inWords(piece, units),
    width: Math.max(SIDE + width, SIDE + swatchRoom + textWidth(heading, TEXT.name, true)) + MARGIN,
    height: TOP + height + MARGIN,
    shapes: labelsLast([
      ...headingShapes(piece, heading, swatchRoom),
      ...(piece.upright ? printArrow(SIDE / 2, TOP + height / 2, Math.min(height, 60)) : []),
      area('waste', rectangle(SIDE, TOP, width, height)),
      ...piece.leftovers.flatMap((one) => leftoverShapes(place(one, scale), one, units)),
      ...piece.parts.flatMap((one) => partShapes(place(one, scale), one, units)),
      ...borderShapes(piece, scale),
      line('outline', closed(rectangle(SIDE, TOP, width, height))),
    ]),
  };
}

/** An arrow along the print, tip up, `length` long about its middle. */
function printArrow(x: number, middle: number, length: number): Shape[] {
  const [tip, tail] = [middle - length / 2, middle + length / 2];
  return [
    line('arrow', [
      { x, y: tail },
      { x, y: tip },
    ]),
    line('arrow', [
      { x: x - 4, y: tip + 7 },
      { x, y: tip },
      { x: x + 4, y: tip + 7 },
    ]),
  ];
}

const SIDE = 16;
const TOP = 26;
const MARGIN = 3;
const CHIP = 16;
const SMALL = 2 / 3;
const PAD = 4;
const SMALLEST = 10;

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const place = (laid: Laid, scale: number): Box => ({
  x: SIDE + laid.x * scale,
  y: TOP + laid.y * scale,
  width: laid.width * scale,
  height: laid.height * scale,
});

const outlineOf = (box: Box) => rectangle(box.x, box.y, box.width, box.height);

function headingShapes(piece: DrawnPiece, heading: string, swatchRoom: number): Shape[] {
  const text = label('name', { x: SIDE + swatchRoom, y: TOP / 2 - 1 }, heading, { anchor: 'start' });
  if (!piece.swatch) return [text];
  const lay = { a: SMALL, b: 0, c: 0, d: SMALL, e: SIDE, f: 3 };
  const outline = rectangle(SIDE, 3, CHIP, CHIP);
  const border = piece.border === undefined ? 0 : CHIP / SMALL / 3;
  return [{ kind: 'printed', outline, swatch: piece.swatch, lay, height: CHIP / SMALL, border }, text];
}

const leftoverShapes = (box: Box, laid: Laid, units: Units): Shape[] => [
  area('left', outlineOf(box)),
  ...fitted(box, [[printExactSize(laid, units)]]),
];

function partShapes(box: Box, part: LaidPart, units: Units): Shape[] {
  const size = printExactSize(part, units);
  const texts = [[part.name, size], [`${part.name} ${size}`], [part.name], [part.sign]];
  return [area('part', outlineOf(box), part.lit ? 'lit' : 'plain'), ...fitted(box, texts)];
}

/** The first of the texts (each some lines) that goes into the box: level, else upright; smaller before shorter. */
function fitted(box: Box, texts: readonly (readonly string[])[]): Label[] {
  for (const lines of texts) {
    for (const size of [TEXT.note, SMALLEST]) {
      for (const turn of [0, -90]) {
        const [room, depth] = turn === 0 ? [box.width, box.height] : [box.height, box.width];
        const widest = Math.max(...lines.map((text) => textWidth(text, size)));
        if (widest + PAD <= room && lines.length * (size + 3) <= depth)
          return stacked(box, lines, size, turn);
      }
    }
  }
  return [];
}

const stacked = (box: Box, lines: readonly string[], size: number, turn: number): Label[] =>
  lines.map((text, index) => {
    const off = (index - (lines.length - 1) / 2) * (size + 3);
    const [x, y] = turn === 0 ? [0, off] : [off, 0];
    const at = { x: box.x + box.width / 2 + x, y: box.y + box.height / 2 + y };
    return label('note', at, text, { size, turn });
  });

function borderShapes(piece: DrawnPiece, scale: number): Shape[] {
  if (piece.border === undefined) return [];
  const y = TOP + (piece.height - piece.border) * scale;
  return [
    line('hidden', [
      { x: SIDE, y },
      { x: SIDE + piece.width * scale, y },
    ]),
  ];
}

/** So that no line runs through a word. */
const labelsLast = (shapes: readonly Shape[]): Shape[] => [
  ...shapes.filter((shape) => shape.kind !== 'label'),
  ...shapes.filter((shape) => shape.kind === 'label'),
];

const closed = <T>(points: readonly T[]): T[] => [...points, points[0]!];

function inWords(piece: DrawnPiece, units: Units): string {
  const parts = piece.parts.map((part) => `${part.name} ${printExactSize(part, units)}`);
  const left = piece.leftovers.map((one) => printExactSize(one, units));
  return [
    `${piece.code}, ${printExactSize(piece, units)}.`,
    parts.length > 0 ? `From it come ${tally(parts)}.` : 'Nothing is cut from it.',
    left.length > 0 ? `Left over: ${tally(left)}.` : 'Nothing is left over.',
    ...(piece.upright ? ['The print runs up.'] : []),
    ...(piece.border === undefined
      ? []
      : [`A border ${printExact(piece.border, units)} deep lies at the bottom.`]),
  ].join(' ');
}

/** `3 × tag 2 × 4″, front 5 × 7″` */
function tally(texts: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const text of texts) counts.set(text, (counts.get(text) ?? 0) + 1);
  return [...counts].map(([text, count]) => (count > 1 ? `${count} of ${text}` : text)).join(', ');
}
