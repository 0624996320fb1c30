/** What runs low, found among all paper in one query. Verb: `listLow(db, { limit, offset? })`, worst first. */
import { sql } from 'kysely';
import type { LowList, LowPaper } from '#core/stash/low.ts';
import type { Design } from '#core/stash/stash.ts';
import type { Database } from './database.ts';
import { listDesigns } from './designs.ts';
import { LOW_AT } from './low-sql.ts';

interface LowRow {
  readonly pad: number;
  readonly design: number | null;
  readonly sheets: number;
  readonly mark: number;
  readonly pads: number;
  readonly designs: number;
}

/** A design of a pad that is low as a whole is not named beside it, and nothing that is put away. */
export async function listLow(
  db: Database,
  { limit, offset = 0 }: { limit: number; offset?: number },
): Promise<LowList> {
  const { rows } = await sql<LowRow>`
    WITH each_one AS (SELECT designs.id, pad_id, sheets, pads.low_mark, ${LOW_AT} AS low_at
        FROM designs JOIN pads ON pads.id = pad_id
        WHERE designs.put_away_at IS NULL AND pads.put_away_at IS NULL),
      whole AS (SELECT pad_id, sum(sheets) AS sheets, low_mark AS mark,
          low_mark > 0 AND sum(sheets) <= low_mark AS is_low FROM each_one GROUP BY pad_id),
      low AS (SELECT pad_id AS pad, NULL AS design, sheets, mark FROM whole WHERE is_low
        UNION ALL SELECT each_one.pad_id, id, each_one.sheets, low_at FROM each_one
          JOIN whole ON whole.pad_id = each_one.pad_id
          WHERE each_one.sheets <= low_at AND NOT is_low)
    SELECT low.*, sum(design IS NULL) OVER () AS pads, sum(design IS NOT NULL) OVER () AS designs
    FROM low ORDER BY sheets * 1.0 / max(mark, 1), mark DESC, pad DESC, design LIMIT ${limit} OFFSET ${offset}`.execute(
    db,
  );
  const low = await withPaper(db, rows);
  return { low, pads: rows[0]?.pads ?? 0, designs: rows[0]?.designs ?? 0 };
}

async function withPaper(db: Database, rows: readonly LowRow[]): Promise<LowPaper[]> {
  const designs = await listDesigns(db, { pads: [...new Set(rows.map(({ pad }) => pad))] });
  const byId = new Map<number, Design>(designs.map((design) => [design.id, design]));
  return rows.map(({ pad, design: id, sheets, mark }) => {
    const own = id === null ? designs.filter((one) => one.pad.id === pad) : [byId.get(id)!];
    return { pad: own[0]!.pad, design: id === null ? null : own[0]!, designs: own, sheets, mark };
  });
}
