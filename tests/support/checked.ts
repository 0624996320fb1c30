/** Opens checked values in tests: the value where one is due, the fields of the problems where a refusal is. */
import type { Checked } from '#shared/checked.ts';
import { inches } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';

export function sound<T>(checked: Checked<T>): T {
  if (!checked.ok)
    throw new Error(checked.problems.map(({ field, message }) => `${field}: ${message}`).join(' '));
  return checked.value;
}

export const refused = (checked: Checked<unknown>): string[] =>
  checked.ok ? [] : checked.problems.map((problem) => problem.field);

export const rect = (width: number, height: number): Size => ({
  width: inches(width),
  height: inches(height),
});

/** Where a strip comes to when it is laid from `from` downwards and turned by a right angle at each score. */
export function foldedRound(
  strip: { readonly width: number; readonly scores: readonly { readonly at: number }[] },
  from: { readonly x: number; readonly y: number },
): { x: number; y: number }[] {
  const ends = [...strip.scores.map(({ at }) => at), strip.width];
  const ways = [
    [0, 1],
    [1, 0],
    [0, -1],
    [-1, 0],
  ] as const;
  const corners = [from];
  ends.forEach((end, index) => {
    const [run, last] = [end - (ends[index - 1] ?? 0), corners.at(-1)!];
    const [x, y] = ways[index % 4]!;
    corners.push({ x: last.x + x * run, y: last.y + y * run });
  });
  return corners;
}
