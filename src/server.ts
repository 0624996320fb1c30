/**
 * Starts Creasebook: reads the environment, migrates the database, serves the pages. `--demo` starts on a fresh demo
 * in a folder of its own. Knows no page.
 */
import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { serve } from '@hono/node-server';
import { seedDemo } from '#seed/demo.ts';
import { backUpDaily } from '#stores/backups.ts';
import { openBook } from '#stores/book.ts';
import { closeDatabase } from '#stores/database.ts';
import { createApp } from '#web/app.ts';
import { planningPool } from './planning.ts';

const demo = process.argv.includes('--demo');
const port = readPort(process.env.PORT ?? '4870');
const hostname = process.env.HOST || '127.0.0.1';
const name = hostname.includes(':') ? `[${hostname}]` : hostname;
const folder = demo ? 'demo-data' : process.env.CREASEBOOK_DATA || 'data';

const SOON_MS = 2_000;
const HOUR_MS = 3_600_000;

await portIsFree();
if (demo) rmSync(folder, { recursive: true, force: true });
const opened = await openBook(folder, new Date().toISOString());
if ('refused' in opened) {
  console.error(opened.refused);
  process.exit(1);
}
const { db } = opened;
if (demo) await seedDemo(db, new Date());

const planner = planningPool();
const app = createApp({
  db,
  now: () => new Date(),
  token: randomUUID,
  loadDemo: seedDemo,
  planner,
  folder,
  showsStyle: demo,
  hosts: [...new Set([name, '127.0.0.1', 'localhost', '[::1]'])].map((one) => `${one}:${port}`.toLowerCase()),
});

const server = serve({ fetch: app.fetch, port, hostname }, () => {
  console.log(`Creasebook is open at http://${name}:${port}`);
  if (!/^(127\.|localhost$|::1$)/i.test(hostname)) {
    console.log(
      'Take care: it has no accounts, and others who reach this machine can read and change the book.',
    );
  }
  if (!demo) {
    setTimeout(keepDaily, SOON_MS).unref();
    setInterval(keepDaily, HOUR_MS).unref();
  }
  if (demo) console.log(`This is the demo; its data lies in ${folder}/ and is made afresh at every start.`);
});

server.on('error', cannotListen);

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

/** Asked before anything is written, so that a second demo does not wipe the folder of one that runs. */
async function portIsFree(): Promise<void> {
  const probe = createServer().listen(port, hostname);
  await once(probe, 'listening').catch(cannotListen);
  await new Promise((done) => probe.close(done));
}

function cannotListen(error: NodeJS.ErrnoException): never {
  const again = `PORT=${port + 1} npm ${demo ? 'run demo' : 'start'}`;
  const busy = error.code === 'EADDRINUSE';
  console.error(busy ? `Port ${port} is taken. Start with another: ${again}` : String(error));
  process.exit(1);
}

/** Looked after every hour, for a server that runs for weeks; what is wrong with the disk is said and stops nobody. */
async function keepDaily(): Promise<void> {
  await backUpDaily(folder, new Date().toISOString()).catch((problem: Error) =>
    console.error(`Today’s backup could not be written: ${problem.message}.`),
  );
}

function readPort(text: string): number {
  const value = Number(text);
  if (Number.isInteger(value) && value > 0 && value < 65_536) return value;
  console.error(`PORT has to be a number from 1 to 65535, not “${text}”.`);
  process.exit(1);
}
