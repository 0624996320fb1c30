/** A book that can't be written just now: the page says why, keeps what was typed, and nothing is half-written. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import SQLite from 'better-sqlite3';
import { sql } from 'kysely';
import { expect, onTestFinished, test } from 'vitest';
import { openDatabase } from '#stores/database.ts';
import { openApp } from '#tests/support/app.ts';
import { freshFile } from '#tests/support/fresh-database.ts';

const card = { name: 'Square “tall”', width: '5', height: '5 1/2', bulk: '', once: 'token-of-this-form' };

async function onDisk() {
  const folder = mkdtempSync(path.join(tmpdir(), 'creasebook-held-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const file = path.join(folder, 'creasebook.db');
  writeFileSync(file, await freshFile());
  const db = openDatabase(file);
  onTestFinished(() => db.destroy());
  const app = await openApp(undefined, { db });
  return { folder, file, app, db };
}

/** The fields of the form on the page, as a browser would send them. */
const kept = (html: string): [string, string][] =>
  [...html.matchAll(/<input type="hidden" name="([^"]*)" value="([^"]*)"/g)].map(([, name, value]) => [
    name!,
    value!.replaceAll('&quot;', '"'),
  ]);

test('another program holds it: a short wait, the reason, and the form sent again does its thing once', async () => {
  const { file, app, db } = await onDisk();
  const other = new SQLite(file);
  onTestFinished(() => void other.close());
  other.exec('BEGIN IMMEDIATE');
  const answers = await Promise.all([1, 2].map(() => app.post('/tools/cards', card)));
  expect(answers.map(({ status }) => status)).toEqual([503, 503]);
  expect((await app.get('/tools')).status).toBe(200);
  const html = await answers[0]!.text();
  expect(html).toContain('Another program is holding the book.');
  expect(html).toContain('Nothing was written.');
  expect(kept(html)).toEqual(Object.entries(card));
  other.exec('COMMIT');
  expect(await db.selectFrom('card_sizes').selectAll().execute()).toEqual([]);
  for (const _ of [1, 2]) expect((await app.post('/tools/cards', kept(html))).status).toBe(303);
  expect(await db.selectFrom('card_sizes').select('name').execute()).toEqual([{ name: card.name }]);
});

test('no room and no leave to write are told apart, and a change of something keeps what it meant', async () => {
  const { app, db } = await onDisk();
  const { headers } = await app.post('/projects', { title: 'Ferns' });
  const pages = await sql<{ page_count: number }>`PRAGMA page_count`.execute(db);
  await sql`PRAGMA max_page_count = ${sql.lit(pages.rows[0]!.page_count)}`.execute(db);
  const put = { _method: 'PUT', title: 'Ferns', notes: 'x'.repeat(3999) };
  const project = headers.get('Location')!;
  let full = await app.post(project, put);
  for (let one = 0; full.status === 303 && one < 40; one += 1)
    full = await app.post('/projects', {
      title: 'More ferns',
      notes: 'y'.repeat(3999),
      once: `token-${one}-of-many`,
    });
  expect(full.status).toBe(503);
  expect(await full.text()).toContain('no room left on the disk');
  await sql`PRAGMA query_only = ON`.execute(db);
  const refused = await app.post(project, put);
  const html = await refused.text();
  expect([refused.status, html.includes('may only be read')]).toEqual([503, true]);
  expect(Object.fromEntries(kept(html))).toEqual(put);
  expect((await app.get(project)).status).toBe(200);
});

test('a folder that is gone is said, instead of writing where nobody finds it', async () => {
  const { folder, app } = await onDisk();
  expect((await app.get('/tools')).status).toBe(200);
  rmSync(folder, { recursive: true });
  const answer = await app.post('/tools/cards', card);
  expect(answer.status).toBe(503);
  expect(await answer.text()).toContain('no longer where it was');
});
