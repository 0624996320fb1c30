/**
 * Lays an assembly of parts into its piece: the tree of cuts, the parts in place and what is left. Knows the trimmer and
 * the keeping size, but not how the assembly was found.
 */
import type { CutTree, PlacedPart, Rectangle, UsedPiece } from '../cuts.ts';
import type { Sides } from '../order.ts';
import { halvesOf } from '../trimmer/tree.ts';
import { keepsMoreBeside } from '../worth.ts';
import type { Assembly } from './unlimited.ts';

/** What a lay of the assembly stands for, in the caller's lengths. */
export interface Placing {
  readonly lays: readonly { readonly id: string; readonly turned: boolean }[];
  /** The caller's lengths in one of the assembly's. */
  readonly grid: number;
  readonly longestCut: number;
  readonly keepAtLeast: number;
}

/** The assembly goes to the top left corner; what it leaves is cut so that the shelf loses least. Throws if it can't. */
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
  const again = (near: Rectangle): CutTree => placeIn(placed, assembly, near);
  const step = nextStep(assembly, { width, height }, block, placed.longestCut);
  if (
    step === 'beside' ||
    (step === 'either' && keepsMoreBeside(block, { width, height }, placed.keepAtLeast))
  ) {
    return cut(block, 'x', width, again, (far) => rest(placed, far));
  }
  if (step === 'below' || step === 'either')
    return cut(block, 'y', height, again, (far) => rest(placed, far));
  if (step === 'stuck') throw new Error(`invalid assembly: ${width} × ${height}`);
  if ('lay' in assembly) return leaf(placed, assembly.lay, block);
  const { along, first, second } = assembly;
  return cut(
    block,
    along,
    (along === 'x' ? first.width : first.height) * placed.grid,
    (near) => placeIn(placed, first, near),
    (far) => placeIn(placed, second, far),
  );
}

/** Whether a trimmer can cut the assembly out of a block, leaving trims inside it where it is too long to trim. */
export function canCutOut(assembly: Assembly, block: Sides, longestCut: number): boolean {
  const step = nextStep(assembly, assembly, block, longestCut);
  const { width, height } = block;
  if (step === 'beside' || step === 'either')
    return canCutOut(assembly, { width: assembly.width, height }, longestCut);
  if (step === 'below') return canCutOut(assembly, { width, height: assembly.height }, longestCut);
  if (step === 'stuck' || 'lay' in assembly) return step === 'open';
  const { along, first, second } = assembly;
  const near = along === 'x' ? { width: first.width, height } : { width, height: first.height };
  const far =
    along === 'x' ? { width: width - first.width, height } : { width, height: height - first.height };
  return canCutOut(first, near, longestCut) && canCutOut(second, far, longestCut);
}

/** Which trim comes next; `open` when the assembly itself is to be taken apart, or is a part in its place. */
function nextStep(
  assembly: Assembly,
  { width, height }: Sides,
  block: Sides,
  longestCut: number,
): 'beside' | 'below' | 'either' | 'open' | 'stuck' {
  const beside = width < block.width && block.height <= longestCut;
  const below = height < block.height && block.width <= longestCut;
  if (beside && below) return 'either';
  if (beside) return 'beside';
  if (below) return 'below';
  if ('lay' in assembly) return width === block.width && height === block.height ? 'open' : 'stuck';
  return (assembly.along === 'x' ? block.height : block.width) <= longestCut ? 'open' : 'stuck';
}

function cut(
  block: Rectangle,
  along: 'x' | 'y',
  first: number,
  fillNear: (near: Rectangle) => CutTree,
  fillFar: (far: Rectangle) => CutTree,
): CutTree {
  const at = block[along] + first;
  const [near, far] = halvesOf({ at, along }, block);
  return { at, along, parts: [fillNear(near), fillFar(far)] };
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
