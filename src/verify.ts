/** `npm run verify [-- --demo]`: checks every invariant of the data file, or of a fresh demo, and says what fails. */
import { existsSync } from 'node:fs';
import path from 'node:path';
import { seedDemo } from '#seed/demo.ts';
import { openBook } from '#stores/book.ts';
import { checkData, countRows } from '#stores/checks.ts';
import { closeDatabase, type Database, migrate, openDatabase } from '#stores/database.ts';

const USAGE = `Usage: npm run verify [-- --demo]
Checks every invariant of the data in CREASEBOOK_DATA (${path.resolve(process.env.CREASEBOOK_DATA ?? 'data')}), changing nothing
but what a newer version migrates. --demo checks a fresh demo in memory instead. Ends with 0 if all hold, 1 if one
fails or there is no data, 2 where it was asked otherwise.`;

const asked = process.argv.slice(2);
if (asked.includes('--help') || asked.includes('-h')) {
  console.log(USAGE);
  process.exit(0);
}
if (asked.some((one) => one !== '--demo')) {
  console.error(USAGE);
  process.exit(2);
}

const demo = asked.includes('--demo');
const folder = process.env.CREASEBOOK_DATA ?? 'data';
const file = path.join(folder, 'creasebook.db');

if (!demo && !existsSync(file)) {
  console.error(`There is no data in ${path.resolve(folder)} yet. Start Creasebook first, or add --demo.`);
  process.exit(1);
}

const db = demo ? await freshDemo() : await theBook();
try {
  const failures = await checkData(db);
  for (const failure of failures) console.error(`✗ ${failure}`);
  console.log(failures.length === 0 ? await summary(db) : `Broken: ${failures.length}.`);
  process.exitCode = failures.length === 0 ? 0 : 1;
} finally {
  await closeDatabase(db);
}

async function freshDemo(): Promise<Database> {
  const db = openDatabase(':memory:');
  await migrate(db);
  await seedDemo(db, new Date());
  return db;
}

async function theBook(): Promise<Database> {
  const opened = await openBook(folder, new Date().toISOString());
  if ('db' in opened) return opened.db;
  console.error(opened.refused);
  process.exit(1);
}

async function summary(db: Database): Promise<string> {
  const { movements, offcuts, projects } = await countRows(db);
  return `Every invariant holds: ${movements} movements, ${offcuts} offcuts, ${projects} projects.`;
}
