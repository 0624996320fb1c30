/**
 * Cuts as a thumbnail: the piece lying as on its drawing, the blocks that are cut, their edge at the fence, and what
 * is kept lit. Knows rectangles only, no plan and no lengths.
 */
import { area, type Drawing, line, rectangle } from './drawing.ts';

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface DrawnStep {
  readonly piece: { readonly width: number; readonly height: number };
  readonly blocks: readonly Box[];
  readonly kept: readonly Box[];
  readonly fence: 'top' | 'right' | 'bottom' | 'left';
}

/** `scale` in drawing units per length, one for all steps of a sheet. */
export function cutStepDrawing(
  { piece, blocks, kept, fence }: DrawnStep,
  words: string,
  scale: number,
): Drawing {
  const place = ({ x, y, width, height }: Box) =>
    rectangle(MARGIN + x * scale, MARGIN + y * scale, width * scale, height * scale);
  return {
    title: words,
    words,
    width: piece.width * scale + 2 * MARGIN,
    height: piece.height * scale + 2 * MARGIN,
    shapes: [
      area('paper', place({ x: 0, y: 0, ...piece }), 'quiet'),
      ...blocks.map((one) => area('part', place(one))),
      ...kept.map((one) => area('part', place(one), 'lit')),
      ...blocks.map((one) => line('tick', fenceLine(place(one), fence), 'lit')),
    ],
  };
}

const MARGIN = 5;
const GAP = 3;
const BEYOND = 2;

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
