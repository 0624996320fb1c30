/**
 * What the flat sheet looks like, piece by piece: paper, scores, letters, and the measures that hang on one notch or
 * one flap. Shared by the workshop drawing and the making steps; knows neither's order.
 */
import type { FlatFlap, FlatLayout, Notch, ScoreLine } from '#core/envelope/fold.ts';
import type { HingedLetter, Recipe, Side } from '#core/envelope/recipe.ts';
import type { Point, Polygon } from '#core/geometry/point.ts';
import { type Length, printExact, type Units } from '#shared/length.ts';
import type { Composition } from './composition.ts';
import { dimension } from './dimension.ts';
import { type Label, label, line, type Shape, TEXT, type Weight } from './drawing.ts';
import { isInside, roomiest, type Spot } from './room.ts';
import type { Stage } from './stage.ts';
import { between, centreOf, direction, leftOf, moved } from './vectors.ts';

/** One blank of a recipe laid on a page that is being put together. */
export interface FlatPage {
  readonly sheet: Composition;
  readonly place: Stage;
  readonly layout: FlatLayout;
  readonly recipe: Recipe;
  readonly units: Units;
}

export interface FigureStyle {
  readonly size?: number;
  readonly weight?: Weight;
}

export const scoreShape = ({ place }: FlatPage, score: ScoreLine, weight: Weight = 'plain'): Shape =>
  line('score', [place.at(score.from), place.at(score.to)], weight);

/** The score's number in the order of scoring, in a disc on its line, or beside it where the line is crowded. */
export function drawOrder({ sheet, place }: FlatPage, score: ScoreLine, weight: Weight = 'plain'): void {
  const [from, to] = [place.at(score.from), place.at(score.to)];
  const left = leftOf(direction(from, to));
  const discs = (beside: number): Shape[][] =>
    [0.2, 0.8, 0.28, 0.72, 0.36, 0.64, 0.5, 0.12, 0.88].map((share) => {
      const at = moved(between(from, to, share), left, beside);
      return [label('order', at, `${score.order}`, { weight })];
    });
  [0, 15, -15, 26, -26].some((beside) => sheet.settle(discs(beside)));
}

/** How far a dimension outside the blank stands off its edge. */
export const AWAY = 16;

/** What the ruler reads at a notch, and the word above it. */
export function startShapes({ place, units }: FlatPage, notch: Notch, style: FigureStyle = {}): Shape[] {
  const { size = TEXT.dimension, weight = 'plain' } = style;
  const [from, to] = place.edge(notch.edge);
  const [mouth, outwards] = [place.at(notch.mouth), leftOf(direction(from, to))];
  const word = moved(between(from, mouth, 0.5), outwards, AWAY + (size + TEXT.caption) / 2 + 3);
  return [
    ...dimension(from, mouth, printExact(notch.reading, units), { away: AWAY, size, weight }),
    label('caption', word, 'start', { weight, turn: outwards.y === 0 ? -90 : 0 }),
  ];
}

/** How deep a trimmed flap is left, told from its score; where no notch places a score, every flap's depth does. */
export function drawDepth(page: FlatPage, flap: FlatFlap, style: FigureStyle = {}): void {
  const { sheet, place, layout, units } = page;
  const score = layout.scores.find((one) => one.flap === flap.letter);
  const depth = depthOf(page, flap);
  if (!score || depth === undefined) return;
  const shape = place.all(flap.shape);
  const [from, to] = [place.at(score.from), place.at(score.to)];
  const outwards = -inwardSign(page, score) * depth * place.scale;
  sheet.settle(
    [0.3, 0.7, 0.36, 0.64, 0.42, 0.58, 0.5]
      .map((share) => between(from, to, share))
      .map((foot) => [foot, moved(foot, leftOf(direction(from, to)), outwards)] as const)
      .filter(([foot, tip]) => isInside(between(foot, tip, 0.97), shape))
      .map(([foot, tip]) => dimension(foot, tip, printExact(depth, units), { away: 0, ...style })),
  );
}

function depthOf({ layout, recipe }: FlatPage, { letter, finish }: FlatFlap): Length | undefined {
  if ('depth' in finish) return finish.depth;
  return layout.notches.length === 0 ? recipe.flaps.find((one) => one.letter === letter)!.reach : undefined;
}

/** 1 where the pocket lies to the left of going along the score, −1 where to the right. */
export function inwardSign({ place, layout }: FlatPage, score: ScoreLine): 1 | -1 {
  const [from, to, centre]: Point[] = [
    place.at(score.from),
    place.at(score.to),
    centreOf(place.all(layout.pocket)),
  ];
  const left = leftOf(direction(from!, to!));
  return (centre!.x - from!.x) * left.x + (centre!.y - from!.y) * left.y > 0 ? 1 : -1;
}

/**
 * A letter in the roomiest part of the flap beside what covers it, and below it the pocket's side that the flap hinges
 * on, the envelope seen from the back, where there is room for the word.
 */
export function drawLetter(
  { sheet, place, recipe }: FlatPage,
  flap: FlatFlap,
  covers: readonly Polygon[],
  weight: Weight = 'plain',
): void {
  const spots = roomiest(place.all(flap.shape), covers.map(place.all));
  const letters = spots.map((spot) => flapLetter(spot, flap.letter, weight));
  const word = sideOf(recipe, flap.letter);
  const words = letters.map(({ at: { x, y } }) =>
    label('note', { x, y: y + BELOW_LETTER }, word, { weight }),
  );
  sheet.settle([
    ...letters.map((letter, index) => [letter, words[index]!]),
    ...letters.map((letter) => [letter]),
  ]);
}

/** A flap's letter, smaller where the room is. */
export const flapLetter = ({ at, room }: Spot, letter: HingedLetter, weight: Weight = 'plain'): Label =>
  label('letter', at, letter, { weight, size: Math.min(TEXT.letter, Math.max(TEXT.note, 1.6 * room)) });

/** E hinges on the pocket's side that C does. */
export const sideOf = (recipe: Recipe, letter: HingedLetter): Side =>
  recipe.flaps.find((flap) => flap.letter === (letter === 'E' ? 'C' : letter))!.side;

const BELOW_LETTER = 17;
