/** What the data file itself refuses, whatever the code above it does: raw SQL against the rules of migration 0004. */
import { type RawBuilder, sql } from 'kysely';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Database } from '#stores/database.ts';
import { binOffcut, buySheets, listMovements } from '#stores/movements.ts';
import { type Cast, FIRST, fillShelf, later } from '#tests/support/cast.ts';
import { emptyDatabase } from '#tests/support/database.ts';

let db: Database;
let cast: Cast;

beforeEach(async () => {
  db = await emptyDatabase();
  cast = await fillShelf(db);
});

async function refused(statement: RawBuilder<unknown>, why: RegExp): Promise<void> {
  const before = await everything();
  await expect(statement.execute(db)).rejects.toThrow(why);
  expect(await everything()).toEqual(before);
}

const everything = async () => [
  await sql`SELECT * FROM movements`.execute(db),
  await sql`SELECT * FROM offcuts`.execute(db),
  await sql`SELECT * FROM designs`.execute(db),
];

const line = (kind: string, offcut: number | null, delta: number, reverses: number | null = null) =>
  sql`INSERT INTO movements (at, kind, design_id, offcut_id, delta, reverses, note)
    VALUES (${FIRST}, ${kind}, ${cast.fern.id}, ${offcut}, ${delta}, ${reverses}, '')`;

describe('a line of the ledger', () => {
  it('is never changed, removed or replaced', async () => {
    await refused(sql`UPDATE movements SET delta = 50 WHERE id = 1`, /append-only/);
    await refused(sql`DELETE FROM movements`, /append-only/);
    await refused(
      sql`INSERT OR REPLACE INTO movements (id, at, kind, design_id, offcut_id, delta, note)
        VALUES (1, ${FIRST}, 'bought', ${cast.fern.id}, NULL, 50, '')`,
      /append-only/,
    );
  });

  it('has the sign of its kind', async () => {
    await refused(line('bought', null, -1), /CHECK/);
    await refused(line('binned', null, 1), /CHECK/);
    await refused(line('bought', null, 0), /CHECK/);
    await refused(line('eaten', null, -1), /CHECK/);
  });

  it('names its offcut’s own design', async () => {
    await refused(line('binned', cast.lying.id, -1), /another design/);
    await refused(line('binned', 999, -1), /another design/);
  });

  it('says what it undoes, exactly and once', async () => {
    const bought = (await buySheets(db, cast.fern.id, { sheets: 2, at: later(1) }))!;
    await refused(line('withdrawn', null, -1), /CHECK/);
    await refused(line('withdrawn', null, -1, bought), /mirror/);
    await refused(line('withdrawn', cast.corner.id, -2, bought), /mirror/);
    await line('withdrawn', null, -2, bought).execute(db);
    await refused(line('withdrawn', null, -2, bought), /append-only/);
    const [undoing] = await listMovements(db, { limit: 1 });
    await refused(line('put back', null, 2, undoing!.id), /mirror/);
  });

  it('belongs to a cut when it says so', async () => {
    await refused(line('cut', null, -1), /CHECK/);
    await refused(line('left over', cast.corner.id, 1), /CHECK/);
  });
});

describe('a count', () => {
  it('never goes below zero', async () => {
    await refused(line('binned', null, -6), /CHECK/);
    await refused(line('binned', cast.strips.id, -4), /CHECK/);
  });

  it('changes by a movement only', async () => {
    await refused(sql`UPDATE offcuts SET count = 9 WHERE id = ${cast.strips.id}`, /sum of its movements/);
    await refused(sql`UPDATE designs SET sheets = sheets + 1`, /sum of its movements/);
    await refused(
      sql`INSERT INTO offcuts (design_id, width, height, border, code, place, note, count)
        VALUES (${cast.fern.id}, 1, 1, 0, 'ZZZ', '', '', 1)`,
      /sum of its movements/,
    );
    await refused(
      sql`INSERT OR REPLACE INTO offcuts (id, design_id, width, height, border, code, place, note)
        VALUES (${cast.corner.id}, ${cast.fern.id}, 1, 1, 0, 'ZZZ', '', '')`,
      /sum of its movements/,
    );
  });

  it('cannot be dodged by removing or moving what is counted', async () => {
    await refused(sql`DELETE FROM offcuts WHERE id = ${cast.corner.id}`, /FOREIGN KEY/);
    await refused(sql`DELETE FROM designs WHERE id = ${cast.fern.id}`, /FOREIGN KEY/);
    await refused(sql`UPDATE offcuts SET id = 99 WHERE id = ${cast.corner.id}`, /FOREIGN KEY/);
    await refused(sql`UPDATE offcuts SET design_id = ${cast.hare.id} WHERE id = ${cast.corner.id}`, /design/);
  });
});

describe('an offcut', () => {
  it('is used once, whoever asks', async () => {
    await binOffcut(db, cast.corner.id, { at: later(1) });
    await refused(line('binned', cast.corner.id, -1), /CHECK/);
  });

  it('shares its code with no other', async () => {
    await refused(sql`UPDATE offcuts SET code = ${cast.strips.code} WHERE id = ${cast.corner.id}`, /UNIQUE/);
  });
});

describe('a column', () => {
  it('takes no value of another type, no impossible size and no broken JSON', async () => {
    await refused(sql`UPDATE offcuts SET width = 'wide' WHERE id = 1`, /cannot store TEXT/);
    await refused(sql`UPDATE offcuts SET width = 0 WHERE id = 1`, /CHECK/);
    await refused(sql`UPDATE designs SET swatch = '{' WHERE id = 1`, /CHECK/);
    await refused(sql`UPDATE designs SET border = NULL WHERE id = ${cast.hem.id}`, /CHECK/);
    await refused(sql`UPDATE designs SET direction = 'sideways' WHERE id = 1`, /CHECK/);
  });
});
