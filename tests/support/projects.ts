/** Projects that tests of the journal begin with, made by the stores' own verbs. Knows no pages. */
import type { NewProject } from '#core/project/journal.ts';
import { takePiece } from '#stores/cuts.ts';
import type { Database } from '#stores/database.ts';
import { BLANK, type Cast, later, THANKS } from './cast.ts';

/** Three blanks for a card, cut from three sheets of Fern: project, cut and envelopes by their ids. */
export async function takeThree(
  db: Database,
  cast: Cast,
  project: NewProject | number = THANKS,
): Promise<{ project: number; cut: number; envelopes: readonly number[] }> {
  const piece = { design: cast.fern.id, offcut: null };
  const taken = await takePiece(db, { piece, wanted: BLANK, copies: 3, project, at: later(1) });
  if (!taken || 'refused' in taken) throw new Error(`invalid taking: ${JSON.stringify(taken)}`);
  return taken;
}
