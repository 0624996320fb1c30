/** Backups of a book that is in use: made, checked, kept for their time, and put back. */
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { type BackupKind, backUp, backUpDaily, listBackups, outlived } from '#stores/backups.ts';
import { openBook } from '#stores/book.ts';
import { checkData } from '#stores/checks.ts';
import { closeDatabase, type Database } from '#stores/database.ts';
import { createProject, listProjects } from '#stores/projects.ts';
import { restoreBackup } from '#stores/restore-backup.ts';
import { FIRST, later, THANKS } from '#tests/support/cast.ts';
import { freshFile } from '#tests/support/fresh-database.ts';

async function bookWith(title?: string): Promise<{ folder: string; file: string; db: Database }> {
  const folder = mkdtempSync(path.join(tmpdir(), 'creasebook-backups-'));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  const file = path.join(folder, 'creasebook.db');
  writeFileSync(file, await freshFile());
  const db = await opened(folder);
  if (title) await createProject(db, { ...THANKS, title }, FIRST);
  return { folder, file, db };
}

async function opened(folder: string): Promise<Database> {
  const book = await openBook(folder, FIRST);
  if ('refused' in book) throw new Error(book.refused);
  onTestFinished(() => closeDatabase(book.db));
  return book.db;
}

const titles = async (db: Database): Promise<string[]> => (await listProjects(db)).map(({ title }) => title);

describe('a backup', () => {
  it('holds what was written last, though the file alone does not yet', async () => {
    const { folder, file } = await bookWith('Ferns');
    expect(readFileSync(file).includes('Ferns')).toBe(false);
    const backup = await backUp(folder, FIRST, 'asked-for');
    expect(readFileSync(backup).includes('Ferns')).toBe(true);
    expect(await listBackups(folder)).toMatchObject([
      { kind: 'asked-for', at: FIRST.replace('.000', ''), holds: { projects: 1, designs: 0, offcuts: 0 } },
    ]);
  });

  it('is made once a day, and one that can’t be made leaves nothing of itself', async () => {
    const { folder, file, db } = await bookWith();
    await backUpDaily(folder, FIRST);
    await backUpDaily(folder, later(30));
    expect(await listBackups(folder)).toHaveLength(1);
    await backUpDaily(folder, later(24 * 60));
    expect(await listBackups(folder)).toHaveLength(2);
    await closeDatabase(db);
    writeFileSync(file, readFileSync(file).fill(0xa5, 4096 * 3, 4096 * 9));
    await expect(backUp(folder, later(1), 'asked-for')).rejects.toThrow();
    expect(readdirSync(path.join(folder, 'backups'))).toHaveLength(2);
  });

  it('is kept: seven days, four weeks before them, and five of each other kind', () => {
    const day = (n: number, kind: BackupKind) => ({
      at: new Date(Date.UTC(2026, 10, 30 - n)).toISOString(),
      kind,
    });
    const all = Array.from({ length: 60 }, (_, n) => [day(n, 'daily'), day(n, 'before-update')]).flat();
    const gone = new Set(outlived(all));
    const kept = all.filter((one) => !gone.has(one));
    const days = (kind: BackupKind) =>
      kept.filter((one) => one.kind === kind).map(({ at }) => at.slice(5, 10));
    // 30 November 2026 is a Monday: the weeks before the seven days end on 23 (itself a Monday), 22, 15 and 8 November.
    expect(days('daily')).toEqual([
      ...['11-30', '11-29', '11-28', '11-27', '11-26', '11-25', '11-24'],
      ...['11-23', '11-22', '11-15', '11-08'],
    ]);
    expect(days('before-update')).toHaveLength(5);
  });

  it('of every day of a year, pruned every day, leaves the same', () => {
    let there: { at: string; kind: BackupKind }[] = [];
    for (let day = 0; day < 365; day += 1) {
      there = [{ at: new Date(Date.UTC(2026, 0, 1 + day)).toISOString(), kind: 'daily' }, ...there];
      const gone = new Set(outlived(there));
      there = there.filter((one) => !gone.has(one));
    }
    expect(there).toHaveLength(11);
    expect(there.at(-1)!.at.slice(0, 10)).toBe('2026-12-06');
  });
});

describe('put back', () => {
  it('it is the book, and the book as it was lies among the backups', async () => {
    const { folder, db } = await bookWith('Ferns');
    const backup = await backUp(folder, FIRST, 'daily');
    await createProject(db, { ...THANKS, title: 'Hares' }, later(1));
    await closeDatabase(db);
    const restored = await restoreBackup(folder, backup, later(2));
    expect(restored).toEqual({ keptAside: expect.stringContaining('before-restore') });
    const again = await opened(folder);
    expect(await titles(again)).toEqual(['Ferns']);
    expect(await checkData(again)).toEqual([]);
    expect((await listBackups(folder)).map(({ kind, holds }) => [kind, holds?.projects])).toEqual([
      ['before-restore', 2],
      ['daily', 1],
    ]);
  });

  it('beside what a crash had left written ahead of the book, none of which gets into it', async () => {
    const { folder, file, db } = await bookWith('Ferns');
    const backup = await backUp(folder, FIRST, 'daily');
    for (let one = 0; one < 30; one += 1)
      await createProject(db, { ...THANKS, title: `Hares ${one}` }, later(1));
    const other = mkdtempSync(path.join(folder, 'crashed-'));
    for (const part of ['', '-wal'])
      writeFileSync(path.join(other, `creasebook.db${part}`), readFileSync(file + part));
    expect(await restoreBackup(other, backup, later(2))).toHaveProperty('keptAside');
    expect(existsSync(path.join(other, 'creasebook.db-wal'))).toBe(false);
    expect(await titles(await opened(other))).toEqual(['Ferns']);
    expect((await listBackups(other))[0]!.holds!.projects).toBe(31);
  });

  it('in the place of a damaged book too, whose bytes are kept', async () => {
    const { folder, file, db } = await bookWith('Ferns');
    const backup = await backUp(folder, FIRST, 'daily');
    await closeDatabase(db);
    const torn = readFileSync(file).fill(0xa5, 0, 4096);
    writeFileSync(file, torn);
    const restored = await restoreBackup(folder, backup, later(2));
    if ('refused' in restored) throw new Error(restored.refused);
    expect(readFileSync(restored.keptAside!).equals(torn)).toBe(true);
    expect(await titles(await opened(folder))).toEqual(['Ferns']);
  });

  it('not while the book is open elsewhere, and nothing that is no book', async () => {
    const { folder, file, db } = await bookWith('Ferns');
    const backup = await backUp(folder, FIRST, 'daily');
    expect(await restoreBackup(folder, backup, later(2))).toMatchObject({
      refused: expect.stringMatching(/is open in another program: stop it first\. Nothing was changed\./),
    });
    await createProject(db, { ...THANKS, title: 'Hares' }, later(3));
    await closeDatabase(db);
    const before = readFileSync(file);
    const letter = path.join(folder, 'letter.db');
    writeFileSync(letter, 'Dear neighbour');
    for (const [from, why] of [
      [letter, 'it is no database'],
      [path.join(folder, 'nowhere.db'), 'There is no file'],
    ] as const)
      expect(await restoreBackup(folder, from, later(4))).toMatchObject({
        refused: expect.stringContaining(why),
      });
    expect(readFileSync(file).equals(before)).toBe(true);
    expect(readdirSync(folder).sort()).toEqual(['backups', 'creasebook.db', 'letter.db']);
  });
});
