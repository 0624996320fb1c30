/** How much of a piece its parts leave to spare on either side. Knows one cut-up piece at a time. */
import { type CutTree, isCut } from '../cuts.ts';
import { halvesOf } from './tree.ts';

interface Sides {
  readonly width: number;
  readonly height: number;
}

/**
 * What the piece could be narrower and lower by and still give all its parts by the same cuts, in the unit of its sides:
 * leftovers and waste shrink, parts do not.
 */
export function spareOf(cuts: CutTree, piece: Sides): Sides {
  const needs = neededBy(cuts, { x: 0, y: 0, width: piece.width, height: piece.height });
  return { width: piece.width - needs.width, height: piece.height - needs.height };
}

function neededBy(tree: CutTree, block: Parameters<typeof halvesOf>[1]): Sides {
  if (!isCut(tree)) return 'part' in tree ? block : { width: 0, height: 0 };
  const halves = halvesOf(tree, block);
  const [near, far] = [neededBy(tree.parts[0], halves[0]), neededBy(tree.parts[1], halves[1])];
  return tree.along === 'x'
    ? { width: near.width + far.width, height: Math.max(near.height, far.height) }
    : { width: Math.max(near.width, far.width), height: near.height + far.height };
}
