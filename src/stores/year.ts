/**
 * A year's paper by month and kind, as areas summed up from the ledger; what was undone since does not count, and what
 * went by other ways (thrown out, counted again) is not asked. Verbs: `yearOf(db, year)`, `yearsKnown(db)`. Months are UTC's.
 */
import { sql } from 'kysely';
import type { YearLine } from '#core/stash/year.ts';
import { AREA } from './cost.ts';
import type { Database } from './database.ts';

/** Only months and kinds of which there is something to say. */
export async function yearOf(db: Database, year: number): Promise<YearLine[]> {
  const [from, to] = [`${year}-01-01`, `${year + 1}-01-01`];
  const lines = await sql<YearLine>`SELECT substr(line.at, 1, 7) AS month, pads.kind,
      sum(CASE WHEN line.kind = 'bought' THEN delta * ${AREA} ELSE 0.0 END) AS bought,
      sum(CASE WHEN line.kind IN ('cut', 'left over') THEN -delta * ${AREA} ELSE 0.0 END) AS used, 0.0 AS fromOffcuts,
      sum(CASE WHEN line.kind = 'spoiled' THEN -delta * ${AREA} ELSE 0.0 END) AS spoiled
    FROM movements AS line JOIN designs ON designs.id = line.design_id JOIN pads ON pads.id = pad_id
    LEFT JOIN offcuts ON offcuts.id = line.offcut_id
    WHERE line.at >= ${from} AND line.at < ${to} AND line.kind IN ('bought', 'cut', 'left over', 'spoiled')
      AND NOT EXISTS (SELECT 1 FROM movements AS undoing WHERE undoing.reverses = line.id)
    GROUP BY 1, 2`.execute(db);
  const saved =
    await sql<YearLine>`SELECT substr(cuts.at, 1, 7) AS month, pads.kind, 0.0 AS bought, 0.0 AS used,
      sum(offcuts.width * offcuts.height * 1.0 - coalesce((SELECT sum(kept.width * kept.height * 1.0)
        FROM json_each(piece.value, '$.leftovers') AS leftover JOIN offcuts AS kept ON kept.id = leftover.value ->> '$.offcut'), 0))
        AS fromOffcuts, 0.0 AS spoiled
    FROM cuts, json_each(cuts.pieces) AS piece JOIN offcuts ON offcuts.id = piece.value ->> '$.piece.offcut'
    JOIN designs ON designs.id = offcuts.design_id JOIN pads ON pads.id = pad_id
    WHERE cuts.at >= ${from} AND cuts.at < ${to} AND undone_at IS NULL GROUP BY 1, 2`.execute(db);
  const spoiled =
    await sql<YearLine>`SELECT month, kind, 0.0 AS bought, 0.0 AS used, 0.0 AS fromOffcuts, sum(area) AS spoiled
    FROM (${spoiledBlanks(from, to)} UNION ALL ${spoiledParts(from, to)}) GROUP BY 1, 2`.execute(db);
  return [...lines.rows, ...saved.rows, ...spoiled.rows];
}

/** The years of the ledger, the newest first. */
export async function yearsKnown(db: Database): Promise<number[]> {
  const { rows } = await sql<{ first: string | null; last: string | null }>`
    SELECT (SELECT min(at) FROM movements) AS first, (SELECT max(at) FROM movements) AS last`.execute(db);
  const [first, last] = [rows[0]?.first, rows[0]?.last].map((at) => Number(at?.slice(0, 4) ?? 0));
  return first ? Array.from({ length: last! - first + 1 }, (_, back) => last! - back) : [];
}

/** Each with the size that its cut gave the project's blanks of that design. */
const spoiledBlanks = (from: string, to: string) => sql`
  SELECT substr(outcomes.at, 1, 7) AS month, pads.kind AS kind,
    (SELECT avg((part.value ->> '$.width') * (part.value ->> '$.height') * 1.0)
      FROM json_each(cuts.pieces) AS piece, json_each(piece.value, '$.parts') AS part
      WHERE piece.value ->> '$.piece.design' = envelopes.design_id AND part.value ->> '$.part' = 'envelope'
        AND coalesce(part.value ->> '$.project', cuts.project_id) = envelopes.project_id) AS area
  FROM outcomes JOIN envelopes ON envelopes.id = outcomes.envelope_id JOIN cuts ON cuts.id = envelopes.cut_id
  JOIN designs ON designs.id = envelopes.design_id JOIN pads ON pads.id = pad_id
  WHERE outcomes.at >= ${from} AND outcomes.at < ${to} AND envelopes.state = 'spoiled'`;

/** A part by its name in its plan's cut; the paper is that of the first piece it came off. */
const spoiledParts = (from: string, to: string) => sql`
  SELECT substr(spoiled_parts.at, 1, 7) AS month, pads.kind AS kind, area
  FROM spoiled_parts JOIN plans ON plans.id = plan_id
  JOIN (SELECT cuts.id AS cut_id, part.value ->> '$.part' AS name, min(piece.value ->> '$.piece.design') AS design,
      avg((part.value ->> '$.width') * (part.value ->> '$.height') * 1.0) AS area
    FROM cuts, json_each(cuts.pieces) AS piece, json_each(piece.value, '$.parts') AS part
    WHERE cuts.id IN (SELECT cut_id FROM plans JOIN spoiled_parts ON plan_id = plans.id
      WHERE spoiled_parts.at >= ${from} AND spoiled_parts.at < ${to})
    GROUP BY 1, 2) AS sized ON sized.cut_id = plans.cut_id AND sized.name = spoiled_parts.part
  JOIN designs ON designs.id = sized.design JOIN pads ON pads.id = pad_id
  WHERE spoiled_parts.at >= ${from} AND spoiled_parts.at < ${to}`;
