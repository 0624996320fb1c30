/**
 * What is different now from when a plan was made: pieces gone or put right, blanks of another size, blanks taken
 * meanwhile. Compares values; where it finds anything the plan is not to be cut.
 */
import type { CutPlan } from '#core/cutting/cuts.ts';
import { foldOf } from '#core/envelope/folds.ts';
import type { ProjectSoFar } from '#core/project/journal.ts';
import { missingBlanks } from '#core/project/next.ts';
import type { PieceRef, Piece as ShelfPiece } from '#core/stash/stash.ts';
import { length } from '#shared/length.ts';
import type { Size } from '#shared/size.ts';
import type { Batch } from './batch.ts';
import { isBlank, type OfferedPiece } from './identity.ts';
import { type Cutting, toPiece } from './to-order.ts';

export type Change =
  | { readonly kind: 'fewer'; readonly piece: PieceRef; readonly wanted: number; readonly left: number }
  | { readonly kind: 'other piece'; readonly piece: PieceRef }
  | { readonly kind: 'other blank'; readonly project: number; readonly was: Size; readonly now: Size | null }
  | { readonly kind: 'fewer missing'; readonly project: number; readonly was: number; readonly now: number };

export interface Planned extends Cutting {
  readonly batch: Batch;
  readonly plan: CutPlan;
}

/** `pieces` are those the plan uses, as they are now, also when none is left; others are passed over. */
export function changesSince(
  planned: Planned,
  now: { readonly pieces: readonly ShelfPiece[]; readonly projects: readonly ProjectSoFar[] },
): Change[] {
  const shelf = new Map(now.pieces.map((piece) => [toPiece(piece).id, piece]));
  const used = planned.plan.used.map((one) => one.piece);
  const pieces = planned.pieces
    .filter(({ id }) => used.includes(id))
    .flatMap((piece) => {
      const wanted = used.filter((id) => id === piece.id).length;
      return changeOf(piece, wanted, shelf.get(piece.id)) ?? [];
    });
  return [...pieces, ...blankChanges(planned, now.projects)];
}

/** Plans from before borders were told to the planner say nothing of them. */
function changeOf(before: OfferedPiece, wanted: number, now: ShelfPiece | undefined): Change | undefined {
  const { ref: piece, copies: _, keep: __, ...as } = before;
  const left = now?.count ?? 0;
  if (!now || left < wanted) return { kind: 'fewer', piece, wanted, left };
  const { ref: ___, copies: ____, border, ...rest } = toPiece(now);
  const is = before.border === undefined ? rest : { ...rest, ...(border && { border }) };
  const alike = JSON.stringify(sorted(as)) === JSON.stringify(sorted(is));
  return alike ? undefined : { kind: 'other piece', piece };
}

const sorted = (piece: object): [string, unknown][] =>
  Object.entries(piece).sort(([one], [other]) => (one < other ? -1 : 1));

function blankChanges({ batch, order }: Planned, projects: readonly ProjectSoFar[]): Change[] {
  return batch.blanks.flatMap(({ project: id, missing }): Change[] => {
    const full = projects.find(({ project }) => project.id === id);
    const part = order.parts.find((one) => isBlank(one) && one.of.project === id && one.of.piece === 0);
    if (!full || !part) return [];
    const was = { width: length(part.width), height: length(part.height) };
    const { recipe, quantity } = full.project;
    const now = recipe ? foldOf(recipe).blanks(recipe)[0]! : null;
    if (now?.width !== was.width || now.height !== was.height)
      return [{ kind: 'other blank', project: id, was, now }];
    const lacking = missingBlanks(quantity, full.envelopes);
    return lacking < missing ? [{ kind: 'fewer missing', project: id, was: missing, now: lacking }] : [];
  });
}
