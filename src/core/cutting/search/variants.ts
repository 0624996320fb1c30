/**
 * Parts that must all come from one design: the orders that result from deciding on a design for each such label. Knows
 * orders and pieces only.
 */
import { copiesOf, type Order, type Part, type Piece, suits } from '../order.ts';

// Untuned, taken as reasonable.
/** More decisions than these are left to the search. */
const MOST = 12;

/** The order itself where no label needs one design, else one order for each choice of designs. */
export function variants(order: Order, pieces: readonly Piece[]): Order[] {
  const labels = new Set(order.parts.flatMap((part) => (part.oneDesign && part.match ? [part.match] : [])));
  let orders: Order[] = [order];
  for (const label of labels) {
    const designs = designsFor(
      order.parts.filter((part) => part.match === label),
      pieces,
    );
    if (designs.length === 0 || orders.length * designs.length > MOST) continue;
    orders = orders.flatMap((one) => designs.map((design) => decided(one, label, design)));
  }
  return orders;
}

/** None where some piece that will do has no design: an order cannot ask for that, so the search decides. */
function designsFor(parts: readonly Part[], pieces: readonly Piece[]): string[] {
  const able = pieces.filter(
    (piece) => copiesOf(piece) > 0 && parts.some((part) => part.copies > 0 && suits(part, piece)),
  );
  if (able.some((piece) => piece.design === undefined)) return [];
  return [...new Set(able.flatMap(({ design = [] }) => design))];
}

const decided = (order: Order, label: string, design: string): Order => ({
  ...order,
  parts: order.parts.map((part) => {
    if (part.match !== label) return part;
    return { ...part, designs: !part.designs || part.designs.includes(design) ? [design] : [] };
  }),
});
