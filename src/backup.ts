/** `npm run backup [-- list | restore FILE]`: makes a backup, says what there is, or puts one back. */
import path from 'node:path';
import { type Backup, backUp, listBackups } from '#stores/backups.ts';
import { openBook } from '#stores/book.ts';
import { closeDatabase } from '#stores/database.ts';
import { restoreBackup } from '#stores/restore-backup.ts';

const USAGE = `Usage: npm run backup [-- list | restore FILE]
Makes a backup of the book in CREASEBOOK_DATA (${path.resolve(process.env.CREASEBOOK_DATA ?? 'data')}), in its folder backups/;
Creasebook may be running meanwhile. list says what is there. restore puts FILE in the place of the book and keeps the book
as it was among the backups; stop Creasebook first. Ends with 0, or 2 where nothing was changed.`;

const folder = process.env.CREASEBOOK_DATA ?? 'data';
const at = new Date().toISOString();
const [verb, file, ...more] = process.argv.slice(2);

try {
  await answer();
} catch (problem) {
  fail(`That could not be done: ${(problem as Error).message}. Nothing was changed.`);
}

async function answer(): Promise<void> {
  if (verb === '--help' || verb === '-h') console.log(USAGE);
  else if (verb === undefined) await make();
  else if (verb === 'list' && file === undefined) await list();
  else if (verb === 'restore' && file !== undefined && more.length === 0) await putBack(file);
  else fail(USAGE);
}

async function make(): Promise<void> {
  const opened = await openBook(folder, at);
  if ('refused' in opened) return fail(opened.refused);
  await closeDatabase(opened.db);
  console.log(`${await backUp(folder, at, 'asked-for')}: the whole book, checked.`);
}

async function list(): Promise<void> {
  const backups = await listBackups(folder);
  console.log(
    backups.length === 0
      ? `There is no backup in ${path.resolve(folder)} yet.`
      : backups.map(line).join('\n'),
  );
}

function line({ name, bytes, holds }: Backup): string {
  const size = `${Math.ceil(bytes / 1024)} KiB`;
  if (!holds) return `${path.join(folder, 'backups', name)}  ${size}  can’t be read`;
  const { projects, designs, offcuts } = holds;
  return `${path.join(folder, 'backups', name)}  ${size}  ${projects} projects, ${designs} designs, ${offcuts} offcuts`;
}

async function putBack(from: string): Promise<void> {
  const restored = await restoreBackup(folder, from, at);
  if ('refused' in restored) return fail(restored.refused);
  const { keptAside } = restored;
  console.log(`${path.resolve(from)} is the book now.`);
  if (keptAside) console.log(`The book as it was: ${keptAside}`);
  const opened = await openBook(folder, at);
  if ('refused' in opened) return fail(opened.refused);
  await closeDatabase(opened.db);
}

function fail(why: string): void {
  console.error(why);
  process.exitCode = 2;
}
