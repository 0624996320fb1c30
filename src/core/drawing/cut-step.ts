/**
 * Cuts as a thumbnail or, with the measure that is set, to cut by: the piece lying as on its drawing, the blocks that are
 * cut, their edge at the fence, and what is kept lit. Knows rectangles only, no plan and no lengths.
 */
import type { Point } from '#core/geometry/point.ts';
import { dimension } from './dimension.ts';
import { area, type Drawing, line, rectangle, type Shape } from './drawing.ts';

interface Size {
  readonly width: number;
  readonly height: number;
}

interface Box extends Size {
  readonly x: number;
  readonly y: number;
}

export interface DrawnStep {
  readonly piece: Size;
  readonly blocks: readonly Box[];
  readonly kept: readonly Box[];
  readonly fence: 'top' | 'right' | 'bottom' | 'left';
}

type Place = (box: Box) => Point[];

/** `scale` in drawing units per length, one for all steps of a sheet. */
export function cutStepDrawing(step: DrawnStep, words: string, scale: number): Drawing {
  const place = placedAt(MARGIN, MARGIN, scale);
  return {
    title: words,
    words,
    width: step.piece.width * scale + 2 * MARGIN,
    height: step.piece.height * scale + 2 * MARGIN,
    shapes: cutShapes(step, place),
  };
}

/** The same, large, and above it or to its left what the fence is set to, for the first cut. */
export function cutSettingDrawing(step: DrawnStep, set: string, words: string, scale: number): Drawing {
  const upright = step.fence === 'left' || step.fence === 'right';
  const [left, top] = upright ? [SIDE, ROOM] : [ROOM, SIDE];
  const place = placedAt(left, top, scale);
  const size = {
    width: left + step.piece.width * scale + SIDE,
    height: top + step.piece.height * scale + SIDE,
  };
  const measure = upright ? measureAbove(step, place, set, size) : measureBeside(step, place, set, size);
  return { title: words, words, ...size, shapes: [...cutShapes(step, place), ...measure] };
}

type Measured = (step: DrawnStep, place: Place, set: string, size: Size) => Shape[];

/** From left to right; a figure that is longer than its measure goes to the side that has more room. */
const measureAbove: Measured = ({ blocks: [block], kept: [kept] }, place, set, { width }) => {
  const [[from, to], top] = [place(kept!) as [Point, Point], place(block!)[0]!.y];
  const beside = from.x + to.x < width ? 'after' : 'before';
  return dimension({ ...from, y: top }, { ...to, y: top }, set, {
    away: top - ROOM + AWAY,
    beside,
    ...FIGURE,
  });
};

/** From bottom to top. */
const measureBeside: Measured = ({ blocks: [block], kept: [kept] }, place, set, { height }) => {
  const [to, , , from] = place(kept!) as [Point, Point, Point, Point];
  const left = place(block!)[0]!.x;
  const beside = from.y + to.y > height ? 'after' : 'before';
  return dimension({ ...from, x: left }, { ...to, x: left }, set, {
    away: left - ROOM + AWAY,
    beside,
    ...FIGURE,
  });
};

/** Drawing units per length at which every piece keeps within `width` and `height` with its measure. */
export const settingScale = (pieces: readonly Size[], width: number, height: number): number =>
  Math.min(
    ...pieces.map((one) => Math.min((width - ROOM - SIDE) / one.width, (height - ROOM - SIDE) / one.height)),
  );

const MARGIN = 5;
const SIDE = 12;
const ROOM = 34;
const AWAY = 14;
const GAP = 3;
const BEYOND = 2;
/** Read from across the table. */
const FIGURE = { size: 18, weight: 'lit' } as const;

const placedAt =
  (left: number, top: number, scale: number): Place =>
  ({ x, y, width, height }) =>
    rectangle(left + x * scale, top + y * scale, width * scale, height * scale);

const cutShapes = ({ piece, blocks, kept, fence }: DrawnStep, place: Place): Shape[] => [
  area('paper', place({ x: 0, y: 0, ...piece }), 'quiet'),
  ...blocks.map((one) => area('part', place(one))),
  ...kept.map((one) => area('part', place(one), 'lit')),
  ...blocks.map((one) => line('tick', fenceLine(place(one), fence), 'lit')),
];
/** Along the block's edge, a little outside it and a little longer. */
function fenceLine([topLeft, , bottomRight]: ReturnType<typeof rectangle>, fence: DrawnStep['fence']) {
  const [left, top] = [topLeft!.x - BEYOND, topLeft!.y - BEYOND];
  const [right, bottom] = [bottomRight!.x + BEYOND, bottomRight!.y + BEYOND];
  if (fence === 'top' || fence === 'bottom') {
    const y = fence === 'top' ? topLeft!.y - GAP : bottomRight!.y + GAP;
    return [
      { x: left, y },
      { x: right, y },
    ];
  }
  const x = fence === 'left' ? topLeft!.x - GAP : bottomRight!.x + GAP;
  return [
    { x, y: top },
    { x, y: bottom },
  ];
}
