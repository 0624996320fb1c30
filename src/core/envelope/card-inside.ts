/** The card in a closed envelope, with what is left beside it to be dimensioned. Knows no fold. */
import { type Point, type Polygon, point } from '#core/geometry/point.ts';
import { rectangle } from '#core/geometry/polygon.ts';
import { applyToAll, mirrorAt } from '#core/geometry/transform.ts';
import type { Size } from '#shared/size.ts';
import type { Gap } from './fold.ts';
import type { Card } from './recipe.ts';

export interface Inside {
  readonly card: Polygon;
  readonly gaps: readonly Gap[];
}

/** Seen from the front: the card, as it lies, pushed into the lower left corner, so that each clearance shows whole. */
export function cardInside(
  card: Card,
  clearance: Size,
  { width, height }: { readonly width: number; readonly height: number },
): Inside {
  const [right, top] = [card.width + card.bulk, height - (card.height + card.bulk)];
  const gap = (along: Gap['along'], from: Point, to: Point): Gap => ({
    along,
    clearance: clearance[along],
    from,
    to,
  });
  return {
    card: rectangle(0, top, right, height - top),
    gaps: [
      gap('width', point(right, height / 2), point(width, height / 2)),
      gap('height', point(width / 2, top), point(width / 2, 0)),
    ],
  };
}

/** The same seen from the back of an envelope this wide. */
export function mirrored({ card, gaps }: Inside, width: number): Inside {
  const mirror = mirrorAt(width / 2);
  return {
    card: applyToAll(mirror, card),
    gaps: gaps.map((gap) => {
      const [from, to] = applyToAll(mirror, [gap.from, gap.to]);
      return { ...gap, from: from!, to: to! };
    }),
  };
}
