/**
 * The maker's settings, one row. Verbs: `readSettings(db)`, `editSettings(db, changes)`. The notcher in use is chosen
 * in notchers.ts.
 */
import type { PostId } from '#core/post/rules.ts';
import type { FitHabits } from '#core/project/fits.ts';
import type { Length, Units } from '#shared/length.ts';
import type { WantedFit } from '#shared/outcome.ts';
import type { Database } from './database.ts';

export interface Settings {
  readonly units: Units;
  /** A leftover whose shorter side is under this is not kept. */
  readonly keepAtLeast: Length;
  /** The longest cut that the trimmer makes. */
  readonly longestCut: Length;
  readonly wantedFit: WantedFit;
  /** Whose size classes she sees first. */
  readonly post: PostId;
  readonly fits: FitHabits;
  /** The sign of her money; empty until she said one. */
  readonly currency: string;
  /** Added to how thick a card is reckoned from its layers; 0 is none. */
  readonly bulkCorrection: Length;
}

export async function readSettings(db: Database): Promise<Settings> {
  const row = await db.selectFrom('settings').selectAll().executeTakeFirstOrThrow();
  return {
    units: row.unit === 'in' ? { unit: 'in', step: row.step } : { unit: 'mm' },
    keepAtLeast: row.keep_at_least,
    longestCut: row.longest_cut,
    wantedFit: row.wanted_fit,
    post: row.post,
    fits: {
      pins: { snug: row.pinned_snug, easy: row.pinned_easy, loose: row.pinned_loose },
      since: row.fits_since,
    },
    currency: row.currency,
    bulkCorrection: row.bulk_correction,
  };
}

/** The step of inches is kept while millimetres are shown. */
export async function editSettings(db: Database, changes: Partial<Settings>): Promise<Settings> {
  const { units, keepAtLeast, longestCut, wantedFit, post, fits, currency, bulkCorrection } = changes;
  const row = {
    ...(units && { unit: units.unit, ...(units.unit === 'in' && { step: units.step }) }),
    ...(keepAtLeast !== undefined && { keep_at_least: keepAtLeast }),
    ...(longestCut !== undefined && { longest_cut: longestCut }),
    ...(wantedFit !== undefined && { wanted_fit: wantedFit }),
    ...(post !== undefined && { post }),
    ...(fits && {
      pinned_snug: fits.pins.snug,
      pinned_easy: fits.pins.easy,
      pinned_loose: fits.pins.loose,
      fits_since: fits.since,
    }),
    ...(currency !== undefined && { currency }),
    ...(bulkCorrection !== undefined && { bulk_correction: bulkCorrection }),
  };
  if (Object.keys(row).length > 0) await db.updateTable('settings').set(row).execute();
  return readSettings(db);
}
