/**
 * Starts Creasebook: reads the environment, migrates the database, serves the pages. `--demo` starts on a fresh demo
 * in a folder of its own. Knows no page.
 */
import { randomUUID } from 'node:crypto';
import { mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { serve } from '@hono/node-server';
import { seedDemo } from '#seed/demo.ts';
import { closeDatabase, migrate, openDatabase } from '#stores/database.ts';
import { createApp } from '#web/app.ts';
import { planningPool } from './planning.ts';

const demo = process.argv.includes('--demo');
const port = readPort(process.env.PORT ?? '4870');
const hostname = process.env.HOST ?? '127.0.0.1';
const folder = demo ? 'demo-data' : (process.env.CREASEBOOK_DATA ?? 'data');

if (demo) rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });

const db = openDatabase(join(folder, 'creasebook.db'));
await migrate(db);
if (demo) await seedDemo(db, new Date());

const planner = planningPool();
const app = createApp({
  db,
  now: () => new Date(),
  token: randomUUID,
  loadDemo: seedDemo,
  planner,
  hosts: [...new Set([hostname, '127.0.0.1', 'localhost', '[::1]'])].map((name) =>
    `${name}:${port}`.toLowerCase(),
  ),
});

const server = serve({ fetch: app.fetch, port, hostname }, () => {
  console.log(`Creasebook is open at http://${hostname}:${port}`);
  if (demo) console.log(`This is the demo; its data lies in ${folder}/ and is made afresh at every start.`);
});

server.on('error', (error: NodeJS.ErrnoException) => {
  const busy = error.code === 'EADDRINUSE';
  console.error(busy ? `Port ${port} is taken. Start with another: PORT=4871 npm start` : String(error));
  process.exit(1);
});

for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.on(signal, () => {
    server.close(() =>
      planner
        .close()
        .then(() => closeDatabase(db))
        .then(() => process.exit(0)),
    );
    setTimeout(() => process.exit(0), 500).unref();
  });
}

function readPort(text: string): number {
  const value = Number(text);
  if (Number.isInteger(value) && value > 0 && value < 65_536) return value;
  console.error(`PORT has to be a number from 1 to 65535, not “${text}”.`);
  process.exit(1);
}
