/**
 * Uses what an assembly leaves of its piece beside and below it, so that a search that was stopped early, or gave the
 * right thing up, still hands out a full piece. Knows no bounds of its own.
 */
import { type FillProblem, type FillSearch, fillLimited, type LimitedFill, NO_FILL } from './limited.ts';
import { type Assembly, join } from './unlimited.ts';

/** Never worse than `found`; for trimmers as long as the piece. */
export function topUp(problem: FillProblem, search: FillSearch, found: LimitedFill): LimitedFill {
  if (!found.assembly || problem.longestCut < Math.max(problem.width, problem.height)) return found;
  const { width, height } = found.assembly;
  const copies = copiesLeft(problem, found.assembly);
  const beside = fillRest({ ...problem, copies, width: problem.width - width }, search, found);
  const below = fillRest({ ...problem, copies, height: problem.height - height }, search, found);
  const better = beside.value >= below.value ? beside : below;
  if (!better.assembly) return { ...found, work: better.work };
  const along = better === beside ? 'x' : 'y';
  const assembly = join(along, found.assembly, better.assembly);
  return topUp(problem, search, { ...found, assembly, value: found.value + better.value, work: better.work });
}

/** By part, what the assembly leaves; may be negative where it takes too many. */
export function copiesLeft(
  { lays, copies }: Pick<FillProblem, 'lays' | 'copies'>,
  assembly: Assembly,
): number[] {
  const left = [...copies];
  const count = (node: Assembly): void => {
    if ('lay' in node) left[lays[node.lay]!.part]! -= 1;
    else [node.first, node.second].forEach(count);
  };
  count(assembly);
  return left;
}

function fillRest(rest: FillProblem, search: FillSearch, { work }: LimitedFill): LimitedFill {
  const some = rest.lays.some(
    ({ part, width, height }) => rest.copies[part]! > 0 && width <= rest.width && height <= rest.height,
  );
  if (!some) return { ...NO_FILL, work };
  const prices = rest.copies.reduce((sum, count, part) => sum + Math.max(0, count) * rest.prices[part]!, 0);
  const bound = rest.density * rest.width * rest.height + prices;
  return fillLimited({ ...rest, bound }, search, { ...NO_FILL, work });
}
