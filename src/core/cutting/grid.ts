/** The coarsest grid on which given lengths lie. Knows whole numbers only. */

/** The greatest common divisor of whole lengths from 0 on; 1 where there is none above 0. */
export const gridOf = (lengths: readonly number[]): number => lengths.reduce(divisor, 0) || 1;

function divisor(one: number, other: number): number {
  let [large, small] = [one, other];
  while (small > 0) [large, small] = [small, large % small];
  return large;
}
