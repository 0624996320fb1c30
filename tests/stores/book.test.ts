/** Opening what lies in a folder: each thing that is no sound book has a sentence of its own, and its bytes stay. */
import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import SQLite from 'better-sqlite3';
import { describe, expect, it, onTestFinished } from 'vitest';
import { listBackups } from '#stores/backups.ts';
import { openBook } from '#stores/book.ts';
import { closeDatabase, migrate, openDatabase } from '#stores/database.ts';
import { createProject } from '#stores/projects.ts';
import { FIRST, THANKS } from '#tests/support/cast.ts';
import { freshFile } from '#tests/support/fresh-database.ts';

interface Place {
  readonly folder: string;
  readonly file: string;
}

function place(): Place {
  const folder = mkdtempSync(path.join(tmpdir(), 'creasebook-book-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return { folder, file: path.join(folder, 'creasebook.db') };
}

async function withBook(): Promise<Place> {
  const there = place();
  writeFileSync(there.file, await freshFile());
  return there;
}

async function refusal(folder: string): Promise<string> {
  const opened = await openBook(folder, FIRST);
  if ('refused' in opened) return opened.refused;
  await closeDatabase(opened.db);
  return 'opened';
}

/** What is said of these bytes, which have to lie there unchanged afterwards. */
async function saidOf({ folder, file }: Place, bytes: Buffer): Promise<string> {
  writeFileSync(file, bytes);
  const said = await refusal(folder);
  expect(readFileSync(file).equals(bytes)).toBe(true);
  return said;
}

function change(file: string, statement: string): void {
  const database = new SQLite(file);
  database.exec(statement);
  database.close();
}

describe('what can’t be opened is told apart', () => {
  it('nothing in it, zeros, and a letter', async () => {
    const there = place();
    expect(await saidOf(there, Buffer.alloc(0))).toContain('holds nothing at all');
    expect(await saidOf(there, Buffer.alloc(8192))).toContain('is not a book');
    expect(await saidOf(there, Buffer.from('Dear neighbour '.repeat(90)))).toContain('is not a book');
    expect(readdirSync(there.folder)).toEqual(['creasebook.db']);
  });

  it('a page torn out, with the way to the newest backup', async () => {
    const there = await withBook();
    const whole = readFileSync(there.file);
    const torn = Buffer.from(whole);
    torn.fill(0xa5, 4096 * 3, 4096 * 9);
    expect(await saidOf(there, torn)).toMatch(/is damaged.*There is no backup/s);
    mkdirSync(path.join(there.folder, 'backups'));
    const backup = path.join(there.folder, 'backups', 'creasebook-2026-02-28-190000-daily.db');
    writeFileSync(backup, whole);
    expect(await saidOf(there, torn)).toContain(`npm run backup -- restore ${backup}`);
    expect(await saidOf(there, whole.subarray(0, whole.length / 2))).toContain('is damaged');
  });

  it('a newer version, another program’s, and one left halfway by an earlier version', async () => {
    const there = await withBook();
    const name = '9999_of_next_year';
    change(there.file, `INSERT INTO kysely_migration VALUES ('${name}', '${FIRST}')`);
    expect(await saidOf(there, readFileSync(there.file))).toContain(`newer Creasebook (${name})`);
    rmSync(there.file);
    change(there.file, 'CREATE TABLE songs (id INTEGER)');
    expect(await saidOf(there, readFileSync(there.file))).toContain('belongs to another program');
    writeFileSync(there.file, await freshFile());
    change(there.file, "DELETE FROM kysely_migration WHERE name > '0010'");
    expect(await refusal(there.folder)).toMatch(/could not be brought up to date.*halfway/);
    expect(await refusal(there.folder)).toContain('npm run backup -- restore');
  });

  it('one that another program holds', async () => {
    const there = await withBook();
    const other = new SQLite(there.file);
    onTestFinished(() => void other.close());
    other.pragma('locking_mode = EXCLUSIVE');
    other.exec('BEGIN EXCLUSIVE');
    expect(await refusal(there.folder)).toContain('Another program is holding');
  });

  it('one that is gone while its backups are there', async () => {
    const { folder } = place();
    mkdirSync(path.join(folder, 'backups'));
    writeFileSync(path.join(folder, 'backups', 'creasebook-2026-02-28-190000-daily.db'), await freshFile());
    expect(await refusal(folder)).toMatch(/There is no .*newest backup/s);
    expect(readdirSync(folder)).toEqual(['backups']);
  });

  it('a folder, and a file in it, that may only be read', async () => {
    const there = await withBook();
    const asNobody = process.getuid!() === 0;
    for (const one of [there.file, there.folder]) {
      chmodSync(there.folder, 0o777);
      chmodSync(there.file, 0o666);
      chmodSync(one, 0o555);
      if (asNobody) process.seteuid!(65534);
      const said = await refusal(there.folder).finally(() => asNobody && process.seteuid!(0));
      expect(said).toContain('it may not write there');
    }
  });

  it('a disk without room, where one can be had', async ({ skip }) => {
    const { folder } = place();
    const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=256k', 'creasebook', folder]);
    if (mounted.status !== 0) skip('a full disk needs the right to mount one');
    try {
      expect(await refusal(folder)).toContain('no room left');
      expect(existsSync(path.join(folder, 'creasebook.db'))).toBe(false);
    } finally {
      spawnSync('umount', [folder]);
    }
  });
});

describe('a book is opened', () => {
  it('made where there is none, whole before it has its name', async () => {
    const there = place();
    expect(await refusal(there.folder)).toBe('opened');
    expect(await refusal(there.folder)).toBe('opened');
    expect(readdirSync(there.folder)).toEqual(['creasebook.db']);
  });

  it('with a backup of it from before it is brought up to date', async () => {
    const there = place();
    const db = openDatabase(there.file);
    await migrate(db, '0010_real_sheets');
    await closeDatabase(db);
    expect(await refusal(there.folder)).toBe('opened');
    const [backup] = await listBackups(there.folder);
    expect(backup).toMatchObject({ kind: 'before-update', at: FIRST.replace('.000', '') });
    const old = new SQLite(path.join(there.folder, 'backups', backup!.name), { readonly: true });
    expect(old.prepare('SELECT max(name) FROM kysely_migration').pluck().get()).toBe('0010_real_sheets');
    old.close();
  });

  it('with what a crash had left written ahead of it', async () => {
    const there = await withBook();
    const opened = await openBook(there.folder, FIRST);
    if ('refused' in opened) throw new Error(opened.refused);
    onTestFinished(() => opened.db.destroy());
    await createProject(opened.db, THANKS, FIRST);
    const crashed = place();
    for (const part of ['', '-wal']) writeFileSync(crashed.file + part, readFileSync(there.file + part));
    expect(await refusal(crashed.folder)).toBe('opened');
    const read = new SQLite(crashed.file, { readonly: true });
    expect(read.prepare('SELECT title FROM projects').pluck().all()).toEqual([THANKS.title]);
    read.close();
  });
});
