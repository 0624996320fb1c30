/** Which finishes a flap of the diagonal fold can have. Knows its pointed shape, not what a finish does to the seam. */
import type { Finish } from '#shared/fold.ts';
import { printLength, type Units } from '#shared/length.ts';
import type { FinishProblem } from './fold.ts';
import type { Flap } from './recipe.ts';

/** In the reader's units; undefined when it can be cut. */
export function diagonalFinishProblem(flap: Flap, finish: Finish, units: Units): FinishProblem | undefined {
  if (finish.shape === 'pointed') return undefined;
  if (finish.shape === 'rounded') {
    const most = Math.floor(flap.score / Math.SQRT2);
    return finish.radius > 0 && finish.radius <= most
      ? undefined
      : { measure: 'radius', message: 'The radius has to be smaller than the flap.' };
  }
  if (finish.depth <= 0 || finish.depth > flap.depth) {
    const within = printLength(flap.depth, units, 'down');
    return { measure: 'depth', message: `The cut has to lie within ${within} of the score.` };
  }
  if (finish.shape === 'straight' || (finish.taper >= 0 && finish.taper <= cutEnd(flap, finish.depth) / 2))
    return undefined;
  return { measure: 'taper', message: 'The taper takes more than there is at the cut’s end.' };
}

/** How wide the flap is at a depth: it narrows by two for every one beyond its shoulders. */
const cutEnd = (flap: Flap, depth: number): number => Math.min(flap.score, 2 * (flap.depth - depth));
