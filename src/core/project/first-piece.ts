/**
 * The trial out of a plan: only the cuts that free its first envelope, everything else left whole, so that the rest can
 * still be planned otherwise. Cuts nothing that the plan would not cut.
 */
import { type CutPlan, type CutTree, isCut, type Rectangle, type UsedPiece } from '#core/cutting/cuts.ts';
import { type Order, type Piece, suits } from '#core/cutting/order.ts';
import { regret } from '#core/cutting/worth.ts';
import { ENVELOPE_PART } from './stash.ts';

export interface Trial {
  readonly order: Order;
  readonly plan: CutPlan;
}

/** Undefined where the plan has no envelope of its own project. Blocks too narrow to keep are cut up as planned. */
export function firstPiece(order: Order, pieces: readonly Piece[], plan: CutPlan): Trial | undefined {
  const index = plan.used.findIndex((used) => hasEnvelope(used));
  const piece = pieces.find(({ id }) => id === plan.used[index]?.piece);
  if (!piece) return undefined;
  const keep = order.keepAtLeast ?? 0;
  const cut = new Cutter(keep);
  const whole = { x: 0, y: 0, width: piece.width, height: piece.height };
  const cuts = cut.free(plan.used[index]!.cuts, whole);
  const used = { piece: piece.id, rectangles: cut.parts, leftovers: cut.leftovers, cuts };
  const copies = new Map<string, number>();
  for (const { part } of used.rectangles) copies.set(part, (copies.get(part) ?? 0) + 1);
  const parts = order.parts.flatMap((part) => {
    const count = copies.get(part.id);
    const { match: _, oneDesign: __, ...alone } = part;
    return count === undefined || !suits(part, piece) ? [] : [{ ...alone, copies: count }];
  });
  return { order: { ...order, parts }, plan: planOf(used, piece, plan, keep) };
}

const hasEnvelope = ({ rectangles }: UsedPiece): boolean =>
  rectangles.some(({ part }) => part === ENVELOPE_PART);

class Cutter {
  readonly parts: UsedPiece['rectangles'][number][] = [];
  readonly leftovers: Rectangle[] = [];
  private readonly keep: number;

  constructor(keep: number) {
    this.keep = keep;
  }

  /** Follows the cuts to the first envelope and leaves each block beside the way as it is. */
  free(tree: CutTree, block: Rectangle): CutTree {
    if (!isCut(tree)) return this.take(tree, block);
    const [near, far] = halves(tree.at, tree.along, block);
    const inNear = leadsToEnvelope(tree.parts[0]);
    const parts = inNear
      ? ([this.free(tree.parts[0], near), this.leave(tree.parts[1], far)] as const)
      : ([this.leave(tree.parts[0], near), this.free(tree.parts[1], far)] as const);
    return { ...tree, parts };
  }

  private leave(tree: CutTree, block: Rectangle): CutTree {
    if (Math.min(block.width, block.height) >= this.keep) {
      this.leftovers.push(block);
      return { leftover: true };
    }
    if (!isCut(tree)) return this.take(tree, block);
    const [near, far] = halves(tree.at, tree.along, block);
    return { ...tree, parts: [this.leave(tree.parts[0], near), this.leave(tree.parts[1], far)] };
  }

  private take(leaf: Exclude<CutTree, { at: number }>, block: Rectangle): CutTree {
    if ('part' in leaf) this.parts.push({ ...block, part: leaf.part, turned: leaf.turned });
    if ('leftover' in leaf) this.leftovers.push(block);
    return leaf;
  }
}

const leadsToEnvelope = (tree: CutTree): boolean =>
  isCut(tree) ? tree.parts.some(leadsToEnvelope) : 'part' in tree && tree.part === ENVELOPE_PART;

function halves(at: number, along: 'x' | 'y', block: Rectangle): [Rectangle, Rectangle] {
  const { x, y, width, height } = block;
  return along === 'x'
    ? [
        { x, y, width: at - x, height },
        { x: at, y, width: x + width - at, height },
      ]
    : [
        { x, y, width, height: at - y },
        { x, y: at, width, height: y + height - at },
      ];
}

/** No bound is claimed for it: it is a beginning, not a best. */
function planOf(used: UsedPiece, piece: Piece, plan: CutPlan, keep: number): CutPlan {
  const area = piece.width * piece.height;
  const sheet = piece.kind === 'sheet';
  return {
    ...plan,
    placed: used.rectangles.length,
    unplaced: [],
    newSheets: sheet ? 1 : 0,
    newSheetArea: sheet ? area : 0,
    offcutAreaUsed: sheet ? 0 : area,
    worthLost: regret(piece, used.leftovers, keep),
    settings: 0,
    bounds: { unplaced: 0, newSheetArea: 0 },
    proved: false,
    timeMs: 0,
    used: [used],
  };
}
