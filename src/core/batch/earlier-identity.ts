/**
 * What parts and pieces stand for in plans that were kept before that was kept with them: read off their names, as these
 * were minted then. For such plans only.
 */
import type { Order, Part, Piece } from '#core/cutting/order.ts';
import { type Batch, blankName, partNames } from './batch.ts';
import type { BatchOrder, OfferedPiece, OrderedPart } from './identity.ts';

/** Parts and pieces that say what they stand for are left as they are. Throws on a part that the batch did not ask for. */
export function identified(
  batch: Batch,
  { order, pieces }: { readonly order: Order; readonly pieces: readonly Piece[] },
): { readonly order: BatchOrder; readonly pieces: readonly OfferedPiece[] } {
  return {
    order: { ...order, parts: identifiedParts(batch, order.parts) },
    pieces: pieces.map(identifiedPiece),
  };
}

/** Folds had one blank or two. */
function identifiedParts({ blanks, parts: typed }: Batch, parts: readonly Part[]): OrderedPart[] {
  const known = new Map<string, OrderedPart['of']>([
    ...blanks.flatMap(({ project }, index) =>
      [0, 1].map((piece) => [blankName(index === 0, project, piece), { project, piece }] as const),
    ),
    ...partNames(typed).map((name, index) => [name, { typed: index }] as const),
  ]);
  return parts.map((part) => {
    if (isOrdered(part)) return part;
    const of = known.get(part.id);
    if (!of) throw new Error(`invalid plan: its batch has no part ${part.id}`);
    return { ...part, of };
  });
}

const isOrdered = (part: Part): part is OrderedPart => 'of' in part;

const OFFCUT = 'offcut-';

function identifiedPiece(piece: Piece): OfferedPiece {
  if (isOffered(piece)) return piece;
  const { id, design } = piece;
  const offcut = id.startsWith(OFFCUT) ? Number(id.slice(OFFCUT.length)) : null;
  return { ...piece, ref: { design: Number(design), offcut } };
}

const isOffered = (piece: Piece): piece is OfferedPiece => 'ref' in piece;
