/** Gathers the projects of a series as its page shows them: in order, with what was made of which paper. Writes nothing. */
import { workingMeasures } from '#core/project/working-measures.ts';
import type { Database } from '#stores/database.ts';
import { listDesigns } from '#stores/designs.ts';
import { envelopesOf } from '#stores/envelopes.ts';
import { listProjects } from '#stores/projects.ts';
import { tagsOf } from '#stores/tags.ts';
import type { SeriesProject } from '#views/series/project.tsx';

/** The oldest first. */
export async function readSeriesProjects(
  db: Database,
  series: number,
  { from, limit }: { readonly from: number; readonly limit: number },
): Promise<SeriesProject[]> {
  const projects = await listProjects(db, { series, oldestFirst: true, from, limit });
  const ids = projects.map(({ id }) => id);
  const envelopes = await envelopesOf(db, ids);
  const used = [...envelopes.values()].flat().flatMap(({ design }) => design ?? []);
  const designs = new Map((await listDesigns(db, { ids: [...new Set(used)] })).map((one) => [one.id, one]));
  const tags = await tagsOf(db, ids);
  return projects.map((project) => {
    const own = envelopes.get(project.id) ?? [];
    const papers = new Set(own.flatMap(({ design }) => design ?? []));
    return {
      project,
      envelopes: own,
      working: workingMeasures({ project, envelopes: own }),
      papers: [...papers].flatMap((id) => designs.get(id) ?? []),
      tags: tags.get(project.id) ?? [],
    };
  });
}
