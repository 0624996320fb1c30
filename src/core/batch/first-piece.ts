/**
 * The trial out of a plan: only the cuts that free its first envelope, everything else left whole, so that the rest can
 * still be planned otherwise. Cuts nothing that the plan would not cut.
 */
import { type CutPlan, type CutTree, isCut, type Rectangle, type UsedPiece } from '#core/cutting/cuts.ts';
import type { Order, Piece } from '#core/cutting/order.ts';
import { cutSheet } from '#core/cutting/steps.ts';
import { halvesOf } from '#core/cutting/trimmer/tree.ts';
import { trimmer } from '#core/cutting/trimmer/trimmer.ts';
import { regret } from '#core/cutting/worth.ts';
import { type BatchOrder, isBlank } from './identity.ts';
import type { FoundPlan } from './planned.ts';

export interface Trial {
  readonly order: BatchOrder;
  readonly plan: CutPlan;
}

/**
 * Undefined where the plan has no whole envelope of its own project; one of two pieces is cut from one design. Blocks too
 * narrow to keep are cut up as planned.
 */
export function firstPiece({
  order,
  pieces,
  plan,
  project,
}: Pick<FoundPlan, 'order' | 'pieces' | 'plan' | 'project'>): Trial | undefined {
  const byId = new Map(pieces.map((piece) => [piece.id, piece]));
  const own = order.parts.filter((part) => isBlank(part) && part.of.project === project);
  const wanted = own.map(({ id }) => id);
  const sources = sourcesOf(plan, wanted, (used) => byId.get(used.piece)?.design);
  if (!sources) return undefined;
  const trim = trimmer(order);
  const used = [...new Set(sources.values())].map((one) => {
    const piece = byId.get(one.piece)!;
    const cut = new Cutter(order.keepAtLeast ?? 0);
    const whole = { x: 0, y: 0, width: piece.width, height: piece.height };
    const cuts = cut.free(
      one.cuts,
      whole,
      wanted.filter((id) => sources.get(id) === one),
    );
    const freed = { piece: one.piece, rectangles: cut.parts, leftovers: cut.leftovers, cuts };
    return trim(freed, piece);
  });
  const placed = used.flatMap(({ rectangles }) => rectangles.map(({ part }) => part));
  const parts = order.parts.flatMap((part) => {
    const copies = placed.filter((id) => id === part.id).length;
    const { match: _, oneDesign: __, ...alone } = part;
    return copies === 0 ? [] : [{ ...alone, copies }];
  });
  return { order: { ...order, parts }, plan: planOf(used, byId, plan, order) };
}

/** Which piece of the plan each blank of the first envelope comes from, all of one design. */
function sourcesOf(
  { used }: CutPlan,
  wanted: readonly string[],
  designOf: (used: UsedPiece) => string | undefined,
): Map<string, UsedPiece> | undefined {
  const has = (one: UsedPiece, id: string): boolean => one.rectangles.some(({ part }) => part === id);
  for (const first of used.filter((one) => wanted.length > 0 && has(one, wanted[0]!))) {
    const alike = [first, ...used.filter((one) => one !== first && designOf(one) === designOf(first))];
    const sources = wanted.map((id) => [id, alike.find((one) => has(one, id))] as const);
    if (sources.every(([, one]) => one !== undefined)) return new Map(sources as [string, UsedPiece][]);
  }
  return undefined;
}

class Cutter {
  readonly parts: UsedPiece['rectangles'][number][] = [];
  readonly leftovers: Rectangle[] = [];
  private readonly keep: number;

  constructor(keep: number) {
    this.keep = keep;
  }

  /** Follows the cuts to the first copy of each wanted part and leaves each block beside the way as it is. */
  free(tree: CutTree, block: Rectangle, wanted: readonly string[]): CutTree {
    if (!isCut(tree)) return this.take(tree, block);
    const [near, far] = halvesOf(tree, block);
    const inNear = wanted.filter((id) => leadsTo(tree.parts[0], id));
    const inFar = wanted.filter((id) => !inNear.includes(id));
    return { ...tree, parts: [this.go(tree.parts[0], near, inNear), this.go(tree.parts[1], far, inFar)] };
  }

  private go(tree: CutTree, block: Rectangle, wanted: readonly string[]): CutTree {
    return wanted.length > 0 ? this.free(tree, block, wanted) : this.leave(tree, block);
  }

  private leave(tree: CutTree, block: Rectangle): CutTree {
    if (Math.min(block.width, block.height) >= this.keep) {
      this.leftovers.push(block);
      return { leftover: true };
    }
    if (!isCut(tree)) return this.take(tree, block);
    const [near, far] = halvesOf(tree, block);
    return { ...tree, parts: [this.leave(tree.parts[0], near), this.leave(tree.parts[1], far)] };
  }

  private take(leaf: Exclude<CutTree, { at: number }>, block: Rectangle): CutTree {
    if ('part' in leaf) this.parts.push({ ...block, part: leaf.part, turned: leaf.turned });
    if ('leftover' in leaf) this.leftovers.push(block);
    return leaf;
  }
}

const leadsTo = (tree: CutTree, part: string): boolean =>
  isCut(tree) ? tree.parts.some((half) => leadsTo(half, part)) : 'part' in tree && tree.part === part;

/** No bound is claimed for it: it is a beginning, not a best. */
function planOf(
  used: readonly UsedPiece[],
  byId: ReadonlyMap<string, Piece>,
  plan: CutPlan,
  { parts, keepAtLeast = 0 }: Order,
): CutPlan {
  const areaOf = (kind: Piece['kind']): number =>
    used
      .map((one) => byId.get(one.piece)!)
      .reduce((sum, piece) => sum + (piece.kind === kind ? piece.width * piece.height : 0), 0);
  return {
    ...plan,
    placed: used.reduce((sum, { rectangles }) => sum + rectangles.length, 0),
    unplaced: [],
    newSheets: used.filter((one) => byId.get(one.piece)!.kind === 'sheet').length,
    newSheetArea: areaOf('sheet'),
    offcutAreaUsed: areaOf('offcut'),
    worthLost: used.reduce((sum, one) => sum + regret(byId.get(one.piece)!, one.leftovers, keepAtLeast), 0),
    bounds: { unplaced: 0, newSheetArea: 0 },
    proved: false,
    timeMs: 0,
    used,
    ...cutSheet([...byId.values()], { used }, { parts }),
  };
}
