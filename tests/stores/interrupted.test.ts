/** A book of an earlier schema whose migration is killed: at every moment of it, what lies on the disk opens again. */
import { createHash } from 'node:crypto';
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { type KyselyPlugin, sql } from 'kysely';
import { expect, it, onTestFinished } from 'vitest';
import { checkData } from '#stores/checks.ts';
import { closeDatabase, type Database, migrate, openDatabase } from '#stores/database.ts';
import { FIRST } from '#tests/support/cast.ts';

const RELEASED = '0010_real_sheets';

function folder(): string {
  const made = mkdtempSync(path.join(tmpdir(), 'creasebook-killed-'));
  onTestFinished(() => rmSync(made, { recursive: true }));
  return made;
}

/** A kill, unlike a power cut, loses nothing that was handed to the operating system. */
async function quick(file: string): Promise<Database> {
  const db = openDatabase(file);
  await sql`PRAGMA synchronous = OFF`.execute(db);
  return db;
}

/** Rows of its day, by its own names. */
const ROWS = [
  sql`INSERT INTO pads (name, kind, width, height, grammage, low_mark, source, note)
    VALUES ('Meadow walk', 'patterned', 12192000, 12192000, 180, 6, '', '')`,
  sql`INSERT INTO designs (pad_id, name, direction, double_sided, swatch)
    VALUES (1, 'Fern', 'any way', 0, '{"motif":"sprigs","ground":"#f4efe6","inks":["#3f6b4f"]}')`,
  sql`INSERT INTO movements (at, kind, design_id, delta, note) VALUES (${FIRST}, 'bought', 1, 5, '')`,
  sql`INSERT INTO projects (title, quantity, notes, lesson, created_at, changed_at)
    VALUES ('Ferns for the neighbours', 4, '', 'Score twice', ${FIRST}, ${FIRST})`,
];

async function releasedBook(file: string): Promise<Database> {
  const db = await quick(file);
  await migrate(db, RELEASED);
  for (const row of ROWS) await row.execute(db);
  return db;
}

/** Keeps each different state of the file and what is written ahead of it, as a kill before each statement would leave it. */
class Moments implements KyselyPlugin {
  readonly seen = new Map<string, string>();
  statements = 0;
  readonly #file: string;

  constructor(file: string) {
    this.#file = file;
  }

  transformQuery: KyselyPlugin['transformQuery'] = ({ node }) => {
    this.statements += 1;
    const parts = ['', '-wal'].filter((part) => existsSync(this.#file + part));
    const hash = createHash('sha256');
    for (const part of parts) hash.update(readFileSync(this.#file + part));
    const key = hash.digest('hex');
    if (!this.seen.has(key)) {
      const copy = `${this.#file}-${this.seen.size}`;
      for (const part of parts) cpSync(this.#file + part, copy + part);
      this.seen.set(key, copy);
    }
    return node;
  };

  transformResult: KyselyPlugin['transformResult'] = async ({ result }) => result;
}

it.each([
  ['a book of the first release', releasedBook],
  ['a first start', async (file: string) => quick(file)],
])('%s, killed at any statement of its migration', async (_, made) => {
  const file = path.join(folder(), 'creasebook.db');
  const db = await made(file);
  const moments = new Moments(file);
  await migrate(db.withPlugin(moments));
  await closeDatabase(db);
  expect(moments.statements).toBeGreaterThan(40);
  const broken: string[] = [];
  for (const copy of moments.seen.values()) {
    const again = await quick(copy);
    const failures = await migrate(again).then(
      () => checkData(again),
      (problem: Error) => [problem.message],
    );
    broken.push(...failures);
    await closeDatabase(again);
  }
  expect(broken).toEqual([]);
});

it('one that fails at its last statement leaves nothing of itself', async () => {
  const db = await releasedBook(path.join(folder(), 'creasebook.db'));
  onTestFinished(() => db.destroy());
  const schema = async () => (await sql<{ sql: string }>`SELECT sql FROM sqlite_schema`.execute(db)).rows;
  const before = await schema();
  await sql`CREATE TABLE book (id INTEGER PRIMARY KEY) STRICT`.execute(db);
  await expect(migrate(db)).rejects.toThrow('already exists');
  await sql`DROP TABLE book`.execute(db);
  expect(await schema()).toEqual(before);
  await migrate(db);
  expect(await checkData(db)).toEqual([]);
});
