/**
 * From a plan back to what the stash writes down: each piece with its parts, its leftovers and where they go. Knows the
 * order's names for parts and pieces; judges no plan.
 */
import { type CutTree, isCut } from '#core/cutting/cuts.ts';
import { rectangleOf } from '#core/stash/measured.ts';
import { ENVELOPE_PART, type PieceCut, type PieceRef } from '#core/stash/stash.ts';
import { length } from '#shared/length.ts';
import { type BatchOrder, isBlank } from './identity.ts';
import type { FoundPlan } from './planned.ts';

/** `placeOf` says where leftovers of a piece are put. Throws on a plan that names a piece the order did not have. */
export function pieceCuts(
  { plan, pieces, order, project }: Pick<FoundPlan, 'plan' | 'pieces' | 'order' | 'project'>,
  placeOf: (piece: PieceRef) => string,
): PieceCut[] {
  const called = storedNames(order, project);
  return plan.used.map((used) => {
    const piece = pieces.find(({ id }) => id === used.piece);
    if (!piece) throw new Error(`invalid plan: it names the piece ${used.piece}`);
    const { ref } = piece;
    const bordered = piece.edges?.includes('bottom') ?? false;
    return {
      piece: ref,
      width: length(piece.width),
      height: length(piece.height),
      parts: used.rectangles.map((one) => ({
        ...rectangleOf(one),
        ...(called.get(one.part) ?? { part: one.part }),
        turned: one.turned,
      })),
      leftovers: used.leftovers.map((one) => ({
        ...rectangleOf(one),
        border: bordered && one.y + one.height === piece.height,
        place: placeOf(ref),
      })),
      cuts: renamed(used.cuts, called),
    };
  });
}

interface StoredName {
  readonly part: string;
  readonly project?: number;
}

/** Blanks of every project are envelopes to the journal; what it does not know keeps its name. */
const storedNames = ({ parts }: BatchOrder, own: number): Map<string, StoredName> =>
  new Map(
    parts
      .filter(isBlank)
      .flatMap(({ id, of: { project, piece } }) =>
        piece > 0
          ? []
          : [[id, project === own ? { part: ENVELOPE_PART } : { part: ENVELOPE_PART, project }] as const],
      ),
  );

function renamed(tree: CutTree, called: ReadonlyMap<string, StoredName>): CutTree {
  if (isCut(tree))
    return { ...tree, parts: [renamed(tree.parts[0], called), renamed(tree.parts[1], called)] };
  return 'part' in tree ? { part: called.get(tree.part)?.part ?? tree.part, turned: tree.turned } : tree;
}
