/** The data file itself: its settings, its migrations, and two programs that want it at once. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { sql } from 'kysely';
import { describe, expect, it, onTestFinished } from 'vitest';
import { takePiece } from '#stores/cuts.ts';
import { type Database, migrate, openDatabase, transact } from '#stores/database.ts';
import { createProject, listProjects } from '#stores/projects.ts';
import { fillShelf, later, SQUARE_8, THANKS } from '#tests/support/cast.ts';

function fileOnDisk(): () => Promise<Database> {
  const folder = mkdtempSync(path.join(tmpdir(), 'creasebook-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return async () => {
    const db = openDatabase(path.join(folder, 'creasebook.db'));
    onTestFinished(() => db.destroy());
    await migrate(db);
    return db;
  };
}

const pragma = async (db: Database, name: string) =>
  Object.values((await sql<Record<string, unknown>>`PRAGMA ${sql.raw(name)}`.execute(db)).rows[0]!)[0];

describe('the data file', () => {
  it('writes ahead, keeps foreign keys and waits its turn', async () => {
    const db = await fileOnDisk()();
    expect(await pragma(db, 'journal_mode')).toBe('wal');
    expect(await pragma(db, 'foreign_keys')).toBe(1);
    expect(await pragma(db, 'busy_timeout')).toBe(500);
  });

  it('is on the disk before a change is acknowledged, so that a power cut loses none', async () => {
    const FULL = 2;
    const db = await fileOnDisk()();
    await createProject(db, THANKS, later(1));
    expect(await pragma(db, 'synchronous')).toBe(FULL);
  });

  it('has only strict tables of our own', async () => {
    const db = await fileOnDisk()();
    const { rows } = await sql<{ name: string; type: string; strict: number }>`PRAGMA table_list`.execute(db);
    const ours = rows.filter(({ name, type }) => type === 'table' && !/^(sqlite|kysely)_/.test(name));
    expect(ours.length).toBeGreaterThan(10);
    expect(ours.filter(({ strict }) => strict === 0)).toEqual([]);
  });

  it('is migrated once, and keeps what is in it', async () => {
    const open = fileOnDisk();
    await createProject(await open(), THANKS, later(1));
    expect(await listProjects(await open())).toMatchObject([{ title: THANKS.title }]);
  });

  it('makes a second program wait before it reads, so that it is told what is gone', async () => {
    const open = fileOnDisk();
    const [one, other] = [await open(), await open()];
    await sql`PRAGMA busy_timeout = 0`.execute(other);
    const { corner, fern } = await fillShelf(one);
    const piece = { design: fern.id, offcut: corner.id };
    const take = { piece, wanted: SQUARE_8, copies: 1, project: THANKS, at: later(1) };
    await transact(one, async (db) => {
      await takePiece(db, take);
      await expect(takePiece(other, take)).rejects.toThrow('database is locked');
    });
    expect(await takePiece(other, take)).toMatchObject({ refused: 'gone' });
  });
});

describe('transact', () => {
  it('joins the transaction that is open, which keeps all or nothing', async () => {
    const db = await fileOnDisk()();
    const both = transact(db, async (db) => {
      await createProject(db, THANKS, later(1));
      throw new Error('changed my mind');
    });
    await expect(both).rejects.toThrow('changed my mind');
    expect(await listProjects(db)).toEqual([]);
  });
});
