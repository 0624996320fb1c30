/** `npm run archive -- out.zip`: writes the whole book as one open archive. */
import { createWriteStream, existsSync, renameSync, rmSync, statSync } from 'node:fs';
import path from 'node:path';
import { pipeline } from 'node:stream/promises';
import { writeArchive } from '#stores/archive.ts';
import { openBook } from '#stores/book.ts';
import { closeDatabase } from '#stores/database.ts';

const USAGE = `Usage: npm run archive -- out.zip
Writes everything in CREASEBOOK_DATA (${path.resolve(process.env.CREASEBOOK_DATA ?? 'data')}) into one zip. Creasebook may be
running meanwhile. Ends with 2 where it was asked otherwise.`;

const [out, ...more] = process.argv.slice(2);
if (out === '--help' || out === '-h') {
  console.log(USAGE);
  process.exit(0);
}
if (!out || out.startsWith('-') || more.length > 0) {
  console.error(USAGE);
  process.exit(2);
}
const folder = process.env.CREASEBOOK_DATA ?? 'data';
const file = path.join(folder, 'creasebook.db');
if (!existsSync(file)) {
  console.error(`There is no book in ${path.resolve(folder)} yet: start Creasebook first.`);
  process.exit(2);
}

const half = `${out}.part`;
const opened = await openBook(folder, new Date().toISOString());
if ('refused' in opened) {
  console.error(opened.refused);
  process.exit(2);
}
const { db } = opened;
try {
  await pipeline(await writeArchive(db, new Date().toISOString()), createWriteStream(half));
  renameSync(half, out);
  console.log(`${path.resolve(out)}: ${Math.ceil(statSync(out).size / 1024)} KiB, the whole book.`);
} catch (problem) {
  rmSync(half, { force: true });
  console.error(`The archive could not be written: ${(problem as Error).message}.`);
  process.exitCode = 2;
} finally {
  await closeDatabase(db);
}
