/**
 * What paper was used for, summed up from the ledger; takings undone since do not count. Verbs: `usesOf(db, papers, since)`
 * and `latestUses(db, papers, most)`, each for many papers at once, and `usesByMonth(db, design, since)`. A paper is one
 * design, or all designs of a pad together.
 */
import { sql } from 'kysely';
import type { MonthUse, ProjectUse, Use } from '#core/stash/pace.ts';
import type { Database } from './database.ts';

type Paper = readonly number[];

/** Sheets taken for projects, paper by paper; undefined for one that never was on the shelf. */
export async function usesOf(
  db: Database,
  papers: readonly Paper[],
  since: string,
): Promise<(Use | undefined)[]> {
  if (papers.length === 0) return [];
  const { rows } = await sql<Use & { paper: number }>`
    WITH ${asked(papers)},
      known AS (SELECT paper, min(at) AS known FROM asked CROSS JOIN movements ON design_id = design
        WHERE offcut_id IS NULL GROUP BY paper)
    SELECT known.paper, known, coalesce(-sum(line.delta), 0) AS sheets, count(DISTINCT line.project_id) AS batches
    FROM known JOIN asked ON asked.paper = known.paper
    LEFT JOIN movements AS line ON line.design_id = design AND line.kind = 'cut' AND line.offcut_id IS NULL
      AND line.at >= ${since} AND ${STANDS}
    GROUP BY known.paper`.execute(db);
  return inOrder(papers, rows).map(([use]) => use);
}

/** The last few projects that each paper was taken for, newest first. */
export async function latestUses(
  db: Database,
  papers: readonly Paper[],
  most: number,
): Promise<ProjectUse[][]> {
  if (papers.length === 0) return [];
  const { rows } = await sql<ProjectUse & { paper: number }>`
    WITH ${asked(papers)},
      taken AS (SELECT paper, line.project_id AS project, max(line.id) AS last,
          -sum(CASE WHEN line.offcut_id IS NULL THEN line.delta ELSE 0 END) AS sheets
        FROM asked CROSS JOIN movements AS line ON line.design_id = design
        WHERE line.kind = 'cut' AND ${STANDS} GROUP BY 1, 2),
      ranked AS (SELECT *, row_number() OVER (PARTITION BY paper ORDER BY last DESC) AS place FROM taken)
    SELECT paper, project, title, sheets FROM ranked JOIN projects ON projects.id = project
    WHERE place <= ${most} ORDER BY last DESC`.execute(db);
  return inOrder(papers, rows);
}

/** Months in which sheets of the design were taken, the oldest first. */
export async function usesByMonth(db: Database, design: number, since: string): Promise<MonthUse[]> {
  const { rows } = await sql<MonthUse>`
    SELECT substr(line.at, 1, 7) AS month, -sum(line.delta) AS sheets, count(DISTINCT line.project_id) AS batches
    FROM movements AS line WHERE line.design_id = ${design} AND line.kind = 'cut' AND line.offcut_id IS NULL
      AND line.at >= ${since} AND ${STANDS} GROUP BY 1 ORDER BY 1`.execute(db);
  return rows;
}

/** Rows of a paper's place in the list and one of its designs. */
function asked(papers: readonly Paper[]) {
  const pairs = papers.flatMap((designs, paper) => designs.map((design) => [paper, design]));
  return sql`asked AS (SELECT value ->> 0 AS paper, value ->> 1 AS design FROM json_each(${JSON.stringify(pairs)}))`;
}

const inOrder = <Row extends { paper: number }>(
  papers: readonly Paper[],
  rows: readonly Row[],
): Omit<Row, 'paper'>[][] =>
  papers.map((_, index) => rows.filter((row) => row.paper === index).map(({ paper, ...row }) => row));

/** Of a taking, as `line`: it was not undone. */
export const STANDS = sql`NOT EXISTS (SELECT 1 FROM movements AS undoing WHERE undoing.reverses = line.id)`;
