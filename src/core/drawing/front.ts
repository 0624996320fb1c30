/** An envelope's front alone, small: with its print where the paper is known. Knows no dimensions and no flaps. */
import type { FoldedLayout, Look } from '#core/envelope/fold.ts';
import { applyToAll, inOrder, shift } from '#core/geometry/transform.ts';
import { area, type Drawing, line, type Shape } from './drawing.ts';
import { faceOf, type LookPiece } from './looks.ts';
import { scaled } from './stage.ts';

export interface FrontPaper {
  readonly look: Look;
  readonly piece: LookPiece;
}

/** As large as goes into a box 150 by 110, proportions kept. */
export function frontDrawing(title: string, layout: FoldedLayout, paper?: FrontPaper): Drawing {
  const scale = Math.min(WIDEST / layout.width, TALLEST / layout.height);
  const place = inOrder(scaled(scale), shift(MARGIN, MARGIN));
  const face = applyToAll(place, layout.front.pocket);
  const shapes: Shape[] = paper
    ? [
        faceOf({ ...paper, scale }, face, inOrder(paper.look.front, place)),
        line('outline', [...face, face[0]!]),
      ]
    : [area('paper', face)];
  return {
    title,
    words: paper ? `The front of the envelope: ${paper.look.words}.` : 'The front of the envelope.',
    width: layout.width * scale + 2 * MARGIN,
    height: layout.height * scale + 2 * MARGIN,
    shapes,
  };
}

const WIDEST = 150;
const TALLEST = 110;
const MARGIN = 2;
