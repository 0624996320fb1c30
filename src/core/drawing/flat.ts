/**
 * The flat sheet as a workshop drawing: the notches with their start, scores numbered in order, flaps lettered in
 * folding order, trims, glue and the pocket's measures. Takes the fold's layout as it is and works nothing out.
 */
import type { FlatLayout, Notch, ScoreLine } from '#core/envelope/fold.ts';
import type { Recipe, Side } from '#core/envelope/recipe.ts';
import { distance } from '#core/geometry/point.ts';
import { add, type Length, printExact, printExactSize, type Units } from '#shared/length.ts';
import { printPocket, printPocketSide } from '#shared/pocket.ts';
import type { Size } from '#shared/size.ts';
import { compose } from './composition.ts';
import { cutAway } from './cut-away.ts';
import { dimension } from './dimension.ts';
import { area, type Drawing, TEXT, WIDEST } from './drawing.ts';
import { type LegendItem, legend } from './legend.ts';
import {
  AWAY,
  drawDepth,
  drawLetter,
  drawOrder,
  type FlatPage,
  inwardSign,
  scoreShape,
  sideOf,
  startShapes,
} from './paper.ts';
import { opposite, type Room, roomAfter, SIDES, stage } from './stage.ts';

/** One blank of the recipe with every measure it needs; the layout is one of its fold's `flat(recipe)`. */
export function flatDrawing(recipe: Recipe, layout: FlatLayout, units: Units): Drawing {
  const first = layout.notches.find((notch) => notch.measured);
  const start = first?.edge ?? 'top';
  const place = stage(layout.blank, 0, {
    room: roomFor(start, layout.blank),
    width: WIDEST,
    tallest: TALLEST,
  });
  const key = legend(keyOf(layout), place.height, place.width);
  const page = { sheet: compose(place.width, place.height + key.height), place, layout, recipe, units };
  drawPaper(page);
  page.sheet.add(...key.shapes);
  if (first) drawStart(page, first);
  drawOverall(page, start);
  for (const flap of layout.flaps) drawDepth(page, flap);
  for (const flap of layout.flaps) drawLetter(page, flap, layout.glue);
  for (const score of layout.scores) drawOrder(page, score);
  drawPocket(page);
  return page.sheet.finish('The flat sheet', inWords(page, first));
}

const TALLEST = 460;
const START_ROOM = 46;
const OVERALL_ROOM = 28;
const SIDE_ROOM = 12;
/** The measures that are set and cut first stand out. */
const SET = { size: 16, weight: 'lit' } as const;
/** For figures in a slim pocket. */
const SMALL = 11;

/** Beyond the edge with the start, room for its figure and word; opposite for one figure; beside for one if need be. */
function roomFor(start: Side, blank: Size): Room {
  const right = blank.width === blank.height ? SIDE_ROOM : OVERALL_ROOM;
  return roomAfter(SIDES.indexOf(start), { top: START_ROOM, right, bottom: OVERALL_ROOM, left: SIDE_ROOM });
}

function keyOf(layout: FlatLayout): LegendItem[] {
  const trims = layout.flaps.some((flap) => flap.trims.length > 0);
  return [
    { line: 'score', word: 'score' },
    ...(trims ? [{ area: 'trim', word: 'cut off' } as const] : []),
    ...(layout.glue.length > 0 ? [{ area: 'glue', word: 'glue' } as const] : []),
  ];
}

/** The blank with its notches cut, trims hatched, glue tinted and scores dashed. */
function drawPaper(page: FlatPage): void {
  const { sheet, place, layout } = page;
  const notches = layout.notches.map((notch) => notch.cut);
  sheet.add(area('paper', place.all(cutAway(layout.outline, notches))));
  for (const flap of layout.flaps) for (const trim of flap.trims) sheet.add(area('trim', place.all(trim)));
  for (const band of layout.glue) sheet.add(area('glue', place.all(band)));
  for (const score of layout.scores) sheet.add(scoreShape(page, score));
}

/**
 * The start, and beside it its twin from the other corner where both figures have room and add up to the edge: on a
 * ruler with a zero offset they don't, and the twin isn't measured anyway.
 */
function drawStart(page: FlatPage, notch: Notch): void {
  const { sheet, place, recipe, layout, units } = page;
  const [, to] = place.edge(notch.edge);
  const start = startShapes(page, notch, SET);
  const twin = recipe.starts.find((one) => one !== notch.reading) ?? notch.reading;
  const other = dimension(place.at(notch.mouth), to, printExact(twin, units), { away: AWAY });
  const addUp = add(notch.reading, twin) === layout.blank.width;
  sheet.settle(addUp ? [[...start, ...other], start] : [start]);
}

/** The blank's own size: one figure for a square, two for any other. */
function drawOverall({ sheet, place, layout, units }: FlatPage, start: Side): void {
  const { width, height } = layout.blank;
  const next = SIDES[(SIDES.indexOf(start) + 1) % 4]!;
  for (const side of width === height ? [opposite(start)] : [opposite(start), next]) {
    const along = side === 'top' || side === 'bottom' ? width : height;
    sheet.add(...dimension(...place.edge(side), printExact(along, units), { away: AWAY, ...SET }));
  }
}

/** Width and height of the pocket, inside it beside the scores of the flaps that hinge on those sides. */
function drawPocket(page: FlatPage): void {
  const { layout, recipe } = page;
  const hinging = (measure: Length, ...sides: Side[]): ScoreLine[] =>
    layout.scores.filter((score) => sides.includes(sideOf(recipe, score.flap)) && spans(score, measure));
  const { width, height } = recipe.pocket;
  drawBeside(page, hinging(width, 'bottom', 'top'), width);
  drawBeside(page, hinging(height, 'left', 'right'), height);
}

/** A tab's score stops just short of the corners; one on a piece shorter than the pocket doesn't measure it. */
const spans = ({ from, to }: ScoreLine, measure: Length): boolean =>
  Math.abs(distance(from, to) - measure) < measure * CORNERS;

const CORNERS = 0.07;

function drawBeside(page: FlatPage, scores: readonly ScoreLine[], measure: Length): void {
  const { sheet, place, units } = page;
  const text = printPocketSide(measure, units);
  const ways = (['after', 'before'] as const).flatMap((beside) =>
    [TEXT.dimension, SMALL].flatMap((size) => [14, 26, 40, 54].map((inwards) => ({ beside, size, inwards }))),
  );
  sheet.settle(
    ways.flatMap(({ inwards, ...style }) =>
      scores.map((score) => {
        const away = inwards * inwardSign(page, score);
        return dimension(place.at(score.from), place.at(score.to), text, { away, ...style });
      }),
    ),
  );
}

function inWords({ recipe, layout, units }: FlatPage, first: Notch | undefined): string {
  const trimmed = layout.flaps.flatMap((flap) =>
    'depth' in flap.finish
      ? [`${flap.letter} is cut ${printExact(flap.finish.depth, units)} from its score`]
      : [],
  );
  return [
    `A blank of ${printExactSize(layout.blank, units)} with the inside of the envelope up.`,
    ...(first
      ? [`The first notch is at ${printExact(first.reading, units)} along the ${first.edge} edge.`]
      : []),
    `${scoresIn(layout)} a pocket of ${printPocket(recipe.pocket, units)}.`,
    `Flaps ${layout.flaps.map((flap) => flap.letter).join(', ')} fold in that order.`,
    ...(trimmed.length > 0 ? [`Flap ${trimmed.join('; flap ')}.`] : []),
  ].join(' ');
}

const scoresIn = ({ scores }: FlatLayout): string =>
  scores.length === 1 ? 'One score makes' : `${scores.length} scores, numbered in order, make`;
