/** The backups that lie beside the book, listed and to take away. */
import { createReadStream } from 'node:fs';
import { Readable } from 'node:stream';
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import { type Backup, backupsIn, listBackups } from '#stores/backups.ts';
import { BackupsPage } from '#views/tools/backups.tsx';
import { nowIn } from '../http/clock.ts';
import type { Env, Request } from '../http/env.ts';
import { notFound } from '../http/not-found.ts';
import { reply } from '../http/reply.ts';

export const backups = new Hono<Env>();

backups.get('/', async (c) => {
  const body = jsx(BackupsPage, { backups: await listed(c), at: nowIn(c) });
  return reply(c, { title: 'Backups', section: 'tools', body });
});

backups.get('/:name', async (c) => {
  const backup = (await listed(c)).find(({ name }) => name === c.req.param('name'));
  const { folder } = c.get('services');
  if (!backup || folder === undefined) return notFound(c);
  const file = Readable.toWeb(createReadStream(`${backupsIn(folder)}/${backup.name}`)) as ReadableStream;
  return c.body(file, 200, {
    'Content-Type': 'application/vnd.sqlite3',
    'Content-Disposition': `attachment; filename="${backup.name}"`,
    'Cache-Control': 'no-store',
  });
});

async function listed(c: Request): Promise<Backup[]> {
  const { folder } = c.get('services');
  return folder === undefined ? [] : listBackups(folder);
}
