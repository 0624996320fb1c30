/** Starts the app as its reader would, in a process and folder of its own, and opens a browser on it. */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';
import { browserPath } from './find-browser.ts';

export interface RunningApp {
  readonly url: string;
  readonly folder: string;
  readonly stop: () => Promise<void>;
}

export async function startApp(): Promise<RunningApp> {
  const folder = mkdtempSync(join(tmpdir(), 'creasebook-'));
  const port = await freePort();
  const env = { ...process.env, PORT: `${port}`, HOST: '127.0.0.1', CREASEBOOK_DATA: folder };
  const child = spawn(process.execPath, ['--import', 'tsx', 'src/server.ts'], {
    env,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  await listening(child);
  return { url: `http://127.0.0.1:${port}`, folder, stop: () => stop(child, folder) };
}

export const openBrowser = (): Promise<Browser> =>
  chromium.launch({
    executablePath: browserPath!,
    chromiumSandbox: false,
    args: [
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => resolve(typeof address === 'object' && address ? address.port : 0));
    });
  });
}

function listening(child: ChildProcess): Promise<void> {
  return new Promise((resolve, reject) => {
    let heard = '';
    const hear = (chunk: Buffer): void => {
      heard += chunk.toString();
      if (heard.includes('Creasebook is open')) resolve();
    };
    child.stdout!.on('data', hear);
    child.stderr!.on('data', hear);
    child.once('exit', (code) => reject(new Error(`the app ended with ${code}: ${heard}`)));
  });
}

function stop(child: ChildProcess, folder: string): Promise<void> {
  return new Promise((resolve) => {
    child.once('exit', () => {
      rmSync(folder, { recursive: true, force: true });
      resolve();
    });
    child.kill('SIGTERM');
  });
}
