/** Random codes of parts, by which the same parts are known again in whatever order. Knows no pattern. */
import type { Chance } from './random.ts';

/** Below 2³², so that sums of thousands stay exact. */
export const codesFor = (parts: number, random: Chance): Float64Array =>
  Float64Array.from({ length: parts }, () => Math.floor(random.next() * 2 ** 32));

/** Lists of parts with the same sum are taken for the same. */
export function sumOfCodes(codes: Float64Array, parts: Int32Array): number {
  let sum = 0;
  for (const part of parts) sum += codes[part]!;
  return sum;
}
