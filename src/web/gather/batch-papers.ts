/** The few papers that a batch's form shows: those that suit its envelope best, those chosen, those kept. Writes nothing. */
import { blankWanted } from '#core/project/fitting.ts';
import type { Project } from '#core/project/journal.ts';
import { type Design, type Piece, pieceOfOffcut, pieceOfSheet } from '#core/stash/stash.ts';
import { readId } from '#shared/ids.ts';
import { PAPER_KINDS } from '#shared/paper-kind.ts';
import type { Database } from '#stores/database.ts';
import { listDesigns } from '#stores/designs.ts';
import { listOffcuts } from '#stores/offcuts.ts';
import { findChoices, readShelf } from '#stores/search.ts';
import type { Request } from '../http/env.ts';
import type { Typed } from '../http/form.ts';
import { keptIn, paperFields } from './batch-form.ts';

export interface BatchPapers {
  /** The designs whose pieces lose the least to its envelope, best first. */
  readonly suits: readonly Design[];
  /** Those that the form names already. */
  readonly chosen: readonly Design[];
  /** What stays on the shelf, and what would be cut first if nothing did. */
  readonly kept: readonly Piece[];
  readonly likely: readonly Piece[];
}

const MOST_SUGGESTED = 6;

export async function readBatchPapers(c: Request, project: Project, typed: Typed): Promise<BatchPapers> {
  const db = c.get('db');
  const likely = await likelyPieces(c, project, typed.paper ?? '');
  const ids = paperFields(typed).flatMap((field) => designIn(typed[field] ?? '') ?? []);
  return {
    suits: [...new Map(likely.map(({ design }) => [design.id, design])).values()],
    chosen: await listDesigns(db, { ids: [...new Set(ids)] }),
    kept: await piecesNamed(db, keptIn(typed)),
    likely,
  };
}

export const designIn = (paper: string): number | undefined =>
  paper.startsWith('design-') ? readId(paper.slice('design-'.length)) : undefined;

async function likelyPieces(c: Request, { recipe, look }: Project, paper: string): Promise<Piece[]> {
  if (!recipe) return [];
  const kind = PAPER_KINDS.find((one) => paper === `kind-${one}`);
  const wanted = { ...blankWanted(recipe, look ?? undefined), ...(kind && { kinds: [kind] }) };
  const shelf = await readShelf(c.get('db'), c.get('settings').keepAtLeast);
  const [found] = await findChoices(c.get('db'), shelf, [wanted], { limit: MOST_SUGGESTED });
  return found!.choices.slice(0, MOST_SUGGESTED).map(({ piece }) => piece);
}

async function piecesNamed(db: Database, names: readonly string[]): Promise<Piece[]> {
  const numbered = (prefix: string): number[] =>
    names.flatMap((name) => (name.startsWith(prefix) ? (readId(name.slice(prefix.length)) ?? []) : []));
  const sheets = await listDesigns(db, { ids: numbered('sheet-') });
  const offcuts = await listOffcuts(db, { ids: numbered('offcut-') }, sheets);
  return [...sheets.filter((one) => one.sheets > 0).map(pieceOfSheet), ...offcuts.map(pieceOfOffcut)];
}
