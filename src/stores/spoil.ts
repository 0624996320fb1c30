/** A spoiled blank and its replacement from the shelf, written together. Verb: `spoilBlank(db, envelope, spoiled, at)`. */
import type { Envelope } from '#core/project/journal.ts';
import type { BlankWanted } from '#core/stash/shelf-search.ts';
import type { PieceRef } from '#core/stash/stash.ts';
import { type CutOutcome, takePiece } from './cuts.ts';
import { type Database, transact } from './database.ts';
import { readEnvelope, recordSpoiled } from './envelopes.ts';

export interface Spoiled {
  readonly wrong: string;
  readonly savedBy?: string;
  /** Where the next blank comes from; it may also be taken later, as any other piece. */
  readonly replacement?: { readonly piece: PieceRef; readonly wanted: BlankWanted };
}

/** What it became, with its replacement's cut; or the replacement is gone and nothing was written. */
export type SpoilOutcome =
  | { readonly envelope: Envelope; readonly replacement: Exclude<CutOutcome, { refused: 'gone' }> | null }
  | Extract<CutOutcome, { refused: 'gone' }>
  | { readonly refused: 'not a blank'; readonly envelope: Envelope };

/** Undefined when there is no such envelope. */
export function spoilBlank(
  db: Database,
  id: number,
  { replacement, ...spoiled }: Spoiled,
  at: string,
): Promise<SpoilOutcome | undefined> {
  return transact(db, async (db) => {
    const blank = await readEnvelope(db, id);
    if (!blank) return undefined;
    if (blank.state !== 'blank') return { refused: 'not a blank', envelope: blank };
    const taking = { project: blank.project, at, copies: 1, trial: blank.trial };
    const taken = replacement ? await takePiece(db, { ...replacement, ...taking }) : undefined;
    if (taken && 'refused' in taken) return taken;
    return { envelope: (await recordSpoiled(db, id, spoiled, at))!, replacement: taken ?? null };
  });
}
