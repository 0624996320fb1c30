/** Sheets and offcuts seen alike, as pieces that may be cut. Verb: `loadPiece(db, ref)`. */
import { type Piece, type PieceRef, pieceOfOffcut, pieceOfSheet } from '#core/stash/stash.ts';
import type { Database } from './database.ts';
import { readDesign } from './designs.ts';
import { readOffcut } from './offcuts.ts';

/** Also when none of it is left; undefined when there never was such a piece. */
export async function loadPiece(db: Database, { design, offcut }: PieceRef): Promise<Piece | undefined> {
  if (offcut === null) {
    const found = await readDesign(db, design);
    return found && pieceOfSheet(found);
  }
  const found = await readOffcut(db, offcut);
  return found && found.design.id === design ? pieceOfOffcut(found) : undefined;
}
