/** Rows on the shelf for what a cut leaves, still counting none. Verb: `shelveLeftovers(db, pieces)`. */
import type { RecordedPiece } from '#core/project/journal.ts';
import type { LeftoverCut, PieceCut } from '#core/stash/stash.ts';
import type { Database } from './database.ts';
import { insertOffcut } from './offcuts.ts';

/** The pieces with a row on the shelf for each leftover; those alike share one. */
export async function shelveLeftovers(db: Database, pieces: readonly PieceCut[]): Promise<RecordedPiece[]> {
  const shelved = new Map<string, number>();
  const shelve = async (design: number, { width, height, border, place }: LeftoverCut): Promise<number> => {
    const key = JSON.stringify([design, width, height, border, place]);
    const offcut =
      shelved.get(key) ?? (await insertOffcut(db, design, { width, height, border, place, note: '' }));
    shelved.set(key, offcut);
    return offcut;
  };
  const recorded: RecordedPiece[] = [];
  for (const piece of pieces) {
    const leftovers: RecordedPiece['leftovers'][number][] = [];
    for (const one of piece.leftovers) {
      leftovers.push({ ...one, offcut: await shelve(piece.piece.design, one) });
    }
    recorded.push({ ...piece, leftovers });
  }
  return recorded;
}
