/**
 * What a piece of paper is worth to the shelf, and what a choice costs it. Knows sizes only; the planner's third goal
 * and the search over the stash use the same two functions.
 */
import type { Sides } from './order.ts';

/**
 * V = width · height · shorter side, 0 where the shorter side is under the keeping size; it never grows under a cut.
 * In cubic units of the sides, as a floating number: with lengths of 25 nm it passes 2⁵³, so compare with a tolerance.
 */
export function worth({ width, height }: Sides, keepAtLeast = 0): number {
  const shorter = Math.min(width, height);
  return shorter < keepAtLeast ? 0 : width * height * shorter;
}

/** Where `taken` lies in the corner of a block: whether more is kept if the strip beside it runs the block's whole height. */
export function keepsMoreBeside(block: Sides, taken: Sides, keepAtLeast: number): boolean {
  const beside = block.width - taken.width;
  const below = block.height - taken.height;
  const of = (width: number, height: number): number => worth({ width, height }, keepAtLeast);
  return (
    of(beside, block.height) + of(taken.width, below) >= of(block.width, below) + of(beside, taken.height)
  );
}

/** What is lost to the shelf when `piece` is cut and `leftovers` go back. */
export const regret = (piece: Sides, leftovers: readonly Sides[], keepAtLeast = 0): number =>
  leftovers.reduce((left, one) => left - worth(one, keepAtLeast), worth(piece, keepAtLeast));
