/** Bench section: what it costs that a power cut loses nothing that was acknowledged. `benchWrites()` answers with a table. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { sql } from 'kysely';
import { type Database, migrate, openDatabase } from '#stores/database.ts';
import { createProject } from '#stores/projects.ts';
import { later, THANKS } from '#tests/support/cast.ts';

const WRITES = 300;

/** A project is written `WRITES` times on the disk of this machine, one transaction each. */
export async function benchWrites(): Promise<string> {
  const rows: string[] = [];
  for (const mode of ['NORMAL', 'FULL']) {
    const times = await timesOf(mode);
    const all = times.reduce((sum, one) => sum + one, 0);
    const [median, late] = [0.5, 0.99].map((share) => times[Math.floor(share * WRITES)]!);
    rows.push(
      `| ${mode} | ${((1000 * WRITES) / all).toFixed(0)} | ${median!.toFixed(1)} | ${late!.toFixed(1)} |`,
    );
  }
  return [
    '| synchronous | writes a second | median, ms | p99, ms |',
    '| --- | ---: | ---: | ---: |',
    ...rows,
  ].join('\n');
}

async function timesOf(mode: string): Promise<number[]> {
  const folder = mkdtempSync(path.join(tmpdir(), 'creasebook-'));
  const db: Database = openDatabase(path.join(folder, 'creasebook.db'));
  try {
    await migrate(db);
    await sql`PRAGMA synchronous = ${sql.raw(mode)}`.execute(db);
    const times: number[] = [];
    for (let write = 0; write < WRITES; write += 1) {
      const before = performance.now();
      await createProject(db, THANKS, later(1));
      times.push(performance.now() - before);
    }
    return times.sort((one, other) => one - other);
  } finally {
    await db.destroy();
    rmSync(folder, { recursive: true });
  }
}
