/**
 * The folded envelope from front or back: the card's outline seen through it, both gaps beside the card, the pocket's
 * measures, and on the back the flaps as they lie on each other with the glue between. Works nothing out.
 */
import type { FoldedLayout, FoldedView, Gap } from '#core/envelope/fold.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import { type Point, type Polygon, point } from '#core/geometry/point.ts';
import { applyToAll, inOrder, shift, type Transform } from '#core/geometry/transform.ts';
import { type Length, printExactSize, printLength, type Units } from '#shared/length.ts';
import { printPocket, printPocketSide } from '#shared/pocket.ts';
import { textWidth } from './boxes.ts';
import { type Composition, compose } from './composition.ts';
import { dimension } from './dimension.ts';
import { area, type Drawing, label, line, type Shape, TEXT, WIDEST } from './drawing.ts';
import { flapLetter } from './paper.ts';
import { roomiest } from './room.ts';
import { scaled } from './stage.ts';
import { centreOf } from './vectors.ts';

export type Face = 'front' | 'back';

/** One face of `folded(recipe)` with everything dimensioned. */
export function foldedDrawing(recipe: Recipe, layout: FoldedLayout, face: Face, units: Units): Drawing {
  const view = layout[face];
  const scale = Math.min((WIDEST - ROOM.left - ROOM.right) / layout.width, TALLEST / layout.height);
  const [width, height] = [layout.width * scale, layout.height * scale];
  const left = (WIDEST - ROOM.left - ROOM.right - width) / 2 + ROOM.left;
  const bounds = { left, right: left + width, top: ROOM.top, bottom: ROOM.top + height };
  const place = inOrder(scaled(scale), shift(left, ROOM.top));
  const sheet = compose(
    WIDEST,
    Math.max(bounds.bottom + ROOM.bottom, lowestFigure(recipe, bounds, scale, units)),
  );
  sheet.add(label('name', { x: 4, y: 12 }, face, { anchor: 'start' }));
  drawFlaps(sheet, view, place, face);
  sheet.add(line('card', closed(applyToAll(place, view.card))));
  drawGaps(sheet, view.gaps, { place, bounds }, units);
  drawPocket(sheet, recipe, bounds, units);
  drawLetters(sheet, view, place);
  if (face === 'front') drawCardSize(sheet, recipe, applyToAll(place, view.card), units);
  return sheet.finish(`The envelope’s ${face}`, inWords(recipe, face, units));
}

const ROOM = { top: 44, right: 34, bottom: 28, left: 30 };
const TALLEST = 320;
const AWAY = 16;
const BESIDE = ['before', 'after'] as const;

interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** On a slim envelope the upright figures, of its height and of the gap beside it, reach down past it. */
function lowestFigure({ pocket, clearance }: Recipe, bounds: Bounds, scale: number, units: Units): number {
  const below = (text: string): number => textWidth(text, TEXT.dimension) + 16;
  const gap = bounds.top + Math.max(0, clearance.height) * scale + below(gapText(clearance.height, units));
  const figure = below(printPocketSide(pocket.height, units));
  return Math.max(gap, figure < bounds.bottom - bounds.top ? 0 : bounds.bottom + figure);
}

/** The width below, the height at the left. */
function drawPocket(sheet: Composition, { pocket }: Recipe, bounds: Bounds, units: Units): void {
  const { left, right, top, bottom } = bounds;
  const [corner, width, height] = [
    point(left, bottom),
    printPocketSide(pocket.width, units),
    printPocketSide(pocket.height, units),
  ];
  const besides = (from: Point, to: Point, text: string): Shape[][] =>
    BESIDE.map((beside) => dimension(from, to, text, { away: AWAY, beside }));
  sheet.settle(besides(point(right, bottom), corner, width));
  sheet.settle(besides(corner, point(left, top), height));
}

const gapText = (clearance: Length, units: Units): string => `gap ${printLength(clearance, units)}`;

function drawFlaps(sheet: Composition, view: FoldedView, place: Transform, face: Face): void {
  sheet.add(area(face === 'front' ? 'paper' : 'inside', applyToAll(place, view.pocket)));
  for (const flap of view.flaps) {
    sheet.add(area('flap', applyToAll(place, flap.shape)));
    if (flap.letter === 'C')
      for (const band of view.glue) sheet.add(area('glue', applyToAll(place, band), 'quiet'));
  }
  for (const seam of view.seams) sheet.add(line('hidden', closed(applyToAll(place, seam))));
}

/** Each letter where its flap shows most, clear of the flaps above it. */
function drawLetters(sheet: Composition, view: FoldedView, place: Transform): void {
  const shapes = view.flaps.map((flap) => [...applyToAll(place, flap.shape)]);
  view.flaps.forEach((flap, index) => {
    const spots = roomiest(shapes[index]!, shapes.slice(index + 1));
    sheet.settle(spots.map((spot) => [flapLetter(spot, flap.letter)]));
  });
}

/** The gap along the width is dimensioned above the envelope, the one along the height at its right. */
function drawGaps(
  sheet: Composition,
  gaps: readonly Gap[],
  { place, bounds }: { readonly place: Transform; readonly bounds: Bounds },
  units: Units,
): void {
  for (const gap of gaps) {
    const [from, to] = applyToAll(place, [gap.from, gap.to]) as [Point, Point];
    const text = gapText(gap.clearance, units);
    const shapes = gap.along === 'width' ? above(from, to, text, bounds) : atRight(from, to, text, bounds);
    sheet.settle(shapes);
  }
}

function above(from: Point, to: Point, text: string, { top }: Bounds): Shape[][] {
  const [start, end] = [Math.min(from.x, to.x), Math.max(from.x, to.x)];
  const ends: [Point, Point] = [
    { x: start, y: top },
    { x: Math.max(end, start + LEAST), y: top },
  ];
  return BESIDE.map((beside) => dimension(...ends, text, { away: AWAY, beside }));
}

function atRight(from: Point, to: Point, text: string, { right }: Bounds): Shape[][] {
  const [start, end] = [Math.min(from.y, to.y), Math.max(from.y, to.y)];
  const ends: [Point, Point] = [
    { x: right, y: start },
    { x: right, y: Math.max(end, start + LEAST) },
  ];
  return BESIDE.toReversed().map((beside) => dimension(...ends, text, { away: AWAY, beside }));
}

/** A gap of nothing still has a direction. */
const LEAST = 0.01;

function drawCardSize(sheet: Composition, recipe: Recipe, card: Polygon, units: Units): void {
  const text = `card ${printExactSize(recipe.card, units)}`;
  const lines = recipe.cardTurned ? [text, 'turned'] : [text];
  const centre = centreOf(card);
  const from = centre.x - (LINE * (lines.length - 1)) / 2;
  sheet.settle([
    lines.map((one, index) => label('note', point(centre.x, centre.y + index * LINE), one)),
    lines.map((one, index) => label('note', point(from + index * LINE, centre.y), one, { turn: -90 })),
  ]);
}

const LINE = 15;

const closed = (points: readonly Point[]): Point[] => [...points, points[0]!];

function inWords(recipe: Recipe, face: Face, units: Units): string {
  const { width, height } = recipe.clearance;
  return [
    `The folded envelope from the ${face}, ${printPocket(recipe.pocket, units)}, with the card’s outline inside.`,
    `The gap is ${printLength(width, units)} along the width and ${printLength(height, units)} along the height.`,
    ...(face === 'back'
      ? [`Flaps ${recipe.flaps.map((flap) => flap.letter).join(', ')} lie on each other in that order.`]
      : []),
  ].join(' ');
}
