/**
 * Dated copies of the whole book in `backups/` beside it, each checked before it counts. Verbs: `backUp`, `backUpDaily`,
 * `listBackups`, `newestBackup`. Knows files and how long they are kept; restore-backup.ts puts one back.
 */
import { mkdir, open, readdir, rename, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import SQLite from 'better-sqlite3';
import { bookIn, stateOf } from './book-state.ts';

const BACKUP_KINDS = ['daily', 'before-update', 'before-restore', 'asked-for'] as const;
export type BackupKind = (typeof BACKUP_KINDS)[number];

export interface Backup {
  readonly name: string;
  readonly at: string;
  readonly kind: BackupKind;
  readonly bytes: number;
  /** Undefined where it can't be read. */
  readonly holds: Counts | undefined;
}

interface Counts {
  readonly projects: number;
  readonly designs: number;
  readonly offcuts: number;
}

type Named = Pick<Backup, 'name' | 'at' | 'kind'>;

export const backupsIn = (folder: string): string => path.join(folder, 'backups');

export const backupName = (at: string, kind: BackupKind): string =>
  `creasebook-${at.slice(0, 10)}-${at.slice(11, 19).replaceAll(':', '')}-${kind}.db`;

/** The path of the copy, which holds everything written until now, also by a server that runs. */
export async function backUp(folder: string, at: string, kind: BackupKind): Promise<string> {
  await mkdir(backupsIn(folder), { recursive: true });
  const file = path.join(backupsIn(folder), backupName(at, kind));
  const half = `${file}.part`;
  try {
    await rm(half, { force: true });
    copyWhole(bookIn(folder), half);
    const { is } = await stateOf(half);
    if (is !== 'current' && is !== 'earlier') throw new Error(`the copy is ${is}`);
    await flushed(half);
    await rename(half, file);
  } catch (problem) {
    await rm(half, { force: true });
    throw problem;
  }
  for (const { name } of outlived(await named(folder))) await removeWhole(path.join(backupsIn(folder), name));
  return file;
}

/** Unless there is one of today. */
export async function backUpDaily(folder: string, at: string): Promise<void> {
  const today = (await named(folder)).some(
    (one) => one.kind === 'daily' && one.at.slice(0, 10) === at.slice(0, 10),
  );
  if (!today) await backUp(folder, at, 'daily');
}

/** Newest first. */
export async function listBackups(folder: string): Promise<Backup[]> {
  const backups = (await named(folder)).map(async (one) => {
    const file = path.join(backupsIn(folder), one.name);
    return { ...one, bytes: (await stat(file)).size, holds: countsIn(file) };
  });
  return Promise.all(backups);
}

/** As it would be typed from the folder in which Creasebook was started. */
export async function newestBackup(folder: string): Promise<string | undefined> {
  const [newest] = await named(folder);
  return newest && path.join(backupsIn(folder), newest.name);
}

const DAYS = 7;
const WEEKS = 4;
const OF_OTHER_KINDS = 5;

/** All but seven days, the last one of each of the four weeks before them, and the newest five of each other kind. */
export function outlived<One extends Pick<Backup, 'at' | 'kind'>>(newestFirst: readonly One[]): One[] {
  const kept = new Set<One>();
  for (const kind of BACKUP_KINDS) {
    const alike = newestFirst.filter((one) => one.kind === kind);
    for (const one of alike.slice(0, kind === 'daily' ? DAYS : OF_OTHER_KINDS)) kept.add(one);
  }
  const weeks = new Map<number, One>();
  for (const one of newestFirst.filter(({ kind }) => kind === 'daily').slice(DAYS))
    if (!weeks.has(weekOf(one.at))) weeks.set(weekOf(one.at), one);
  for (const one of [...weeks.values()].slice(0, WEEKS)) kept.add(one);
  return newestFirst.filter((one) => !kept.has(one));
}

/** Weeks begin on Monday; the first of January 1970 was a Thursday. */
const weekOf = (at: string): number => Math.floor((Date.parse(at) / 86_400_000 + 3) / 7);

const NAME = /^creasebook-(\d{4}-\d\d-\d\d)-(\d\d)(\d\d)(\d\d)-([a-z-]+)\.db$/;

async function named(folder: string): Promise<Named[]> {
  const names = await readdir(backupsIn(folder)).catch((): string[] => []);
  const read = names.flatMap((name): Named[] => {
    const [, day, hours, minutes, seconds, of] = NAME.exec(name) ?? [];
    const kind = BACKUP_KINDS.find((one) => one === of);
    return kind ? [{ name, at: `${day}T${hours}:${minutes}:${seconds}Z`, kind }] : [];
  });
  return read.sort((one, other) => (one.name < other.name ? 1 : -1));
}

function copyWhole(from: string, to: string): void {
  const book = new SQLite(from, { readonly: true, fileMustExist: true, timeout: 500 });
  try {
    book.prepare('VACUUM INTO ?').run(to);
  } finally {
    book.close();
  }
}

async function flushed(file: string): Promise<void> {
  const handle = await open(file, 'r+');
  await handle.sync();
  await handle.close();
}

/** A damaged book that was kept aside has what was written ahead of it beside it. */
async function removeWhole(file: string): Promise<void> {
  for (const part of ['', '-wal', '-shm']) await rm(file + part, { force: true });
}

function countsIn(file: string): Counts | undefined {
  try {
    const book = new SQLite(file, { readonly: true, timeout: 500 });
    try {
      return book.prepare<[], Counts>(COUNTS).get();
    } finally {
      book.close();
    }
  } catch {
    return undefined;
  }
}

const COUNTS = `SELECT (SELECT count(*) FROM projects) AS projects, (SELECT count(*) FROM designs) AS designs,
  (SELECT coalesce(sum(count), 0) FROM offcuts) AS offcuts`;
