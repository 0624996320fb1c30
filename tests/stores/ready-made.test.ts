/** Ready-made envelopes: their counts follow their ledger, and the data file refuses what would break either. */
import { type RawBuilder, sql } from 'kysely';
import { beforeEach, describe, expect, it } from 'vitest';
import type { ReadyMade } from '#core/stash/ready-made.ts';
import { checkData } from '#stores/checks.ts';
import type { Database } from '#stores/database.ts';
import { makeEnvelope } from '#stores/envelopes.ts';
import { createProject } from '#stores/projects.ts';
import {
  addReadyMade,
  buyReadyMade,
  countReadyMade,
  editReadyMade,
  listReadyMade,
  listReadyMadeMovements,
  putToUse,
  readReadyMade,
} from '#stores/ready-made.ts';
import { tallySets } from '#stores/sets.ts';
import { FIRST, fillShelf, later, size, THANKS } from '#tests/support/cast.ts';
import { emptyDatabase } from '#tests/support/database.ts';
import { takeThree } from '#tests/support/projects.ts';

let db: Database;
let a2: ReadyMade;

beforeEach(async () => {
  db = await emptyDatabase();
  const envelope = { name: 'A2, kraft', ...size(4.375, 5.75), note: '' };
  a2 = await addReadyMade(db, { envelope, count: 12, at: FIRST });
});

describe('the verbs', () => {
  it('buy, count and use, each with its line', async () => {
    await buyReadyMade(db, a2.id, { count: 10, at: later(1) });
    await countReadyMade(db, a2.id, { count: 20, at: later(2) });
    await putToUse(db, a2.id, { count: 5, at: later(3), project: null });
    expect(await readReadyMade(db, a2.id)).toEqual({ ...a2, count: 15 });
    const lines = await listReadyMadeMovements(db, a2.id);
    expect(lines.map(({ kind, delta }) => [kind, delta])).toEqual([
      ['used', -5],
      ['counted', -2],
      ['bought', 10],
      ['bought', 12],
    ]);
    expect(await checkData(db)).toEqual([]);
  });

  it('never take more than there are', async () => {
    const refused = await putToUse(db, a2.id, { count: 13, at: later(1), project: null });
    expect(refused).toEqual({ refused: 'gone', left: 12 });
    expect((await readReadyMade(db, a2.id))!.count).toBe(12);
  });

  it('put name, size and note right, but no count', async () => {
    const edited = await editReadyMade(db, a2.id, { name: 'A6', ...size(4.75, 6.5), note: 'white' });
    expect(edited).toEqual({ id: a2.id, name: 'A6', ...size(4.75, 6.5), note: 'white', count: 12 });
  });

  it('know nothing of an envelope that isn’t there', async () => {
    expect(await buyReadyMade(db, 99, { count: 1, at: FIRST })).toBeUndefined();
    expect(await countReadyMade(db, 99, { count: 1, at: FIRST })).toBeUndefined();
    expect(await putToUse(db, 99, { count: 1, at: FIRST, project: null })).toBeUndefined();
    expect(await editReadyMade(db, 99, a2)).toBeUndefined();
    expect(await listReadyMade(db)).toHaveLength(1);
  });
});

describe('the data file', () => {
  const everything = async () => [
    await sql`SELECT * FROM ready_made`.execute(db),
    await sql`SELECT * FROM ready_made_movements`.execute(db),
  ];

  const line = (kind: string, delta: number, project: number | null = null) =>
    sql`INSERT INTO ready_made_movements (at, kind, ready_made_id, delta, project_id)
      VALUES (${FIRST}, ${kind}, ${a2.id}, ${delta}, ${project})`;

  it.each<[string, () => RawBuilder<unknown>, RegExp]>([
    ['a changed line', () => sql`UPDATE ready_made_movements SET delta = 50`, /append-only/],
    ['a removed line', () => sql`DELETE FROM ready_made_movements`, /append-only/],
    [
      'a replaced line',
      () => sql`INSERT OR REPLACE INTO ready_made_movements (id, at, kind, ready_made_id, delta)
        VALUES (1, ${FIRST}, 'bought', ${a2.id}, 50)`,
      /append-only/,
    ],
    ['fewer than none', () => line('used', -13), /CHECK/],
    ['a count without a line', () => sql`UPDATE ready_made SET count = 13`, /sum of its movements/],
    ['a negative purchase', () => line('bought', -1), /CHECK/],
    ['a use that adds', () => line('used', 1), /CHECK/],
    ['another kind', () => line('eaten', -1), /CHECK/],
    ['a purchase for a project', () => line('bought', 1, 1), /CHECK|FOREIGN/],
    ['a size of nothing', () => sql`UPDATE ready_made SET width = 0`, /CHECK/],
    ['removing what is counted', () => sql`DELETE FROM ready_made`, /FOREIGN KEY/],
  ])('refuses %s', async (_, statement, why) => {
    const before = await everything();
    await expect(statement().execute(db)).rejects.toThrow(why);
    expect(await everything()).toEqual(before);
  });

  it('has its counts checked apart from its rules', async () => {
    const { rows } = await sql<{
      name: string;
    }>`SELECT name FROM sqlite_master WHERE type = 'trigger'`.execute(db);
    for (const { name } of rows) await sql`DROP TRIGGER ${sql.ref(name)}`.execute(db);
    await sql`UPDATE ready_made SET count = 13`.execute(db);
    expect((await checkData(db)).join()).toMatch(/ready-made envelope: 1/);
  });
});

describe('tallySets', () => {
  it('counts what is made or bought for a project, and cards that wait', async () => {
    expect(await tallySets(db)).toEqual({ finished: 0, waiting: 0 });
    await createProject(db, { title: 'Some day', card: THANKS.card!, quantity: 9 }, FIRST);
    expect(await tallySets(db)).toEqual({ finished: 0, waiting: 0 });
    const { project, envelopes } = await takeThree(db, await fillShelf(db));
    expect(await tallySets(db)).toEqual({ finished: 0, waiting: 3 });
    await makeEnvelope(db, envelopes[0]!, later(1));
    expect(await tallySets(db)).toEqual({ finished: 1, waiting: 2 });
    await putToUse(db, a2.id, { count: 1, at: later(2), project });
    expect(await tallySets(db)).toEqual({ finished: 2, waiting: 1 });
  });
});
