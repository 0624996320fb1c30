/** The most that a tiny piece can give, by trying every cut and every way to share out the copies. Slow and plain. */

import type { FillGoal, FillPart } from '#core/cutting/one-piece/wants.ts';
import { mayTurn, type Piece } from '#core/cutting/order.ts';

/** Copies must be given. Blocks are cut at whole lengths only, which loses nothing (normal patterns). */
export function bestOfAll(
  piece: Piece,
  parts: readonly FillPart[],
  goal: FillGoal,
  longestCut = Number.POSITIVE_INFINITY,
): number {
  const known = new Map<string, number>();
  const best = (width: number, height: number, copies: readonly number[]): number => {
    const key = `${width},${height},${copies}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    let most = 0;
    parts.forEach((part, index) => {
      if (copies[index]! > 0 && lies(part, piece, width, height)) most = Math.max(most, worthOf(part, goal));
    });
    for (const here of shares(copies)) {
      const there = copies.map((count, index) => count - here[index]!);
      for (let x = 1; height <= longestCut && x < width; x += 1) {
        most = Math.max(most, best(x, height, here) + best(width - x, height, there));
      }
      for (let y = 1; width <= longestCut && y < height; y += 1) {
        most = Math.max(most, best(width, y, here) + best(width, height - y, there));
      }
    }
    known.set(key, most);
    return most;
  };
  return best(
    piece.width,
    piece.height,
    parts.map((part) => part.copies!),
  );
}

const lies = (part: FillPart, piece: Piece, width: number, height: number): boolean =>
  (part.width === width && part.height === height) ||
  (part.height === width && part.width === height && mayTurn({ ...part, copies: 1 }, piece));

const worthOf = (part: FillPart, goal: FillGoal): number => {
  if (goal === 'count') return 1;
  return goal === 'area' ? part.width * part.height : (part.value ?? 0);
};

/** Every way to give some of the copies to one side. */
function shares(copies: readonly number[]): number[][] {
  return copies.reduce<number[][]>(
    (lists, count) =>
      lists.flatMap((list) => Array.from({ length: count + 1 }, (_, some) => [...list, some])),
    [[]],
  );
}
