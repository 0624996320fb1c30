/**
 * The steps of plans that were kept before steps were kept with them, in the order and with the numbers that their
 * makers ticked. For such plans only: they set whichever side of a cut is needed most, wanted or not.
 */
import {
  type Block,
  type Cut,
  type CutSheet,
  type CutTree,
  isCut,
  type Laid,
  type PlannedCuts,
  type Rectangle,
  type Step,
} from '../cuts.ts';
import type { Edge, Piece } from '../order.ts';
import { inRuns } from '../steps.ts';
import { fewestSettings } from './settings.ts';
import { halvesOf } from './tree.ts';

/** Cuts made alike on pieces cut alike are one step; numbers begin at 0. */
export function earlierCutSheet(pieces: readonly Piece[], { used }: Pick<PlannedCuts, 'used'>): CutSheet {
  const groups = alike(used);
  const patternOf = new Map(groups.flatMap((indices, pattern) => indices.map((one) => [one, pattern])));
  const roots = used.map(({ cuts, piece }, index) => {
    const { width, height } = pieces.find(({ id }) => id === piece)!;
    return readPiece(cuts, { x: 0, y: 0, width, height }, index);
  });
  const rank = new Map(fewestSettings(roots.flatMap(allSides)).map((distance, index) => [distance, index]));
  const steps: Step[] = [];
  let ready = roots.filter((root) => root.halves);
  while (ready.length > 0) {
    const set = distanceForMost(ready, rank);
    const { cuts, later } = cutAll(ready, set, rank);
    const laid = inRuns(cuts).map((one) => ({ ...one, pattern: patternOf.get(one.pattern)! }));
    steps.push(...grouped(laid, set, steps.length));
    ready = later;
  }
  return {
    steps,
    patterns: groups.map((indices, pattern) => ({
      pieces: indices.map((index) => used[index]!.piece),
      used: indices,
      rectangles: used[indices[0]!]!.rectangles,
      steps: steps.filter(({ patterns }) => patterns.includes(pattern)).map(({ number }) => number),
    })),
  };
}

function alike(used: PlannedCuts['used']): number[][] {
  const groups = new Map<string, number[]>();
  for (const [index, { piece, cuts }] of used.entries()) {
    const key = JSON.stringify([piece, cuts]);
    groups.set(key, [...(groups.get(key) ?? []), index]);
  }
  return [...groups.values()];
}

function grouped(laid: readonly Laid[], set: number, first: number): Step[] {
  const groups = new Map<string, Laid[]>();
  for (const one of laid) {
    const key = JSON.stringify([one.pattern, one.block, one.fence, one.kept.length]);
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()].map(([one, ...others], index) => {
    const { kind } = one!.kept[0]!.becomes;
    return {
      number: first + index,
      set,
      along: one!.fence === 'left' || one!.fence === 'right' ? 'x' : 'y',
      keeps: kind === 'more' ? 'block' : kind === 'part' ? 'part' : 'leftover',
      times: one!.kept.length * (1 + others.length),
      patterns: [one!.pattern],
      laid: [one!],
    };
  });
}

/** A block, and where it is cut the two distances at which that cut can be set and what it makes. */
interface Node {
  readonly used: number;
  readonly block: Block;
  readonly along: Cut['along'];
  readonly sides: readonly [number, number];
  readonly halves?: readonly [Node, Node];
}

function readPiece(cuts: CutTree, whole: Rectangle, used: number): Node {
  let leftovers = 0;
  const leaf = (tree: Exclude<CutTree, Cut>): Block['becomes'] => {
    if ('part' in tree) return { kind: 'part', part: tree.part, turned: tree.turned };
    return 'leftover' in tree ? { kind: 'leftover', leftover: leftovers++ } : { kind: 'waste' };
  };
  const read = (tree: CutTree, block: Rectangle): Node => {
    if (!isCut(tree)) return { used, block: { ...block, becomes: leaf(tree) }, along: 'x', sides: [0, 0] };
    const [near, far] = halvesOf(tree, block);
    const side = tree.along === 'x' ? 'width' : 'height';
    const halves = [read(tree.parts[0], near), read(tree.parts[1], far)] as const;
    const sides = [near[side], far[side]] as const;
    return { used, block: { ...block, becomes: { kind: 'more' } }, along: tree.along, sides, halves };
  };
  return read(cuts, whole);
}

const allSides = (node: Node): (readonly [number, number])[] =>
  node.halves ? [node.sides, ...node.halves.flatMap(allSides)] : [];

type Rank = ReadonlyMap<number, number>;

/** The side of a cut that is set at the fence: the one whose distance is needed most. */
function sideAtFence({ sides }: Node, rank: Rank): 0 | 1 {
  const [near, far] = [rank.get(sides[0]) ?? Infinity, rank.get(sides[1]) ?? Infinity];
  return near <= far ? 0 : 1;
}

const distanceOf = (node: Node, rank: Rank): number => node.sides[sideAtFence(node, rank)];

/** The distance at which most cuts can be made at once; of those alike the longest. */
function distanceForMost(ready: readonly Node[], rank: Rank): number {
  const counts = new Map<number, number>();
  for (const node of ready) {
    const distance = distanceOf(node, rank);
    counts.set(distance, (counts.get(distance) ?? 0) + chainLength(node, distance, rank));
  }
  return [...counts].reduce((best, one) =>
    one[1] > best[1] || (one[1] === best[1] && one[0] > best[0]) ? one : best,
  )[0];
}

function chainLength(node: Node, distance: number, rank: Rank): number {
  if (!node.halves || distanceOf(node, rank) !== distance) return 0;
  return 1 + chainLength(node.halves[0], distance, rank) + chainLength(node.halves[1], distance, rank);
}

/** Every cut at a distance, also of blocks that come up meanwhile, with its piece's place for its pattern. */
function cutAll(ready: readonly Node[], distance: number, rank: Rank): { cuts: Laid[]; later: Node[] } {
  const cuts: Laid[] = [];
  const later: Node[] = [];
  const visit = (node: Node): void => {
    if (!node.halves) return;
    if (distanceOf(node, rank) !== distance) {
      later.push(node);
      return;
    }
    const side = sideAtFence(node, rank);
    const [off, rest] = [node.halves[side], node.halves[side === 0 ? 1 : 0]];
    const { x, y, width, height } = node.block;
    const block = { x, y, width, height };
    cuts.push({
      pattern: node.used,
      block,
      fence: fenceEdge(node, side),
      kept: [off.block],
      rest: rest.block,
    });
    visit(rest);
    visit(off);
  };
  ready.forEach(visit);
  return { cuts, later };
}

function fenceEdge({ along }: Node, side: 0 | 1): Edge {
  if (along === 'x') return side === 0 ? 'left' : 'right';
  return side === 0 ? 'top' : 'bottom';
}
