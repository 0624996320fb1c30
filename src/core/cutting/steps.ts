/**
 * The order in which a person makes a plan's cuts at a trimmer: sheets alike together, what is wanted at the fence, and
 * the fence moved seldom. Numbers the steps; knows no words and no drawing.
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
} from './cuts.ts';
import type { Edge, Order, Piece } from './order.ts';
import { patternsOf } from './trimmer/alike.ts';
import { halvesOf } from './trimmer/tree.ts';

/** Pieces that need no cut have a pattern without steps. */
export function cutSheet(
  pieces: readonly Piece[],
  { used }: Pick<PlannedCuts, 'used'>,
  { parts }: Pick<Order, 'parts'>,
): CutSheet {
  const byId = new Map(pieces.map((piece) => [piece.id, piece]));
  const placed = new Set(parts.flatMap(({ id, pin }) => (pin && 'x' in pin ? [id] : [])));
  const groups = patternsOf(pieces, used);
  const roots = groups.map((indices, pattern) => {
    const { cuts, piece } = used[indices[0]!]!;
    const { width, height } = byId.get(piece)!;
    return readPattern(cuts, { x: 0, y: 0, width, height }, pattern, placed);
  });
  const steps = inOrder(roots).map((step, index) => numbered(step, index + 1, groups));
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

/** Settings of the fence, in order: steps of one measure that follow one another. */
export function settingsOfSteps(steps: readonly Step[]): (readonly Step[])[] {
  const settings: Step[][] = [];
  for (const step of steps) {
    const last = settings.at(-1);
    if (last?.[0]?.set === step.set) last.push(step);
    else settings.push([step]);
  }
  return settings;
}

/** A block, and where it is cut which half lies at the fence, at what measure. */
interface Node {
  readonly pattern: number;
  readonly block: Block;
  readonly cut?: {
    readonly set: number;
    readonly along: Cut['along'];
    readonly fence: Edge;
    readonly keeps: Step['keeps'];
    readonly kept: Node;
    readonly rest: Node;
  };
}

function readPattern(cuts: CutTree, whole: Rectangle, pattern: number, placed: ReadonlySet<string>): Node {
  let leftovers = 0;
  const leaf = (tree: Exclude<CutTree, Cut>): Block['becomes'] => {
    if ('part' in tree) return { kind: 'part', part: tree.part, turned: tree.turned };
    return 'leftover' in tree ? { kind: 'leftover', leftover: leftovers++ } : { kind: 'waste' };
  };
  const read = (tree: CutTree, block: Rectangle): Node => {
    if (!isCut(tree)) return { pattern, block: { ...block, becomes: leaf(tree) } };
    const { along } = tree;
    const blocks = halvesOf(tree, block);
    const halves = [read(tree.parts[0], blocks[0]), read(tree.parts[1], blocks[1])] as const;
    const side = sideAtFence(tree, blocks, placed);
    const [kept, rest] = side === 0 ? halves : [halves[1], halves[0]];
    const set = along === 'x' ? kept.block.width : kept.block.height;
    const fence = along === 'x' ? (['left', 'right'] as const)[side] : (['top', 'bottom'] as const)[side];
    const { kind } = kept.block.becomes;
    const keeps = kind === 'more' ? 'block' : kind === 'part' ? 'part' : 'leftover';
    const cut = { set, along, fence, keeps, kept, rest } as const;
    return { pattern, block: { ...block, becomes: { kind: 'more' } }, cut };
  };
  return read(cuts, whole);
}

/** What is wanted goes to the fence; of two that are, what is measured from the piece's edge, or what has no rest in it. */
function sideAtFence(
  { parts, along }: Cut,
  [near, far]: readonly [Rectangle, Rectangle],
  placed: ReadonlySet<string>,
): 0 | 1 {
  const has = (tree: CutTree, ids?: ReadonlySet<string>): boolean =>
    isCut(tree)
      ? has(tree.parts[0], ids) || has(tree.parts[1], ids)
      : 'part' in tree && (ids === undefined || ids.has(tree.part));
  if (!has(parts[1])) return 0;
  if (!has(parts[0])) return 1;
  if (placed.size > 0 && parts.some((one) => has(one, placed))) return has(parts[0], placed) ? 0 : 1;
  return isTight(parts[0], near, along) || !isTight(parts[1], far, along) ? 0 : 1;
}

/** Whether something wanted reaches from one side of the block to the other without a rest between. */
function isTight(tree: CutTree, block: Rectangle, along: Cut['along']): boolean {
  if (!isCut(tree)) return 'part' in tree;
  const [near, far] = halvesOf(tree, block);
  const tight = [isTight(tree.parts[0], near, along), isTight(tree.parts[1], far, along)];
  return tree.along === along ? tight.every(Boolean) : tight.some(Boolean);
}

type Bare = Pick<Step, 'set' | 'along' | 'keeps' | 'laid'>;

/** Sets the fence, makes every cut that can be made there, and goes on with what is left. */
function inOrder(roots: readonly Node[]): Bare[] {
  const steps: Bare[] = [];
  const left = new Map<number, number>();
  for (const root of roots) countCuts(root, left);
  let ready = roots.filter(({ cut }) => cut);
  while (ready.length > 0) {
    const set = nextSet(ready, left);
    for (let next = ready.find(({ cut }) => cut!.set === set); next; ) {
      const { along, keeps } = next.cut!;
      const { laid, later } = cutAll(ready, { set, along, keeps });
      steps.push({ set, along, keeps, laid: inRuns(laid) });
      left.set(set, left.get(set)! - laid.length);
      ready = later;
      next = ready.find(({ cut }) => cut!.set === set);
    }
  }
  return steps;
}

function countCuts({ cut }: Node, counts: Map<number, number>): void {
  if (!cut) return;
  counts.set(cut.set, (counts.get(cut.set) ?? 0) + 1);
  countCuts(cut.kept, counts);
  countCuts(cut.rest, counts);
}

/**
 * A measure that need not be set again once all that is ready for it is cut, else the one with fewest cuts to come back
 * for; of those alike the longest, since large blocks come first.
 */
function nextSet(ready: readonly Node[], left: ReadonlyMap<number, number>): number {
  const again = new Map<number, number>();
  for (const node of ready) {
    const { set } = node.cut!;
    again.set(set, (again.get(set) ?? left.get(set)!) - cutsAt(node, set));
  }
  return [...again].reduce((best, one) =>
    one[1] < best[1] || (one[1] === best[1] && one[0] > best[0]) ? one : best,
  )[0];
}

/** Cuts of a block and what comes of it that can be made one after another at a measure. */
function cutsAt({ cut }: Node, set: number): number {
  if (!cut || cut.set !== set) return 0;
  return 1 + cutsAt(cut.kept, set) + cutsAt(cut.rest, set);
}

type BareCut = Pick<Bare, 'set' | 'along' | 'keeps'>;

/** Makes every cut of a kind, also of blocks that come up meanwhile; what is left needs another. */
function cutAll(ready: readonly Node[], kind: BareCut): { laid: Laid[]; later: Node[] } {
  const laid: Laid[] = [];
  const later: Node[] = [];
  const visit = (node: Node): void => {
    const { cut } = node;
    if (!cut) return;
    if (cut.set !== kind.set || cut.along !== kind.along || cut.keeps !== kind.keeps) {
      later.push(node);
      return;
    }
    const { x, y, width, height } = node.block;
    laid.push({
      pattern: node.pattern,
      block: { x, y, width, height },
      fence: cut.fence,
      kept: [cut.kept.block],
      rest: cut.rest.block,
    });
    visit(cut.rest);
    visit(cut.kept);
  };
  ready.forEach(visit);
  return { laid, later };
}

/** Joins cuts that each go on with what the one before has left, with the same edge at the fence. */
export function inRuns(laid: readonly Laid[]): Laid[] {
  const runs: Laid[] = [];
  for (const one of laid) {
    const last = runs.at(-1);
    const goesOn =
      last && last.pattern === one.pattern && last.fence === one.fence && sameBlock(last.rest, one.block);
    if (goesOn) runs[runs.length - 1] = { ...last, kept: [...last.kept, ...one.kept], rest: one.rest };
    else runs.push(one);
  }
  return runs;
}

const sameBlock = (one: Rectangle, other: Rectangle): boolean =>
  one.x === other.x && one.y === other.y && one.width === other.width && one.height === other.height;

function numbered(step: Bare, number: number, groups: readonly (readonly number[])[]): Step {
  const times = step.laid.reduce((sum, { pattern, kept }) => sum + kept.length * groups[pattern]!.length, 0);
  return { number, ...step, times, patterns: [...new Set(step.laid.map(({ pattern }) => pattern))] };
}
