/**
 * Uses what an assembly leaves of its piece, inside and around it, so that a search that was stopped early, or gave the
 * right thing up, still hands out a full piece. Knows no bounds of its own.
 */
import { type FillProblem, type FillSearch, fillLimited, type LimitedFill, NO_FILL } from './limited.ts';
import { type Assembly, copiesIn, join } from './unlimited.ts';

/** Never worse than `found`; for trimmers as long as the piece. */
export function topUp(problem: FillProblem, search: FillSearch, found: LimitedFill): LimitedFill {
  if (!found.assembly || problem.longestCut < Math.max(problem.width, problem.height)) return found;
  const filling = {
    problem,
    search,
    left: copiesLeft(problem, found.assembly),
    gained: 0,
    work: found.work,
    stopped: false,
  };
  const assembly = fillInside(filling, found.assembly, problem.width, problem.height);
  return { ...found, assembly, value: found.value + filling.gained, work: filling.work };
}

/** By part, the copies that an assembly leaves; negative where it takes too many. */
export function copiesLeft(
  { lays, copies }: Pick<FillProblem, 'lays' | 'copies'>,
  assembly: Assembly,
): number[] {
  const left = [...copies];
  for (const part of copiesIn(assembly, lays)) left[part]! -= 1;
  return left;
}

interface Filling {
  readonly problem: FillProblem;
  readonly search: FillSearch;
  left: number[];
  gained: number;
  work: number;
  stopped: boolean;
}

/** The node, with more parts where there is room: inside it first, then beside and below it, up to the given size. */
function fillInside(filling: Filling, node: Assembly, width: number, height: number): Assembly {
  if ('lay' in node) return fillAround(filling, node, width, height);
  const { along, first, second } = node;
  const one = along === 'x' ? [first.width, node.height] : [node.width, first.height];
  const other = along === 'x' ? [second.width, node.height] : [node.width, second.height];
  const inside = join(
    along,
    fillInside(filling, first, one[0]!, one[1]!),
    fillInside(filling, second, other[0]!, other[1]!),
  );
  return fillAround(filling, inside, width, height);
}

function fillAround(filling: Filling, node: Assembly, width: number, height: number): Assembly {
  const beside = fillRest(filling, width - node.width, height);
  const below = fillRest(filling, width, height - node.height);
  const better = beside.value >= below.value ? beside : below;
  if (!better.assembly) return node;
  filling.gained += better.value;
  filling.left = copiesLeft({ ...filling.problem, copies: filling.left }, better.assembly);
  return fillAround(filling, join(better === beside ? 'x' : 'y', node, better.assembly), width, height);
}

function fillRest(filling: Filling, width: number, height: number): LimitedFill {
  const { problem, search, left, work } = filling;
  const fits = (lay: FillProblem['lays'][number]): boolean =>
    left[lay.part]! > 0 && lay.width <= width && lay.height <= height;
  if (filling.stopped || !problem.lays.some(fits)) return NO_FILL;
  filling.stopped = search.shouldStop();
  const prices = left.reduce((sum, count, part) => sum + Math.max(0, count) * problem.prices[part]!, 0);
  const bound = problem.density * width * height + prices;
  const found = fillLimited({ ...problem, width, height, copies: left, bound }, search, { ...NO_FILL, work });
  filling.work = found.work;
  return found;
}
