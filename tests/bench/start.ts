/**
 * Bench section: from `node src/start.mjs server` to the first page, what that takes of a processor, and what it holds once
 * it is idle. `benchStart()` answers with a table; the demo it starts is made in a folder of its own.
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as later } from 'node:timers/promises';

const PORT = '4889';
const BUILT = path.join('node_modules', '.cache', 'creasebook');
/** Ticks of the processor in a second, as Linux counts them. */
const TICKS = 100;
const IDLE_MS = 3000;

export async function benchStart(): Promise<string> {
  const folder = mkdtempSync(path.join(tmpdir(), 'creasebook-'));
  try {
    rmSync(BUILT, { recursive: true, force: true });
    const rows: string[] = [];
    for (const [name, ...args] of [
      ['first start, which builds'],
      ['second start'],
      ['third start'],
      ['demo', '--demo'],
    ] as const)
      rows.push(await started(name, folder, args));
    return [
      '| start | first page after, ms | processor, s | idle memory, MB |',
      '| --- | ---: | ---: | ---: |',
      ...rows,
    ].join('\n');
  } finally {
    rmSync(folder, { recursive: true });
  }
}

async function started(name: string, folder: string, args: readonly string[]): Promise<string> {
  const before = performance.now();
  const server = spawn(process.execPath, [path.resolve('src/start.mjs'), 'server', ...args], {
    cwd: folder,
    env: { ...process.env, PORT },
    stdio: 'ignore',
  });
  while (!(await answers())) {
    if (server.exitCode !== null) throw new Error(`invalid start: it ended with ${server.exitCode}`);
    await later(5);
  }
  const took = performance.now() - before;
  const stat = readFileSync(`/proc/${server.pid}/stat`, 'utf8')
    .replace(/^.*\) /, '')
    .split(' ');
  const processor = (Number(stat[11]) + Number(stat[12])) / TICKS;
  await later(IDLE_MS);
  const memory = /VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${server.pid}/status`, 'utf8'))![1];
  const closed = new Promise((done) => server.on('close', done));
  server.kill();
  await closed;
  return `| ${name} | ${took.toFixed(0)} | ${processor.toFixed(2)} | ${(Number(memory) / 1000).toFixed(0)} |`;
}

const answers = (): Promise<boolean> =>
  fetch(`http://127.0.0.1:${PORT}/`)
    .then((answer) => answer.text())
    .then(
      () => true,
      () => false,
    );
