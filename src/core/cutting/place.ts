/**
 * Lays an assembly of parts into its piece: the tree of cuts, the parts in place and what is left. Knows the trimmer and
 * the keeping size, but not how the assembly was found.
 */
import type { CutTree, PlacedPart, Rectangle, UsedPiece } from './cuts.ts';
import type { Assembly } from './unlimited.ts';
import { worth } from './worth.ts';

/** What a lay of the assembly stands for, in the caller's lengths. */
export interface Placing {
  readonly lays: readonly { readonly id: string; readonly turned: boolean }[];
  /** The caller's lengths in one of the assembly's. */
  readonly grid: number;
  readonly longestCut: number;
  readonly keepAtLeast: number;
}

/** The assembly goes to the top left corner; what it leaves is cut so that the shelf loses least. */
export function placeAssembly(
  assembly: Assembly | undefined,
  piece: { readonly id: string; readonly width: number; readonly height: number },
  placing: Placing,
): UsedPiece {
  const placed: Placed = { ...placing, rectangles: [], leftovers: [] };
  const whole = { x: 0, y: 0, width: piece.width, height: piece.height };
  const cuts = assembly ? placeIn(placed, assembly, whole) : rest(placed, whole);
  return { piece: piece.id, rectangles: placed.rectangles, leftovers: placed.leftovers, cuts };
}

interface Placed extends Placing {
  readonly rectangles: PlacedPart[];
  readonly leftovers: Rectangle[];
}

function placeIn(placed: Placed, assembly: Assembly, block: Rectangle): CutTree {
  const width = assembly.width * placed.grid;
  const height = assembly.height * placed.grid;
  if (width < block.width && (height === block.height || trimsSideFirst(placed, block, width, height))) {
    return cut(placed, block, 'x', width, (near) => placeIn(placed, assembly, near), rest);
  }
  if (height < block.height) {
    return cut(placed, block, 'y', height, (near) => placeIn(placed, assembly, near), rest);
  }
  if ('lay' in assembly) return leaf(placed, assembly.lay, block);
  const { along, first, second } = assembly;
  const at = (along === 'x' ? first.width : first.height) * placed.grid;
  return cut(
    placed,
    block,
    along,
    at,
    (near) => placeIn(placed, first, near),
    (_, far) => placeIn(placed, second, far),
  );
}

/** Whether the strip beside is to run the whole height, where a block is trimmed both ways. */
function trimsSideFirst(placed: Placed, block: Rectangle, width: number, height: number): boolean {
  const { longestCut, keepAtLeast } = placed;
  if (block.height > longestCut || width > longestCut) return false;
  if (block.width > longestCut || height > longestCut) return true;
  const beside = block.width - width;
  const below = block.height - height;
  const sideFirst =
    worth({ width: beside, height: block.height }, keepAtLeast) +
    worth({ width, height: below }, keepAtLeast);
  const belowFirst =
    worth({ width: block.width, height: below }, keepAtLeast) + worth({ width: beside, height }, keepAtLeast);
  return sideFirst >= belowFirst;
}

function cut(
  placed: Placed,
  block: Rectangle,
  along: 'x' | 'y',
  first: number,
  fillNear: (near: Rectangle) => CutTree,
  fillFar: (placed: Placed, far: Rectangle) => CutTree,
): CutTree {
  const near = along === 'x' ? { ...block, width: first } : { ...block, height: first };
  const far =
    along === 'x'
      ? { ...block, x: block.x + first, width: block.width - first }
      : { ...block, y: block.y + first, height: block.height - first };
  return { at: along === 'x' ? far.x : far.y, along, parts: [fillNear(near), fillFar(placed, far)] };
}

function leaf(placed: Placed, lay: number, block: Rectangle): CutTree {
  const { id: part, turned } = placed.lays[lay]!;
  placed.rectangles.push({ part, ...block, turned });
  return { part, turned };
}

function rest(placed: Placed, block: Rectangle): CutTree {
  if (Math.min(block.width, block.height) < placed.keepAtLeast) return { waste: true };
  placed.leftovers.push(block);
  return { leftover: true };
}
