/** Reading a tree of cuts: what a cut divides, and the parts and leftovers a tree comes to. Judges nothing. */
import { type Cut, type CutTree, isCut, type PlacedPart, type Rectangle } from './cuts.ts';

/** The two blocks that a cut makes, the nearer to the piece's top left corner first. */
export function halvesOf({ at, along }: Cut, { x, y, width, height }: Rectangle): [Rectangle, Rectangle] {
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

/** In the order in which the tree comes to them. */
export function partsOf(
  tree: CutTree,
  block: Rectangle,
): { rectangles: readonly PlacedPart[]; leftovers: readonly Rectangle[] } {
  if (isCut(tree)) {
    const halves = halvesOf(tree, block);
    const [near, far] = [partsOf(tree.parts[0], halves[0]), partsOf(tree.parts[1], halves[1])];
    return {
      rectangles: [...near.rectangles, ...far.rectangles],
      leftovers: [...near.leftovers, ...far.leftovers],
    };
  }
  if ('part' in tree)
    return { rectangles: [{ part: tree.part, ...block, turned: tree.turned }], leftovers: [] };
  return { rectangles: [], leftovers: 'leftover' in tree ? [block] : [] };
}
