/**
 * A piece to be cut, at true size: what a blade follows, what is scored, where glue goes, and a few words on it. Takes
 * the layouts of any fold and any part of a set as they are. Knows no page, no printer and no file.
 */

import { openBackOf } from '#core/envelope/finish.ts';
import type { FlatLayout } from '#core/envelope/fold.ts';
import { foldOf } from '#core/envelope/folds.ts';
import type { Recipe } from '#core/envelope/recipe.ts';
import { describeWarning } from '#core/envelope/warnings.ts';
import type { Line, Polygon } from '#core/geometry/point.ts';
import { applyToAll, shift } from '#core/geometry/transform.ts';
import { outlineOf, type SetPart, scoreLines } from '#core/sets/part.ts';
import { printExactSize, type Units } from '#shared/length.ts';
import { cutLine } from './cut-line.ts';
import { alongScore, type Inscription, inside } from './inscription.ts';
import type { DrawnPart } from './part.ts';

/** In plain numbers of 25 nm, x to the right and y down, the cut lines reaching from (0, 0) to (width, height). */
export interface Template {
  readonly name: string;
  /** What to know before the piece is cut. */
  readonly words: string;
  readonly width: number;
  readonly height: number;
  /** Closed. */
  readonly cuts: readonly Polygon[];
  /** In the order they are made. */
  readonly scores: readonly Line[];
  readonly glue: readonly Polygon[];
  readonly labels: readonly Inscription[];
}

/** One template for each blank of the envelope, flaps as they are finished, its inside up. */
export function envelopeTemplates(recipe: Recipe, units: Units): Template[] {
  const layouts = foldOf(recipe).flat(recipe);
  const open = openBackOf(recipe);
  const warned = open ? ` ${describeWarning(open, units)}` : '';
  return layouts.map((layout, index) => {
    const name = layouts.length === 1 ? 'Envelope' : `Envelope, piece ${index + 1} of ${layouts.length}`;
    return moveToOrigin({
      name,
      words: `For a ${printExactSize(recipe.card, units)} card. Its inside is up: lay it on the back of the paper.${warned}`,
      cuts: [cutLine(layout.outline, cutFrom(layout))],
      scores: layout.scores,
      glue: layout.glue,
      labels: [
        ...inside(
          layout.pocket,
          [name, `card ${printExactSize(recipe.card, units)}`, 'inside up'],
          layout.glue,
        ),
        ...layout.flaps.flatMap(({ shape, letter }) => inside(shape, [letter], layout.glue)),
        ...layout.glue.flatMap((spot) => inside(spot, ['glue'])),
        ...layout.scores.map((score) => alongScore(score, score.order, layout.pocket)),
      ],
    });
  });
}

/** A part of a set, its good side up. A hole is cut as a polygon that leaves the true circle by under 0.01 mm. */
export function partTemplate(part: DrawnPart, units: Units): Template {
  const outline = outlineOf(part);
  const scores = scoreLines(part);
  return moveToOrigin({
    name: part.name,
    words: `${printExactSize(part, units)}. Its good side is up.`,
    cuts: [cutLine(outline, []), ...(part.hole ? [circle(part.hole)] : [])],
    scores,
    glue: [],
    labels: [
      ...inside(outline, [part.name, printExactSize(part, units), ...lieOf(part)], holesOf(part)),
      ...scores.map((score, index) => alongScore(score, index + 1, outline, shareOf(index, scores))),
    ],
  });
}

const cutFrom = ({ notches, flaps }: FlatLayout): Polygon[] => [
  ...notches.map(({ cut }) => cut),
  ...flaps.flatMap(({ trims }) => trims),
];

/** Numbers of scores a hair apart stand beside each other, not on each other. */
const shareOf = (index: number, scores: readonly Line[]): number =>
  scores.length === 1 ? 1 / 2 : index % 2 === 0 ? 0.3 : 0.7;

const GRAIN = { width: 'grain runs across', height: 'grain runs up and down' } as const;

const lieOf = ({ grain, upright }: SetPart): string[] => [
  ...(grain ? [GRAIN[grain]] : []),
  ...(upright ? ['top of the print this way up'] : []),
];

const CIRCLE_STEPS = 72;

function circle({ middle, diameter }: NonNullable<DrawnPart['hole']>): Polygon {
  return Array.from({ length: CIRCLE_STEPS }, (_, step) => {
    const angle = (2 * Math.PI * step) / CIRCLE_STEPS;
    return {
      x: middle.x + (diameter / 2) * Math.cos(angle),
      y: middle.y + (diameter / 2) * Math.sin(angle),
    };
  });
}

const holesOf = ({ hole }: DrawnPart): Polygon[] => (hole ? [circle(hole)] : []);

/** Shifted so that nothing of the sheet round the cut lines takes up room. */
function moveToOrigin(laid: Omit<Template, 'width' | 'height'>): Template {
  const corners = laid.cuts.flat();
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const move = (shape: Polygon): Polygon => applyToAll(shift(0 - left, 0 - top), shape);
  return {
    ...laid,
    width: Math.max(...xs) - left,
    height: Math.max(...ys) - top,
    cuts: laid.cuts.map(move),
    scores: laid.scores.map(({ from, to }) => {
      const [start, end] = move([from, to]);
      return { from: start!, to: end! };
    }),
    glue: laid.glue.map(move),
    labels: laid.labels.map((one) => ({ ...one, at: move([one.at])[0]! })),
  };
}
