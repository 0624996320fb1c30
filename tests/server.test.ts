/** Starting Creasebook from a shell, in the ways in which it goes wrong. Looks at no page. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';

const folder = mkdtempSync(join(tmpdir(), 'creasebook-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** What it says until it stops by itself or is open, when it is stopped. */
async function start(env: Record<string, string>): Promise<{ said: string; status: number | null }> {
  const server = spawn(process.execPath, ['src/start.mjs', 'server'], {
    env: { ...process.env, CREASEBOOK_DATA: join(folder, 'data'), ...env },
  });
  let said = '';
  for (const stream of [server.stdout, server.stderr]) {
    stream.on('data', (text) => {
      said += text;
      if (said.includes('is open at')) server.kill();
    });
  }
  await once(server, 'close');
  return { said, status: server.exitCode };
}

async function freePort(): Promise<string> {
  const probe = createServer().listen(0, '127.0.0.1');
  await once(probe, 'listening');
  const { port } = probe.address() as AddressInfo;
  await new Promise((done) => probe.close(done));
  return `${port}`;
}

describe('what it cannot work with is said in a line', () => {
  test('a port that is none', async () => {
    const { said, status } = await start({ PORT: 'abc' });
    expect(said).toContain('PORT has to be a number');
    expect(status).toBe(1);
  });

  test('a folder that is a file, and a data file that is none', async () => {
    const file = join(folder, 'file');
    writeFileSync(file, 'not a folder');
    const broken = mkdtempSync(join(folder, 'broken-'));
    writeFileSync(
      join(broken, 'creasebook.db'),
      'not a database, but longer than its header is. '.repeat(20),
    );
    for (const [data, why] of [
      [file, `can’t keep its data in ${file}.`],
      [broken, `${join(broken, 'creasebook.db')} is not a book`],
    ] as const) {
      const { said, status } = await start({ PORT: await freePort(), CREASEBOOK_DATA: data });
      expect(said).toContain(why);
      expect(said).not.toMatch(/^ {4}at /m);
      expect(status).toBe(1);
    }
  });

  test('a port that is taken, before any data is touched', async () => {
    const other = createServer().listen(0, '127.0.0.1');
    await once(other, 'listening');
    const { port } = other.address() as AddressInfo;
    const unread = join(folder, 'file');
    const { said, status } = await start({ PORT: `${port}`, CREASEBOOK_DATA: unread });
    other.close();
    expect(said).toContain(`Port ${port} is taken`);
    expect(said).not.toContain(unread);
    expect(status).toBe(1);
  });
});

describe('where it listens', () => {
  test('on this machine only, also where the settings are empty', async () => {
    const port = await freePort();
    const { said } = await start({ PORT: port, HOST: '' });
    expect(said).toContain(`http://127.0.0.1:${port}`);
    expect(said).not.toContain('Take care');
  });

  test('and says what it means to listen for others', async () => {
    const { said } = await start({ PORT: await freePort(), HOST: '0.0.0.0' });
    expect(said).toContain('Take care');
  });
});
