/**
 * The way a strip takes round a card, seen from the card's edge: leaves a little open, the strip round one of them or
 * round both. Knows no measures; it is for understanding before anything is glued.
 */
import { type Point, point } from '#core/geometry/point.ts';
import type { FoldAt } from '#core/sets/base.ts';
import { openingOf, type Path, type Run } from '#core/sets/wraps.ts';
import { type Drawing, label, line, rectangle, type Shape } from './drawing.ts';

export interface Wrapped {
  readonly fold: FoldAt | 'none';
  readonly path: Path;
  readonly run: Run;
}

/** The card seen along the strip's edge, its front up. */
export function wrapPathDrawing(wrapped: Wrapped): Drawing {
  const opening = openingOf(wrapped);
  const folds = foldsSeen(wrapped);
  return {
    title: 'The way of the strip',
    words: `Seen from the edge: the strip goes round the ${wrapped.path}. ${opening.words}`,
    width: WIDTH,
    height: HEIGHT,
    shapes: [
      ...leaves(wrapped, folds),
      line('outline', stripAround(wrapped, opening.stopsAtFold ? folds[0] : undefined), 'lit'),
      label('caption', point(LEFT, TEXT_TOP), 'front', { anchor: 'start' }),
      label('caption', point(LEFT, HEIGHT - 10), 'back', { anchor: 'start' }),
      ...folds.map((end) =>
        label('caption', point(end === 'left' ? 12 : WIDTH - 12, (FRONT + BACK) / 2), 'fold', { turn: -90 }),
      ),
    ],
  };
}

const WIDTH = 320;
const HEIGHT = 124;
const TEXT_TOP = 12;
const [LEFT, RIGHT] = [56, WIDTH - 56];
const [FRONT, BACK] = [46, 78];
const GAP = 8;

type End = 'left' | 'right';

/** Folds that the cut through the card passes; any others lie along it. */
function foldsSeen({ fold, run }: Wrapped): End[] {
  const level = fold === 'top' || fold === 'top and bottom';
  if (fold === 'none' || level !== (run === 'up')) return [];
  if (fold === 'sides' || fold === 'top and bottom') return ['left', 'right'];
  return fold === 'right' ? ['right'] : ['left'];
}

function leaves({ fold }: Wrapped, folds: readonly End[]): Shape[] {
  if (fold === 'none')
    return [line('outline', [...rectangle(LEFT, FRONT, RIGHT - LEFT, BACK - FRONT), point(LEFT, FRONT)])];
  const gate = folds.length === 2;
  const front = gate
    ? [
        [point(LEFT, FRONT), point(WIDTH / 2 - 3, FRONT)],
        [point(WIDTH / 2 + 3, FRONT), point(RIGHT, FRONT)],
      ]
    : [[point(LEFT, FRONT), point(RIGHT, FRONT)]];
  return [
    ...front.map((leaf) => line('outline', leaf)),
    line('outline', [point(LEFT, BACK), point(RIGHT, BACK)]),
    ...folds.map((end) => line('outline', spine(end))),
  ];
}

/** Half round from the front's end to the back's. */
function spine(end: End): Point[] {
  const [x, away] = end === 'left' ? [LEFT, -1] : [RIGHT, 1];
  const radius = (BACK - FRONT) / 2;
  return Array.from({ length: 9 }, (_, index) => {
    const turn = (index / 8) * Math.PI;
    return point(x + away * radius * Math.sin(turn), (FRONT + BACK) / 2 - radius * Math.cos(turn));
  });
}

/** A loop round what it holds; open at the fold that stops it. */
function stripAround({ path }: Wrapped, stop: End | undefined): Point[] {
  const [top, bottom] = {
    'whole card': [FRONT - GAP, BACK + GAP],
    'front leaf': [FRONT - GAP, FRONT + GAP],
    'inside back': [BACK - GAP, BACK + GAP],
  }[path] as [number, number];
  const wide = path === 'whole card' ? 24 : GAP;
  const [left, right] = [LEFT - wide, RIGHT + wide];
  if (stop === 'left')
    return [point(LEFT + 6, top), point(right, top), point(right, bottom), point(LEFT + 6, bottom)];
  if (stop === 'right')
    return [point(RIGHT - 6, top), point(left, top), point(left, bottom), point(RIGHT - 6, bottom)];
  return [...rectangle(left, top, right - left, bottom - top), point(left, top)];
}
