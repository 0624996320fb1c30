/**
 * Bench section: the search through the real store in a shelf of 100 000 offcuts, beside the same question asked in
 * hand-written SQL. `benchSearch()` answers with a markdown table; the limit is twice the raw time.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import SQLite from 'better-sqlite3';
import { chance } from '#core/cutting/search/random.ts';
import type { BlankWanted } from '#core/stash/shelf-search.ts';
import { pencilCode } from '#shared/ids.ts';
import { inches } from '#shared/length.ts';
import { closeDatabase, type Database, migrate, openDatabase } from '#stores/database.ts';
import { findPieces } from '#stores/search.ts';
import { readSettings } from '#stores/settings.ts';
import { FIRST, fillShelf, SQUARE_8, size, UPRIGHT_4_BY_9 } from '#tests/support/cast.ts';

const OFFCUTS = 100_000;
const AT_ONCE = 1_000;
const RUNS = 15;
const LIMIT = 24;

const QUESTIONS: readonly (readonly [string, BlankWanted])[] = [
  ['square of 8 in', SQUARE_8],
  ['square of 3½ in', { ...size(3.5, 3.5), mayTurn: true }],
  ['4 × 9 in, print upright', UPRIGHT_4_BY_9],
  ['4 × 9 in, either way', { ...UPRIGHT_4_BY_9, mayTurn: true }],
];

export async function benchSearch(): Promise<string> {
  const folder = mkdtempSync(path.join(tmpdir(), 'creasebook-bench-'));
  const file = path.join(folder, 'creasebook.db');
  const db = openDatabase(file);
  try {
    await migrate(db);
    await fillShelf(db);
    await seed(db);
    const { keepAtLeast } = await readSettings(db);
    const raw = new SQLite(file, { readonly: true });
    const rows: string[] = [];
    for (const [name, wanted] of QUESTIONS) rows.push(await row(db, raw, name, wanted, keepAtLeast));
    raw.close();
    return [
      `| blank, among ${OFFCUTS.toLocaleString('en')} offcuts | store, ms | raw SQL, ms | ratio (at most 2) |`,
      '|---|---|---|---|',
      ...rows,
    ].join('\n');
  } finally {
    await closeDatabase(db);
    rmSync(folder, { recursive: true, force: true });
  }
}

async function row(
  db: Database,
  raw: SQLite.Database,
  name: string,
  wanted: BlankWanted,
  keep: number,
): Promise<string> {
  const statement = raw.prepare(HAND_WRITTEN);
  const { width: w, height: h } = wanted;
  const ask = () =>
    statement.all({ w, h, turn: wanted.mayTurn ? 1 : 0, keep, limit: LIMIT }) as { id: number }[];
  const inStore = async () => (await findPieces(db, wanted, { limit: LIMIT })).choices;
  const found = (await inStore()).flatMap(({ piece }) => piece.offcut?.id ?? []);
  if (
    found.join() !==
    ask()
      .map(({ id }) => id)
      .join()
  )
    throw new Error(`the two answers differ for ${name}`);
  const [store, sql] = [await median(inStore), await median(async () => ask())];
  return `| ${name} | ${store.toFixed(1)} | ${sql.toFixed(1)} | ${(store / sql).toFixed(2)} |`;
}

async function median(act: () => Promise<unknown>): Promise<number> {
  const times: number[] = [];
  for (let run = 0; run < RUNS; run++) {
    const start = performance.now();
    await act();
    times.push(performance.now() - start);
  }
  return times.sort((a, b) => a - b)[RUNS >> 1]!;
}

/** Sides between ¾ and 12 in to the 1/16, from a fixed seed; half of them of the upright design. */
async function seed(db: Database): Promise<void> {
  const { below } = chance(20261125);
  const side = () => inches(0.75 + below(181) / 16);
  const first =
    (
      await db
        .selectFrom('offcuts')
        .select(({ fn }) => fn.max('id').as('id'))
        .executeTakeFirstOrThrow()
    ).id + 1;
  await db.transaction().execute(async (db) => {
    for (let done = 0; done < OFFCUTS; done += AT_ONCE) {
      const ids = Array.from({ length: AT_ONCE }, (_, one) => first + done + one);
      const designs = ids.map((id) => 1 + (id % 2));
      await db
        .insertInto('offcuts')
        .values(
          ids.map((id, one) => ({
            id,
            code: pencilCode(id),
            design_id: designs[one]!,
            width: side(),
            height: side(),
            border: 0 as const,
            place: `tray ${id % 40}`,
            note: '',
          })),
        )
        .execute();
      await db
        .insertInto('movements')
        .values(
          ids.map((id, one) => ({
            at: FIRST,
            kind: 'counted' as const,
            design_id: designs[one]!,
            offcut_id: id,
            delta: 1 + (id % 3),
            project_id: null,
            cut_id: null,
            reverses: null,
            note: '',
          })),
        )
        .execute();
    }
  });
}

const worth = (width: string, height: string): string =>
  `CASE WHEN min(${width}, ${height}) < @keep THEN 0.0 ELSE CAST(${width} AS REAL) * ${height} * min(${width}, ${height}) END`;

const regret = (w: string, h: string): string => {
  const [beside, beyond, whole] = [`(o.width - ${w})`, `(o.height - ${h})`, worth('o.width', 'o.height')];
  return `CASE WHEN o.width >= ${w} AND o.height >= ${h} THEN min(
    ${whole} - ${worth(beside, 'o.height')} - ${worth(w, beyond)},
    ${whole} - ${worth(beside, h)} - ${worth('o.width', beyond)}) ELSE 9e99 END`;
};

/** What somebody would write who needs this one answer: offcuts with design and pad, least regret first. */
const HAND_WRITTEN = `
  SELECT o.*, d.name, d.swatch, p.name AS pad, min(${regret('@w', '@h')},
    CASE WHEN @turn OR d.direction = 'any way' THEN ${regret('@h', '@w')} ELSE 9e99 END) AS regret
  FROM offcuts o JOIN designs d ON d.id = o.design_id JOIN pads p ON p.id = d.pad_id
  WHERE o.count > 0 AND o.width >= min(@w, @h) AND o.height >= min(@w, @h) AND (
    (o.width >= @w AND o.height >= @h)
    OR ((@turn OR d.direction = 'any way') AND o.width >= @h AND o.height >= @w))
  ORDER BY regret, o.id LIMIT @limit`;
