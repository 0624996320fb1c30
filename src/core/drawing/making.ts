/**
 * The sheet as it lies in front of the maker at one step: turned as she has it, what is done cut away or pale, the
 * next thing lit, flaps folded in as they go. Knows the steps only as far as they have come.
 */
import type { FlatFlap, FlatLayout, Placement, Step } from '#core/envelope/fold.ts';
import { WHERE } from '#core/envelope/placement.ts';
import type { HingedLetter, Recipe, Turning } from '#core/envelope/recipe.ts';
import { type Point, type Polygon, point } from '#core/geometry/point.ts';
import { applyToAll, foldOver, type Transform, UNMOVED } from '#core/geometry/transform.ts';
import { printExact, printExactSize, type Units } from '#shared/length.ts';
import { compose } from './composition.ts';
import { cutAway } from './cut-away.ts';
import { dimension } from './dimension.ts';
import { area, type Drawing, type Line, label, line, type Shape, TEXT, WIDEST } from './drawing.ts';
import {
  AWAY,
  drawDepth,
  drawLetter,
  drawOrder,
  type FigureStyle,
  type FlatPage,
  scoreShape,
  startShapes,
} from './paper.ts';
import { type PaperLaid, printOpen, printOver } from './print-laid.ts';
import { SIDES, type Stage, stage } from './stage.ts';
import { between, direction, leftOf, moved } from './vectors.ts';

export interface Making {
  readonly steps: readonly Step[];
  /** The step to show, from 0. */
  readonly at: number;
  /** What the blank is made of, where that is known: drawn once it is laid down. */
  readonly paper?: PaperLaid | undefined;
}

/**
 * One step of the fold's `steps(recipe, turning)` on a blank of its `flat(recipe, turning)`. Throws on a step that is
 * not there.
 */
export function makingDrawing(
  recipe: Recipe,
  layout: FlatLayout,
  { steps, at, paper }: Making,
  units: Units,
): Drawing {
  const step = steps[at];
  if (!step) throw new Error(`invalid step: ${at} of ${steps.length}`);
  const done = doneBefore(steps.slice(0, at), step);
  const place = stage(layout.blank, step.turns, { room: ROOM, width: WIDEST, tallest: TALLEST });
  const page = { sheet: compose(place.width, place.height), place, layout, recipe, units };
  const laid = steps.slice(0, at + 1).some(({ kind }) => kind === 'lay') ? paper : undefined;
  if (done.folded.size === 0) drawOpen(page, done, laid);
  else drawFolding(page, done, laid);
  drawLitScore(page, step);
  drawLitNotch(page, step);
  drawLitFlaps(page, step, done);
  if (step.kind === 'turn') page.sheet.add(...turnArrow(place, layout, step.turning));
  if (step.kind === 'cut') drawBlankSize(page);
  if (step.kind === 'lay') page.sheet.add(...laidDown(page, step.placement));
  else if (laid) drawWayOfPrint(page, laid, step);
  const words = [inWords(layout, step, units), ...(laid ? [sayPrint(laid, step)] : [])].join(' ');
  return page.sheet.finish(`Step ${at + 1} of ${steps.length}`, words);
}

const ROOM = { top: 50, right: 14, bottom: 28, left: 30 };
const TALLEST = 420;
/** For figures read at arm's length. */
const LIT_FIGURE: FigureStyle = { size: 20, weight: 'lit' };
const ARROW_RADIUS = 60;

interface Done {
  readonly notches: ReadonlySet<number>;
  readonly scores: ReadonlySet<number>;
  readonly trimmed: ReadonlySet<HingedLetter>;
  readonly folded: ReadonlySet<HingedLetter>;
}

/** What the steps so far have made of the blank; a flap to be glued is opened again. */
function doneBefore(steps: readonly Step[], now: Step): Done {
  const of = <T>(pick: (step: Step) => readonly T[]): Set<T> => new Set(steps.flatMap(pick));
  const isGlued = (letter: HingedLetter): boolean => now.kind === 'glue' && now.flap === letter;
  return {
    notches: of((step) => (step.kind === 'notch' ? [step.notch] : [])),
    scores: of((step) => (step.kind === 'score' ? [step.score] : [])),
    trimmed: of((step) => (step.kind === 'trim' ? [step.flap] : [])),
    folded: of((step) => (step.kind === 'fold' ? step.flaps.filter((letter) => !isGlued(letter)) : [])),
  };
}

/** The blank less the notches and trims already cut, with the scores made so far. */
function drawOpen(page: FlatPage, done: Done, paper: PaperLaid | undefined): void {
  const { sheet, place, layout } = page;
  const cut = [
    ...layout.notches.filter((notch) => done.notches.has(notch.order)).map((notch) => notch.cut),
    ...layout.flaps.filter((flap) => done.trimmed.has(flap.letter)).flatMap((flap) => flap.trims),
  ];
  const left = cutAway(layout.outline, cut);
  sheet.add(area('paper', place.all(left)));
  if (paper) sheet.add(printOpen(paper, page, left));
  for (const score of layout.scores)
    if (done.scores.has(score.order)) sheet.add(scoreShape(page, score, 'quiet'));
}

/** The pocket and its open flaps from the inside, the folded ones lying over it in order. */
function drawFolding(page: FlatPage, done: Done, paper: PaperLaid | undefined): void {
  const { sheet, place, layout } = page;
  const isFolded = (flap: FlatFlap): boolean => done.folded.has(flap.letter);
  const open = layout.flaps.filter((flap) => !isFolded(flap)).map((flap) => flap.shape);
  for (const shape of [layout.pocket, ...open]) {
    sheet.add(area('inside', place.all(shape)));
    if (paper) sheet.add(printOpen(paper, page, shape));
  }
  for (const flap of layout.flaps.filter(isFolded)) drawFolded(page, flap, paper);
}

function drawFolded(page: FlatPage, flap: FlatFlap, paper: PaperLaid | undefined): void {
  const { sheet, place, layout } = page;
  const [shape, over] = [foldedIn(layout, flap), overOf(layout, flap)];
  const print = paper && printOver(paper, page, { shape, over });
  sheet.add(area('flap', place.all(shape)));
  if (!print) return;
  const outline = place.all(shape);
  sheet.add(print, line('outline', [...outline, outline[0]!]));
}

const foldedIn = (layout: FlatLayout, flap: FlatFlap): Polygon =>
  applyToAll(overOf(layout, flap), flap.shape);

function overOf(layout: FlatLayout, flap: FlatFlap): Transform {
  const score = layout.scores.find((one) => one.flap === flap.letter);
  return score ? foldOver(score) : UNMOVED;
}

/** The score to make, or to line up with. */
function drawLitScore(page: FlatPage, step: Step): void {
  const score = page.layout.scores.find((one) => one.order === step.lit.score);
  if (!score) return;
  page.sheet.add(scoreShape(page, score, 'lit'));
  drawOrder(page, score, 'lit');
}

/** The notch to cut, with its start where it is the one that is measured. */
function drawLitNotch(page: FlatPage, step: Step): void {
  const notch = page.layout.notches.find((one) => one.order === step.lit.notch);
  if (!notch) return;
  page.sheet.add(area('notch', page.place.all(notch.cut)));
  if (notch.measured) page.sheet.add(...startShapes(page, notch, LIT_FIGURE));
}

/** Once flaps matter: each open one with its letter, the next ones lit. */
function drawLitFlaps(page: FlatPage, step: Step, done: Done): void {
  const { flaps, glue } = page.layout;
  const lit = flaps.filter((flap) => step.lit.flaps?.includes(flap.letter));
  if (lit.length === 0) return;
  for (const flap of lit) drawLitFlap(page, flap, step);
  for (const flap of flaps.filter((one) => !done.folded.has(one.letter))) {
    drawLetter(page, flap, step.kind === 'glue' ? glue : [], lit.includes(flap) ? 'lit' : 'quiet');
  }
}

/** What is to be cut from it, or where it is to be glued, or where it will lie. */
function drawLitFlap(page: FlatPage, flap: FlatFlap, step: Step): void {
  const { sheet, place, layout } = page;
  if (step.kind === 'trim') {
    for (const trim of flap.trims) sheet.add(area('trim', place.all(trim), 'lit'));
    drawDepth(page, flap, LIT_FIGURE);
  } else if (step.kind === 'glue') {
    for (const band of layout.glue) sheet.add(area('glue', place.all(band), 'lit'));
  } else {
    const landing = place.all(foldedIn(layout, flap));
    sheet.add(area('flap', place.all(flap.shape), 'lit'), line('hidden', [...landing, landing[0]!]));
  }
}

/** A quarter of a circle about the blank's middle, its tip where the turning ended. */
function turnArrow(place: Stage, { blank }: FlatLayout, turning: Turning): Line[] {
  const middle = place.at(point(blank.width / 2, blank.height / 2));
  const way = turning === 'clockwise' ? 1 : -1;
  const on = (eighths: number, radius: number): Point => {
    const angle = ((eighths - 2) * Math.PI) / 4;
    return moved(middle, point(way * Math.cos(angle), Math.sin(angle)), radius);
  };
  const arc = Array.from({ length: 17 }, (_, index) => on(index / 8 - 1, ARROW_RADIUS));
  const head = [on(0.8, ARROW_RADIUS - 9), on(1, ARROW_RADIUS), on(0.76, ARROW_RADIUS + 7)];
  return [line('arrow', arc, 'lit'), line('arrow', head, 'lit')];
}

function drawBlankSize({ sheet, place, layout, units }: FlatPage): void {
  const style = { away: AWAY, ...LIT_FIGURE };
  sheet.add(...dimension(...place.edge('bottom'), printExact(layout.blank.width, units), style));
  sheet.add(...dimension(...place.edge('left'), printExact(layout.blank.height, units), style));
}

/** Which face is up, and an arrow to the edge that the top of the print or its border belongs at. */
function laidDown({ place, layout: { blank } }: FlatPage, { faceDown, towards }: Placement): Shape[] {
  const middle = place.at(point(blank.width / 2, blank.height / 2));
  const face = label(
    'dimension',
    moved(middle, UP, 13),
    `print side ${faceDown === 'print' ? 'down' : 'up'}`,
    LIT_FIGURE,
  );
  if (!towards) return [face];
  const way = towards.what === 'border' ? 'its border this way' : 'its top this way';
  const ends = place.edge(towards.side);
  const [edge, outwards] = [between(...ends, 0.5), leftOf(direction(...ends))];
  const [tail, tip] = [between(middle, edge, 0.6), between(middle, edge, 0.9)];
  const barb = (side: number): Point => moved(moved(tip, outwards, -11), direction(...ends), side);
  return [
    face,
    label('dimension', moved(middle, UP, -13), way, { size: 16 }),
    line('arrow', [tail, tip], 'lit'),
    line('arrow', [barb(-7), tip, barb(7)], 'lit'),
  ];
}

const UP = point(0, -1);

/** Below the sheet: which side is up by now, and where its top or border has turned to. */
function drawWayOfPrint({ sheet, place }: FlatPage, paper: PaperLaid, step: Step): void {
  const words = sayPrint(paper, step).replace('.', '');
  sheet.settle(
    [0.5, 0.3, 0.7].map((share) => [
      label('caption', point(place.width * share, place.height - TEXT.caption / 2 - 2), words),
    ]),
  );
}

/** `Print down, its top to the right.` */
function sayPrint({ placement: { faceDown, towards } }: PaperLaid, { turns }: Step): string {
  const face = faceDown === 'print' ? 'Print down' : 'Print up';
  if (!towards) return `${face}.`;
  const side = SIDES[(SIDES.indexOf(towards.side) + turns) % 4]!;
  return `${face}, its ${towards.what} ${WHERE[side]}.`;
}

/** What is lit; the instruction itself stands beside the picture. */
function inWords(layout: FlatLayout, step: Step, units: Units): string {
  const { notch, score, flaps } = step.lit;
  const lit = [
    ...(notch === undefined ? [] : [`notch ${notch}`]),
    ...(score === undefined ? [] : [`score ${score}`]),
    ...(flaps ?? []).map((letter) => `flap ${letter}`),
  ];
  const turned = ['as it was laid down', 'turned by a quarter', 'turned by half', 'turned by three quarters'];
  return [
    `The blank of ${printExactSize(layout.blank, units)}, ${turned[step.turns % 4]}.`,
    ...(lit.length > 0 ? [`Lit: ${lit.join(' and ')}.`] : []),
  ].join(' ');
}
