/** `npm run restore -- in.zip [--dry-run]`: brings an archive into the book, or only says what it would do. */
import path from 'node:path';
import { backUp } from '#stores/backups.ts';
import { openBook } from '#stores/book.ts';
import { closeDatabase } from '#stores/database.ts';
import type { Merged, MergedTable } from '#stores/merge.ts';
import { restore } from '#stores/restore.ts';

const USAGE = `Usage: npm run restore -- in.zip [--dry-run]
Brings an archive into the book in CREASEBOOK_DATA (${path.resolve(process.env.CREASEBOOK_DATA ?? 'data')}), which is made where there
is none. What is new comes in; what is there stays as it is; what differs is named and left alone. With --dry-run it only
says so. A backup is made before. Ends with 0, or 2 where it was asked otherwise or the archive can't be used; nothing was written then.`;
const SHOWN = 5;

const asked = process.argv.slice(2);
const dryRun = asked.includes('--dry-run');
const [file, ...more] = asked.filter((one) => one !== '--dry-run');
if (file === '--help' || file === '-h') {
  console.log(USAGE);
  process.exit(0);
}
if (!file || file.startsWith('-') || more.length > 0) {
  console.error(USAGE);
  process.exit(2);
}
const folder = process.env.CREASEBOOK_DATA ?? 'data';
const at = new Date().toISOString();
const opened = await openBook(folder, at);
if ('refused' in opened) {
  console.error(opened.refused);
  process.exit(2);
}
const { db } = opened;
try {
  if (!dryRun) await backUp(folder, at, 'before-restore');
  const answer = await restore(db, file, { dryRun });
  if ('refused' in answer) {
    console.error(answer.refused);
    process.exitCode = 2;
  } else console.log(report(answer));
} finally {
  await closeDatabase(db);
}

function report({ tables, recoded }: Merged): string {
  const lines = tables.filter(({ added, same, differ }) => added + same + differ.length > 0).map(line);
  const codes = recoded.map(({ was, is }) => `Offcut ${was} is ${is} here: pencil the new code on it.`);
  const end = dryRun ? 'Nothing was written: this was a dry run.' : 'Done.';
  return [...lines, ...codes, lines.length === 0 ? 'That archive is empty.' : end].join('\n');
}

function line({ table, added, same, differ }: MergedTable): string {
  const some = differ.slice(0, SHOWN).join(', ') + (differ.length > SHOWN ? ' …' : '');
  const different = differ.length === 0 ? '' : `, ${differ.length} different here and left alone (${some})`;
  return `${table.replaceAll('_', ' ')}: ${added} new, ${same} as here${different}`;
}
