/** At how many sheets a design is low, as SQL beside `designs` and `pads`; the rule in words is in core/stash/low.ts. */
import { sql } from 'kysely';

/** Its own mark, else its share of the pad's; null for no reminder, and for a share of sheets that never were there. */
export const LOW_AT = sql<number | null>`CASE
  WHEN designs.own_low_mark IS NOT NULL THEN nullif(designs.own_low_mark, 0)
  WHEN pads.low_mark = 0 OR (designs.sheets = 0 AND NOT EXISTS (
    SELECT 1 FROM movements WHERE design_id = designs.id AND offcut_id IS NULL AND delta > 0)) THEN NULL
  ELSE pads.low_mark / (SELECT count(*) FROM designs AS alike WHERE alike.pad_id = designs.pad_id
    AND (alike.put_away_at IS NULL OR alike.id = designs.id)) END`;
