/** The whole book to take away, as one open archive. */
import { Readable } from 'node:stream';
import { Hono } from 'hono';
import { writeArchive } from '#stores/archive.ts';
import { nowIn } from '../http/clock.ts';
import type { Env } from '../http/env.ts';

export const archive = new Hono<Env>();

archive.get('/', async (c) => {
  const at = nowIn(c);
  const zip = Readable.toWeb(Readable.from(await writeArchive(c.get('db'), at))) as ReadableStream;
  return c.body(zip, 200, {
    'Content-Type': 'application/zip',
    'Content-Disposition': `attachment; filename="creasebook-${at.slice(0, 10)}.zip"`,
    'Cache-Control': 'no-store',
  });
});
