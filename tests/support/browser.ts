/** Opens the app for a browser, on a port and in a folder of its own, and the browser that all files share. Knows no page. */
import { once } from 'node:events';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type ServerType, serve } from '@hono/node-server';
import type { Hono } from 'hono';
import { type Browser, chromium } from 'playwright-core';
import type { Planner } from '#core/cutting/planner.ts';
import { seedDemo } from '#seed/demo.ts';
import { type PlanningPool, planningPool } from '#src/planning.ts';
import { closeDatabase, openDatabase } from '#stores/database.ts';
import { createApp } from '#web/app.ts';
import type { Env } from '#web/http/env.ts';
import { browserPath } from './find-browser.ts';
import { freshFile } from './fresh-database.ts';

export interface RunningApp {
  readonly url: string;
  readonly folder: string;
  readonly stop: () => Promise<void>;
}

/** As src/server.ts would, but in this process: what a program of its own costs is spent once, in tests/server.test.ts. */
export async function startApp(): Promise<RunningApp> {
  const folder = mkdtempSync(join(tmpdir(), 'creasebook-'));
  const file = join(folder, 'creasebook.db');
  writeFileSync(file, await freshFile());
  const db = openDatabase(file);
  let app: Hono<Env>;
  const server = serve({ fetch: (request) => app.fetch(request), port: 0, hostname: '127.0.0.1' });
  await once(server, 'listening');
  const host = `127.0.0.1:${(server.address() as AddressInfo).port}`;
  app = createApp({
    db,
    now: () => new Date(),
    token: () => crypto.randomUUID(),
    loadDemo: seedDemo,
    hosts: [host],
    planner: sharedPlanner,
    showsStyle: true,
  });
  return {
    url: `http://${host}`,
    folder,
    stop: async () => {
      await closed(server);
      await closeDatabase(db);
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

let pool: PlanningPool | undefined;

/** One warm worker for all files of this process, started by the first that plans. */
const sharedPlanner: Planner = {
  start: (asked) => warm().start(asked),
  fill: (asked) => warm().fill(asked),
};

function warm(): PlanningPool {
  pool ??= planningPool(1);
  return pool;
}

function closed(server: ServerType): Promise<unknown> {
  if ('closeAllConnections' in server) server.closeAllConnections();
  const done = once(server, 'close');
  server.close();
  return done;
}

let browser: Promise<Browser> | undefined;

/** One for all files of this process, which ends with it; whoever asks closes the contexts that she opens. */
export function sharedBrowser(): Promise<Browser> {
  browser ??= openBrowser();
  return browser;
}

export const openBrowser = (): Promise<Browser> =>
  chromium.launch({
    executablePath: browserPath!,
    chromiumSandbox: false,
    handleSIGTERM: false,
    args: [
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
