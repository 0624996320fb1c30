/** Gathers the batch that a project made again begins with, from what the one before asked for. Writes nothing. */
import { batchFrom, designsNamed } from '#core/batch/again-from.ts';
import type { Database } from '#stores/database.ts';
import { listDesigns } from '#stores/designs.ts';
import { envelopesOf } from '#stores/envelopes.ts';
import { kinOf } from '#stores/made-before.ts';
import { listPlans } from '#stores/plans.ts';
import type { Bench } from './bench.ts';

/** Undefined for a project that was not made again from another. */
export async function readAgainBatch(
  db: Database,
  { own, kinds }: Bench,
): Promise<ReturnType<typeof batchFrom> | undefined> {
  const { origin } = await kinOf(db, own.project.id);
  if (!origin) return undefined;
  const envelopes = (await envelopesOf(db, [origin.id])).get(origin.id) ?? [];
  const before = { plans: await listPlans(db, origin.id), envelopes };
  const ids = designsNamed(before);
  const designs = await listDesigns(db, { ids });
  const left = await listDesigns(db, { ids, onShelf: true, away: false });
  return batchFrom(before, {
    designs: new Map(designs.map((one) => [one.id, one])),
    left: new Set(left.map(({ id }) => id)),
    kinds,
  });
}
