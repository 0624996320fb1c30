/** The whole book, taken away from the tools page. */
import { expect, test } from 'vitest';
import { openApp } from '#tests/support/app.ts';
import { fillShelf } from '#tests/support/cast.ts';

test('comes as a zip that is named after the day', async () => {
  const app = await openApp();
  await fillShelf(app.db);
  expect(await (await app.get('/tools')).text()).toContain('href="/archive"');
  const answer = await app.get('/archive');
  expect(answer.headers.get('Content-Type')).toBe('application/zip');
  expect(answer.headers.get('Content-Disposition')).toContain('creasebook-2026-03-01.zip');
  const bytes = Buffer.from(await answer.arrayBuffer());
  expect(bytes.subarray(0, 2).toString()).toBe('PK');
  expect(bytes.includes('archive.json')).toBe(true);
});
