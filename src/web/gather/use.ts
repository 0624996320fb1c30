/** What the ledger says of how paper goes: of one design, and of all that runs low. */
import type { LowPaper } from '#core/stash/low.ts';
import { paceOf, paceSince } from '#core/stash/pace.ts';
import type { Design } from '#core/stash/stash.ts';
import type { Database } from '#stores/database.ts';
import { latestUses, usesByMonth, usesOf } from '#stores/use.ts';
import type { DesignUse, PaperUse } from '#views/stash/pace.tsx';

/** So many of the projects that paper was taken for are named. */
const PROJECTS_NAMED = 5;

export async function useOfDesign(db: Database, design: Design, now: string): Promise<DesignUse> {
  const since = paceSince(now);
  const [use] = await usesOf(db, [[design.id]], since);
  return {
    batches: use?.batches ?? 0,
    pace: use && paceOf(use, now),
    projects: (await latestUses(db, [[design.id]], PROJECTS_NAMED))[0]!,
    months: await usesByMonth(db, design.id, since),
  };
}

/** In the order of the list; a pad's is that of all its designs together. */
export async function usesOfLow(db: Database, low: readonly LowPaper[], now: string): Promise<PaperUse[]> {
  const groups = low.map(({ designs }) => designs.map(({ id }) => id));
  const uses = await usesOf(db, groups, paceSince(now));
  const projects = await latestUses(db, groups, PROJECTS_NAMED);
  return low.map((_, index) => {
    const use = uses[index];
    return {
      batches: use?.batches ?? 0,
      pace: use && paceOf(use, now),
      projects: projects[index]!,
    };
  });
}
