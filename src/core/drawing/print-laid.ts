/**
 * The maker's own print on a blank as it lies in front of her with the inside of the envelope up: faint through the sheet
 * where it lies down, plainer where it lies up, fully on what is folded over. Knows no steps.
 */
import type { FlatLayout, Placement } from '#core/envelope/fold.ts';
import type { Polygon } from '#core/geometry/point.ts';
import { inOrder, mirrorAt, shift, type Transform, turn, UNMOVED } from '#core/geometry/transform.ts';
import type { Print } from '#shared/print.ts';
import type { Swatch } from '#shared/swatch.ts';
import type { Printed } from './drawing.ts';
import { SIDES, type Stage, scaled } from './stage.ts';

/** What is printed on the blank, and how it was laid down. */
export interface PaperLaid {
  readonly print: Print;
  readonly swatch: Swatch;
  readonly placement: Placement;
}

interface Lying {
  readonly place: Stage;
  readonly layout: Pick<FlatLayout, 'blank'>;
}

/** An open stretch of the sheet, in the layout's lengths. */
export const printOpen = (paper: PaperLaid, lying: Lying, shape: Polygon): Printed =>
  printed(paper, lying, {
    outline: lying.place.all(shape),
    over: UNMOVED,
    ink: INK[paper.placement.faceDown],
  });

/** A flap that `over` has folded over, its outside up; undefined where that is the unprinted side. */
export const printOver = (
  paper: PaperLaid,
  lying: Lying,
  folded: { readonly shape: Polygon; readonly over: Transform },
): Printed | undefined =>
  paper.placement.faceDown === 'print'
    ? printed(paper, lying, { outline: lying.place.all(folded.shape), over: folded.over, ink: 1 })
    : undefined;

/** Through the sheet, and under the lines of the drawing. */
const INK: Record<Placement['faceDown'], number> = { print: 0.22, back: 0.5 };

function printed(
  { print, swatch, placement }: PaperLaid,
  { place, layout: { blank } }: Lying,
  { outline, over, ink }: { readonly outline: Polygon; readonly over: Transform; readonly ink: number },
): Printed {
  const quarters = quartersOf(placement);
  const { width, height } = blank;
  const [across, up] = quarters % 2 === 0 ? [width, height] : [height, width];
  const lay = inOrder(
    scaled(1 / place.scale),
    placement.faceDown === 'print' ? mirrorAt(across / 2) : UNMOVED,
    shift(-across / 2, -up / 2),
    turn(2 * quarters),
    shift(width / 2, height / 2),
    over,
    place.move,
  );
  const border = print.direction === 'one edge' ? print.border * place.scale : 0;
  return { kind: 'printed', outline, swatch, lay, height: up * place.scale, border, ink };
}

/** Clockwise quarter turns of the top of the print from the tool's far edge; a border lies at its foot. */
function quartersOf({ towards }: Placement): number {
  if (!towards) return 0;
  return (SIDES.indexOf(towards.side) + (towards.what === 'border' ? 2 : 0)) % 4;
}
