/** `npm run verify [-- --demo]`: checks every invariant of the data file, or of a fresh demo, and says what fails. */
import { existsSync } from 'node:fs';
import path from 'node:path';
import { seedDemo } from '#seed/demo.ts';
import { checkData, countRows } from '#stores/checks.ts';
import { closeDatabase, type Database, migrate, openDatabase } from '#stores/database.ts';

const demo = process.argv.includes('--demo');
const folder = process.env.CREASEBOOK_DATA ?? 'data';
const file = path.join(folder, 'creasebook.db');

if (!demo && !existsSync(file)) {
  console.error(`There is no data in ${path.resolve(folder)} yet. Start Creasebook first, or add --demo.`);
  process.exit(1);
}

const db = openDatabase(demo ? ':memory:' : file);
try {
  await migrate(db);
  if (demo) await seedDemo(db, new Date());
  const failures = await checkData(db);
  for (const failure of failures) console.error(`✗ ${failure}`);
  console.log(failures.length === 0 ? await summary(db) : `Broken: ${failures.length}.`);
  process.exitCode = failures.length === 0 ? 0 : 1;
} finally {
  await closeDatabase(db);
}

async function summary(db: Database): Promise<string> {
  const { movements, offcuts, projects } = await countRows(db);
  return `Every invariant holds: ${movements} movements, ${offcuts} offcuts, ${projects} projects.`;
}
