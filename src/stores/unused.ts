/**
 * Paper that waits: the offcuts that have lain longest, and designs that nothing was ever cut from. Verbs:
 * `listLongestLain(db, page)` and `listNeverUsed(db, page)`, the longest first, without what is put away.
 */
import { sql } from 'kysely';
import type { Waiting } from '#core/batch/waiting.ts';
import type { Design, Offcut } from '#core/stash/stash.ts';
import type { Database } from './database.ts';
import { listDesigns } from './designs.ts';
import { listOffcuts } from './offcuts.ts';
import { STANDS } from './use.ts';

interface Page {
  readonly limit: number;
  /** How many to pass over. */
  readonly from: number;
}

interface Row {
  readonly id: number;
  readonly since: string;
}

/** Offcuts are numbered as they come, so that the lowest have lain longest. */
export async function listLongestLain(db: Database, { limit, from }: Page): Promise<Waiting<Offcut>[]> {
  const { rows } = await sql<Row>`
    WITH lain AS (SELECT offcuts.id FROM offcuts JOIN designs ON designs.id = design_id JOIN pads ON pads.id = pad_id
      WHERE count > 0 AND designs.put_away_at IS NULL AND pads.put_away_at IS NULL
      ORDER BY offcuts.id LIMIT ${limit} OFFSET ${from})
    SELECT id, (SELECT min(at) FROM movements WHERE offcut_id = lain.id) AS since FROM lain`.execute(db);
  return withSince(rows, await listOffcuts(db, { ids: rows.map(({ id }) => id) }));
}

/** Only where sheets are left; what was taken and put back again was not used. */
export async function listNeverUsed(db: Database, { limit, from }: Page): Promise<Waiting<Design>[]> {
  const { rows } = await sql<Row>`
    WITH unused AS (SELECT designs.id FROM designs JOIN pads ON pads.id = pad_id
      WHERE sheets > 0 AND designs.put_away_at IS NULL AND pads.put_away_at IS NULL AND NOT EXISTS (
        SELECT 1 FROM movements AS line WHERE line.design_id = designs.id AND line.kind = 'cut' AND ${STANDS})
      ORDER BY designs.id LIMIT ${limit} OFFSET ${from})
    SELECT id, (SELECT min(at) FROM movements WHERE design_id = unused.id AND offcut_id IS NULL) AS since
    FROM unused`.execute(db);
  return withSince(rows, await listDesigns(db, { ids: rows.map(({ id }) => id) }));
}

function withSince<Paper extends { readonly id: number }>(
  rows: readonly Row[],
  papers: readonly Paper[],
): Waiting<Paper>[] {
  const byId = new Map(papers.map((paper) => [paper.id, paper]));
  return rows.map(({ id, since }) => ({ paper: byId.get(id)!, since }));
}
