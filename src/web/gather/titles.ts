/** Titles of the projects that lines of the ledger name. Knows no page. */
import type { Movement } from '#core/stash/stash.ts';
import type { Database } from '#stores/database.ts';
import { readProject } from '#stores/projects.ts';

export async function titlesOf(db: Database, movements: readonly Movement[]): Promise<Map<number, string>> {
  const ids = new Set(movements.flatMap((line) => line.project ?? []));
  const titles = new Map<number, string>();
  for (const id of ids) titles.set(id, (await readProject(db, id))?.title ?? '');
  return titles;
}
