/**
 * What paper a project used up, summed up from the ledger by area: taken, less what was laid back; what later went by
 * hand of its leftovers counts as used too. Verb: `paperUsed(db, project)`. Areas are whole numbers, too large for plain ones.
 */
import { sql } from 'kysely';
import type { PaperUsed } from '#core/stash/cost.ts';
import type { Database } from './database.ts';

/** One line for each cut and design; a cut for several projects is shared by the area of their parts. */
export async function paperUsed(db: Database, project: number): Promise<PaperUsed[]> {
  const { rows } = await sql<{ design: number; area: string; own: string; parts: string }>`
    WITH mine AS (SELECT id, project_id, pieces FROM cuts WHERE undone_at IS NULL AND (project_id = ${project}
        OR id IN (SELECT cut_id FROM envelopes WHERE project_id = ${project}))),
      born AS (SELECT DISTINCT cut_id, offcut_id FROM movements
        WHERE cut_id IN (SELECT id FROM mine) AND kind = 'left over'),
      line AS (SELECT cut_id, design_id, offcut_id, delta FROM movements WHERE cut_id IN (SELECT id FROM mine)
        UNION ALL SELECT born.cut_id, design_id, born.offcut_id, delta FROM born
          JOIN movements ON movements.offcut_id = born.offcut_id AND movements.cut_id IS NULL),
      net AS (SELECT cut_id, line.design_id, -sum(delta * ${AREA}) AS area FROM line
        JOIN designs ON designs.id = line.design_id JOIN pads ON pads.id = pad_id
        LEFT JOIN offcuts ON offcuts.id = line.offcut_id GROUP BY 1, 2),
      part AS (SELECT mine.id AS cut_id, piece.value ->> '$.piece.design' AS design_id,
          (part.value ->> '$.width') * (part.value ->> '$.height') AS area,
          coalesce(part.value ->> '$.project', project_id) = ${project} AS is_own
        FROM mine, json_each(mine.pieces) AS piece, json_each(piece.value, '$.parts') AS part)
    SELECT design_id AS design, CAST(net.area AS TEXT) AS area,
      CAST(sum(CASE WHEN is_own THEN part.area ELSE 0 END) AS TEXT) AS own, CAST(sum(part.area) AS TEXT) AS parts
    FROM net JOIN part USING (cut_id, design_id) GROUP BY cut_id, design_id`.execute(db);
  return rows.map(({ design, area, own, parts }) => ({
    design,
    area: BigInt(area),
    own: BigInt(own),
    parts: BigInt(parts),
  }));
}

/** Of one piece that a line moves: its sheet as it measures, or the offcut. */
export const AREA = sql<number>`CASE WHEN offcuts.id IS NULL
  THEN coalesce(pads.measured_width, pads.width) * coalesce(pads.measured_height, pads.height)
  ELSE offcuts.width * offcuts.height END`;
