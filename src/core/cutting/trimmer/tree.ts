/** Reading a tree of cuts: what a cut divides, and the parts and leftovers a tree comes to. Judges nothing. */
import { type Cut, type CutTree, isCut, type PlacedPart, type Rectangle } from '../cuts.ts';

/** The two blocks that a cut makes, the nearer to the piece's top left corner first. */
export function halvesOf(
  { at, along }: Omit<Cut, 'parts'>,
  { x, y, width, height }: Rectangle,
): [Rectangle, Rectangle] {
  return along === 'x'
    ? [
        { x, y, width: at - x, height },
        { x: at, y, width: x + width - at, height },
      ]
    : [
        { x, y, width, height: at - y },
        { x, y: at, width, height: y + height - at },
      ];
}

/** A tree and where the block lies that it cuts. */
export type Placed = readonly [CutTree, Rectangle];

/** What a block is cut into by all its cuts along an axis that follow one another, from near to far. */
export function stripsOf(tree: CutTree, along: Cut['along'], block: Rectangle): Placed[] {
  const strips: Placed[] = [];
  const waiting: Placed[] = [[tree, block]];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    const [one, at] = next;
    if (isCut(one) && one.along === along) {
      const [near, far] = halvesOf(one, at);
      waiting.push([one.parts[1], far], [one.parts[0], near]);
    } else strips.push(next);
  }
  return strips;
}

/** In the order in which the tree comes to them. */
export function partsOf(
  tree: CutTree,
  block: Rectangle,
  found: { rectangles: PlacedPart[]; leftovers: Rectangle[] } = { rectangles: [], leftovers: [] },
): { rectangles: readonly PlacedPart[]; leftovers: readonly Rectangle[] } {
  if (isCut(tree)) {
    const [near, far] = halvesOf(tree, block);
    partsOf(tree.parts[0], near, found);
    partsOf(tree.parts[1], far, found);
  } else if ('part' in tree) found.rectangles.push({ part: tree.part, ...block, turned: tree.turned });
  else if ('leftover' in tree) found.leftovers.push(block);
  return found;
}
