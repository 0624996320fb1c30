/** A book out as an archive and in again: into an empty one, into itself, beside another, and what must be refused. */
import { createWriteStream, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pipeline } from 'node:stream/promises';
import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import yazl from 'yazl';
import { seedDemo } from '#seed/demo.ts';
import { writeArchive } from '#stores/archive.ts';
import { ARCHIVED, NOT_ARCHIVED } from '#stores/archive-tables.ts';
import { checkData } from '#stores/checks.ts';
import type { Database } from '#stores/database.ts';
import type { Merged } from '#stores/merge.ts';
import { restore } from '#stores/restore.ts';
import { addSeries } from '#stores/series.ts';
import { textInZip } from '#stores/zipped.ts';
import { type App, openApp } from '#tests/support/app.ts';
import { FIRST, fillShelf } from '#tests/support/cast.ts';
import { freshDatabase } from '#tests/support/fresh-database.ts';
import { withPlans } from '#tests/support/pages.ts';
import { takeThree } from '#tests/support/projects.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'creasebook-archive-'));
afterAll(() => rmSync(folder, { recursive: true }));
const at = (name: string): string => path.join(folder, name);

let demo: App;
let small: Database;
let text: string;
beforeAll(async () => {
  demo = await openApp();
  await seedDemo(demo.db, new Date(FIRST));
  await withPlans(demo);
  await write(demo.db, at('demo.zip'));
  small = await freshDatabase();
  await takeThree(small, await fillShelf(small));
  await addSeries(small, { name: 'Winter', note: '' });
  await write(small, at('small.zip'));
  text = ((await textInZip(at('small.zip'), 'archive.json')) as { text: string }).text;
});

const write = async (db: Database, file: string): Promise<void> =>
  pipeline(await writeArchive(db, FIRST), createWriteStream(file));

/** A zip with one file of any text. */
async function zip(name: string, held: string, inside = 'archive.json'): Promise<string> {
  const made = new yazl.ZipFile();
  made.addBuffer(Buffer.from(held), inside);
  made.end();
  await pipeline(made.outputStream, createWriteStream(at(name)));
  return at(name);
}

/** Every row of every table that an archive holds. */
async function rowsIn(db: Database): Promise<Record<string, unknown[]>> {
  const all: Record<string, unknown[]> = {};
  for (const { name } of ARCHIVED) {
    all[name] = (await sql`SELECT * FROM ${sql.table(name)} ORDER BY 1, 2`.execute(db)).rows;
  }
  return all;
}

const merged = async (db: Database, file: string, dryRun = false): Promise<Merged> => {
  const answer = await restore(db, file, { dryRun });
  if ('refused' in answer) throw new Error(answer.refused);
  return answer;
};

const sum = (answer: Merged, of: 'added' | 'same'): number =>
  answer.tables.reduce((total, table) => total + table[of], 0);

/** A book that began elsewhere, with some of the shelf of the tests on it. */
async function another(): Promise<Database> {
  const db = await freshDatabase();
  await sql`UPDATE book SET uid = ${'b'.repeat(32)}`.execute(db);
  await fillShelf(db);
  return db;
}

describe('what an archive holds', () => {
  test('is every table but those that each book works out for itself, with all that they name', async () => {
    const { rows } = await sql<{ name: string }>`SELECT name FROM sqlite_schema WHERE type = 'table'`.execute(
      demo.db,
    );
    const kept = rows.map(({ name }) => name).filter((name) => !NOT_ARCHIVED.test(name));
    expect(ARCHIVED.map(({ name }) => name).sort()).toEqual(kept.sort());
    for (const { name, names } of ARCHIVED) {
      const named = await sql<{
        from: string;
        table: string;
      }>`SELECT * FROM pragma_foreign_key_list(${name})`.execute(demo.db);
      const want = named.rows.map(({ from, table }) => [from, table === 'outcomes' ? 'envelopes' : table]);
      expect({ name, names }).toEqual({ name, names: Object.fromEntries(want) });
    }
  });
});

describe('into an empty book', () => {
  test('every page is the same, byte for byte', async () => {
    const copy = await openApp();
    const answer = await merged(copy.db, at('demo.zip'));
    expect(answer.recoded).toEqual([]);
    expect(await rowsIn(copy.db)).toEqual(await rowsIn(demo.db));
    const page = async (app: App, address: string): Promise<string> =>
      (await (await app.get(address)).text()).replace(/token-\d+/g, 'token');
    for (const address of [
      '/',
      '/stash',
      '/projects',
      '/projects/5',
      '/plans/1',
      '/series/1',
      '/tools/fits',
    ]) {
      expect(await page(copy, address), address).toBe(await page(demo, address));
    }
    expect(await checkData(copy.db)).toEqual([]);
  });
});

describe('into a book that has it', () => {
  test('nothing is brought twice', async () => {
    const before = await rowsIn(small);
    const answer = await merged(small, at('small.zip'));
    expect(sum(answer, 'added')).toBe(0);
    expect(answer.tables.flatMap(({ differ }) => differ)).toEqual([]);
    expect(await rowsIn(small)).toEqual(before);
  });

  test('what was changed here since stays, and is named', async () => {
    const copy = await freshDatabase();
    await merged(copy, at('small.zip'));
    await sql`UPDATE pads SET name = 'Renamed since' WHERE id = 1`.execute(copy);
    const answer = await merged(copy, at('small.zip'));
    expect(answer.tables.find(({ table }) => table === 'pads')?.differ).toEqual(['Renamed since']);
  });
});

describe('beside another book', () => {
  test('both shelves and journals are there, the ledger holds, and a second time brings nothing', async () => {
    const db = await another();
    const before = await rowsIn(db);
    const dry = await merged(db, at('small.zip'), true);
    expect(await rowsIn(db)).toEqual(before);
    const answer = await merged(db, at('small.zip'));
    expect(answer).toEqual(dry);
    const [own, theirs, both] = [before, await rowsIn(small), await rowsIn(db)];
    for (const { name } of ARCHIVED.filter((table) => table.name !== 'settings')) {
      expect({ name, rows: both[name]!.length }).toEqual({
        name,
        rows: own[name]!.length + theirs[name]!.length,
      });
    }
    expect(answer.recoded.length).toBe(own['offcuts']!.length);
    expect(await checkData(db)).toEqual([]);
    expect(sum(await merged(db, at('small.zip')), 'added')).toBe(0);
  });

  test('cuts and plans name the paper by its number here', async () => {
    const db = await another();
    await merged(db, at('small.zip'));
    const pieces = async (of: Database) => {
      const cuts = await of.selectFrom('cuts').select('pieces').orderBy('id').execute();
      const ids = cuts.map(
        (cut) => (JSON.parse(cut.pieces) as { piece: { design: number } }[])[0]!.piece.design,
      );
      const designs = await of.selectFrom('designs').select(['id', 'name']).execute();
      return ids.map((id) => designs.find((one) => one.id === id)?.name);
    };
    expect(await pieces(db)).toEqual(await pieces(small));
  });

  test('a series of the same name is the same series', async () => {
    const db = await another();
    await addSeries(db, { name: 'Winter', note: 'of mine' });
    await merged(db, at('small.zip'));
    const rows = await db.selectFrom('series').select('note').where('name', '=', 'Winter').execute();
    expect(rows).toEqual([{ note: 'of mine' }]);
  });
});

describe('refused, with nothing written', () => {
  const cases: [string, () => Promise<string> | string, RegExp][] = [
    [
      'a newer schema',
      () => zip('newer.zip', text.replace(/"schema":"[^"]+"/, '"schema":"9999_later"')),
      /newer/,
    ],
    ['a newer version', () => zip('version.zip', text.replace('"version":1', '"version":2')), /newer/],
    ['no archive', () => zip('other.zip', '{}'), /not what Creasebook writes/],
    ['another zip', () => zip('letter.zip', 'Dear neighbour', 'letter.txt'), /no archive\.json/],
    ['no zip', () => written('plain.zip', Buffer.from('not a zip')), /damaged/],
    ['half of one', () => written('half.zip', half(readFileSync(at('small.zip')))), /damaged/],
    ['one with a byte turned', () => written('turned.zip', turned(readFileSync(at('small.zip')))), /damaged/],
    ['a path that climbs out', () => written('climbs.zip', climbing()), /damaged/],
    [
      'a column of its own',
      () => zip('column.zip', text.replace('"notchers":[\n{', '"notchers":[\n{"x":1,')),
      /hold together/,
    ],
    [
      'a row that is named and not there',
      () => zip('gone.zip', text.replace(/"pad_id":1,/, '"pad_id":999,')),
      /hold together/,
    ],
    [
      'a count below zero',
      () => zip('below.zip', text.replace(/"delta":\d+/, '"delta":-1')),
      /hold together/,
    ],
  ];
  test.each(cases)('%s', async (_, make, why) => {
    const db = await another();
    const before = await rowsIn(db);
    const answer = await restore(db, await make(), { dryRun: false });
    expect('refused' in answer && answer.refused).toMatch(why);
    expect('refused' in answer && answer.refused).toMatch(/othing was written|no Creasebook archive/);
    expect(await rowsIn(db)).toEqual(before);
  });

  const written = (name: string, bytes: Uint8Array): string => {
    writeFileSync(at(name), bytes);
    return at(name);
  };

  const half = (bytes: Buffer): Buffer => bytes.subarray(0, bytes.length >> 1);

  const turned = (bytes: Buffer): Buffer => {
    const other = Buffer.from(bytes);
    const middle = other.length >> 1;
    other[middle] = other[middle]! ^ 0x10;
    return other;
  };

  /** A zip that yazl would not write: the name is changed afterwards, in both places where a zip holds it. */
  const climbing = (): Buffer =>
    Buffer.from(
      readFileSync(at('small.zip')).toString('latin1').replaceAll('archive.json', '../rchive.js/'),
      'latin1',
    );
});
