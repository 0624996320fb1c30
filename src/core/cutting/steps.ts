/**
 * The order in which a person would make a plan's cuts at a trimmer: few distances from the fence, and all cuts that can
 * be made at one of them before it is changed. Data only; knows no words and no drawing.
 */
import { type Cut, type CutPlan, type CutTree, isCut, type Rectangle } from './cuts.ts';
import type { Edge, Piece } from './order.ts';
import { fewestSettings } from './settings.ts';

/** A block after a cut: to be cut further, or done. `leftover` is its index among the leftovers of its piece. */
export interface Block extends Rectangle {
  readonly becomes:
    | { readonly kind: 'more' }
    | { readonly kind: 'part'; readonly part: string; readonly turned: boolean }
    | { readonly kind: 'leftover'; readonly leftover: number }
    | { readonly kind: 'waste' };
}

/** A block laid with an edge against the fence and cut, and what stays of it cut again, as often as `off` is long. */
export interface Step {
  /** Index into the plan's `used`. */
  readonly used: number;
  readonly piece: string;
  readonly block: Rectangle;
  /** The edge of the block that goes to the fence, with the piece lying as it is drawn. */
  readonly fence: Edge;
  readonly off: readonly Block[];
  readonly rest: Block;
}

/** Everything that is cut at one distance before the next is set. */
export interface Setting {
  readonly distance: number;
  readonly steps: readonly Step[];
}

/** Settings in the order in which to make them. A part that is a whole piece needs no cut and is in none of them. */
export function cutSheet(pieces: readonly Piece[], plan: CutPlan): Setting[] {
  const roots = plan.used.map((used, index) => readPiece(used.cuts, pieceOf(pieces, used.piece), index));
  const rank = new Map(fewestSettings(roots.flatMap(allSides)).map((distance, index) => [distance, index]));
  const settings: Setting[] = [];
  let ready = roots.filter((root) => root.halves);
  while (ready.length > 0) {
    const distance = distanceForMost(ready, rank);
    const { steps, later } = cutAll(ready, distance, rank);
    settings.push({
      distance,
      steps: inRuns(steps).map((step) => ({ ...step, piece: plan.used[step.used]!.piece })),
    });
    ready = later;
  }
  return settings;
}

function pieceOf(pieces: readonly Piece[], id: string): Piece {
  const piece = pieces.find((one) => one.id === id);
  if (!piece) throw new Error(`invalid piece: ${id}`);
  return piece;
}

/** A block, and where it is cut the two distances at which that cut can be set and what it makes. */
interface Node {
  readonly used: number;
  readonly block: Block;
  readonly along: 'x' | 'y';
  readonly sides: readonly [number, number];
  readonly halves?: readonly [Node, Node];
}

function readPiece(cuts: CutTree, { width, height }: Piece, used: number): Node {
  let leftovers = 0;
  const leaf = (tree: Exclude<CutTree, Cut>): Block['becomes'] => {
    if ('part' in tree) return { kind: 'part', part: tree.part, turned: tree.turned };
    return 'leftover' in tree ? { kind: 'leftover', leftover: leftovers++ } : { kind: 'waste' };
  };
  const read = (tree: CutTree, block: Rectangle): Node => {
    if (!isCut(tree)) return { used, block: { ...block, becomes: leaf(tree) }, along: 'x', sides: [0, 0] };
    const [near, far] = divide(tree, block);
    const sides =
      tree.along === 'x' ? ([near.width, far.width] as const) : ([near.height, far.height] as const);
    const halves = [read(tree.parts[0], near), read(tree.parts[1], far)] as const;
    return { used, block: { ...block, becomes: { kind: 'more' } }, along: tree.along, sides, halves };
  };
  return read(cuts, { x: 0, y: 0, width, height });
}

function divide({ at, along }: Cut, { x, y, width, height }: Rectangle): [Rectangle, Rectangle] {
  if (along === 'x')
    return [
      { x, y, width: at - x, height },
      { x: at, y, width: x + width - at, height },
    ];
  return [
    { x, y, width, height: at - y },
    { x, y: at, width, height: y + height - at },
  ];
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

/** The distance at which most cuts can be made at once; of those alike the longest, since large blocks come first. */
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

type BareStep = Omit<Step, 'piece'>;

/** Makes every cut at a distance, also of blocks that come up meanwhile; what is left needs another. */
function cutAll(ready: readonly Node[], distance: number, rank: Rank): { steps: BareStep[]; later: Node[] } {
  const steps: BareStep[] = [];
  const later: Node[] = [];
  const visit = (node: Node): void => {
    if (!node.halves) return;
    if (distanceOf(node, rank) !== distance) {
      later.push(node);
      return;
    }
    const side = sideAtFence(node, rank);
    const [off, rest] = [node.halves[side], node.halves[side === 0 ? 1 : 0]];
    steps.push({
      used: node.used,
      block: bare(node.block),
      fence: fenceEdge(node, side),
      off: [off.block],
      rest: rest.block,
    });
    visit(rest);
    visit(off);
  };
  ready.forEach(visit);
  return { steps, later };
}

const bare = ({ x, y, width, height }: Rectangle): Rectangle => ({ x, y, width, height });

function fenceEdge({ along }: Node, side: 0 | 1): Edge {
  if (along === 'x') return side === 0 ? 'left' : 'right';
  return side === 0 ? 'top' : 'bottom';
}

/** Joins cuts that each go on with what the one before has left, with the same edge at the fence. */
function inRuns(steps: readonly BareStep[]): BareStep[] {
  const runs: BareStep[] = [];
  for (const step of steps) {
    const last = runs.at(-1);
    const goesOn =
      last && last.used === step.used && last.fence === step.fence && sameBlock(last.rest, step.block);
    if (goesOn) runs[runs.length - 1] = { ...last, off: [...last.off, ...step.off], rest: step.rest };
    else runs.push(step);
  }
  return runs;
}

const sameBlock = (one: Rectangle, other: Rectangle): boolean =>
  one.x === other.x && one.y === other.y && one.width === other.width && one.height === other.height;
