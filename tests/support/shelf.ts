/** What lies on the shelf at one moment, so that a test can say that it is as it was. Knows no verbs that change it. */
import type { Database } from '#stores/database.ts';

/** Every count, by piece; what is at 0 is left out, as the maker would not see it. */
export async function shelf(db: Database): Promise<Record<string, number>> {
  const designs = await db.selectFrom('designs').select(['name', 'id', 'sheets']).execute();
  const offcuts = await db.selectFrom('offcuts').select(['code', 'count']).execute();
  const counts = [
    ...designs.map(({ name, id, sheets }) => [`${name} ${id}`, sheets] as const),
    ...offcuts.map(({ code, count }) => [code, count] as const),
  ];
  return Object.fromEntries(counts.filter(([, count]) => count > 0));
}

/** How many rows each table has: what must not change when nothing was written. */
export async function rowCounts(db: Database): Promise<Record<string, number>> {
  const tables = ['offcuts', 'movements', 'projects', 'cuts', 'envelopes', 'outcomes'] as const;
  const counts: Record<string, number> = {};
  for (const table of tables) {
    const { rows } = await db
      .selectFrom(table)
      .select(({ fn }) => fn.countAll<number>().as('rows'))
      .executeTakeFirstOrThrow();
    counts[table] = rows;
  }
  return counts;
}
