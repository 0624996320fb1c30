/**
 * How the print comes out: small folded fronts and backs with the design's swatch carried through the fold by the
 * look's transforms. Knows nothing of why a look is possible.
 */
import type { FoldedLayout, Look } from '#core/envelope/fold.ts';
import type { Polygon } from '#core/geometry/point.ts';
import { applyToAll, inOrder, shift, type Transform } from '#core/geometry/transform.ts';
import type { Print } from '#shared/print.ts';
import type { Size } from '#shared/size.ts';
import type { Swatch } from '#shared/swatch.ts';
import { area, type Drawing, line, type Printed, type Shape } from './drawing.ts';
import { scaled } from './stage.ts';

/** The paper that a look is of: its blank, seen upright from the printed side, and what is printed on it. */
export interface LookPiece {
  readonly blank: Size;
  readonly print: Print;
  readonly swatch: Swatch;
}

/** Front and back of one look, the back below a landscape front and beside a tall one. */
export function lookDrawing(look: Look, layout: FoldedLayout, piece: LookPiece): Drawing {
  const landscape = layout.width >= layout.height;
  const scale = (landscape ? WIDE : NARROW) / layout.width;
  const [width, height] = [layout.width * scale, layout.height * scale];
  const step = landscape ? { x: 0, y: height + BETWEEN } : { x: width + BETWEEN, y: 0 };
  const at = (x: number, y: number): Transform => inOrder(scaled(scale), shift(x, y));
  const worn = { look, piece, scale };
  return {
    title: look.words,
    words: `Front and back of the envelope: ${look.words}.`,
    width: width + step.x + 2 * MARGIN,
    height: height + step.y + 2 * MARGIN,
    shapes: [
      ...frontShapes(worn, layout, at(MARGIN, MARGIN)),
      ...backShapes(worn, layout, at(MARGIN + step.x, MARGIN + step.y)),
    ],
  };
}

const WIDE = 158;
const NARROW = 76;
const BETWEEN = 8;
const MARGIN = 2;

/** A look on its piece, drawn at a scale. */
interface Worn {
  readonly look: Look;
  readonly piece: LookPiece;
  readonly scale: number;
}

function frontShapes(worn: Worn, layout: FoldedLayout, place: Transform): Shape[] {
  const face = applyToAll(place, layout.front.pocket);
  return [faceOf(worn, face, inOrder(worn.look.front, place)), line('outline', closed(face))];
}

function backShapes(worn: Worn, layout: FoldedLayout, place: Transform): Shape[] {
  const pocket = applyToAll(place, layout.back.pocket);
  const flaps = layout.back.flaps.flatMap((flap) => {
    const move = worn.look.flaps.find((one) => one.letter === flap.letter)?.transform;
    if (!move) return [];
    const shape = applyToAll(place, flap.shape);
    return [faceOf(worn, shape, inOrder(move, place)), line('outline', closed(shape))];
  });
  return [area('inside', pocket), ...flaps];
}

/** The paper's outer face on one shape. Of a sheet's other side nothing is known: it is shown with colours swapped. */
export function faceOf({ look, piece, scale }: Worn, outline: Polygon, move: Transform): Printed {
  return {
    kind: 'printed',
    outline,
    swatch: look.placement.faceDown === 'print' ? piece.swatch : swapped(piece.swatch),
    lay: inOrder(scaled(1 / scale), move),
    height: piece.blank.height * scale,
    border: piece.print.direction === 'one edge' ? piece.print.border * scale : 0,
  };
}

const swapped = ({ motif, ground, inks: [ink = ground] }: Swatch): Swatch => ({
  motif,
  ground: ink,
  inks: [ground],
});

const closed = (points: Polygon): Polygon => [...points, points[0]!];
