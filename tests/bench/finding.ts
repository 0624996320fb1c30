/**
 * Bench section: the search box in books of three sizes, ten times as many offcuts as projects, the question read and
 * the answer ranked. `benchFinding()` answers with a markdown table; 20 ms is the limit in the largest book.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import SQLite from 'better-sqlite3';
import { chance } from '#core/cutting/search/random.ts';
import { readQuery } from '#core/finding/read-query.ts';
import { pencilCode } from '#shared/ids.ts';
import { checkFinds } from '#stores/checks-finds.ts';
import { closeDatabase, type Database, migrate, openDatabase } from '#stores/database.ts';
import { find } from '#stores/find.ts';
import { FIRST, RECIPE } from '#tests/support/cast.ts';

const SIZES = [100, 1_000, 10_000];
const OFFCUTS_EACH = 10;
const RUNS = 101;

const QUESTIONS: readonly (readonly [string, string])[] = [
  ['a code', 'CC'],
  ['one letter', 'm'],
  ['a word that is everywhere', 'paper'],
  ['a rare word', 'project77'],
  ['two words of the title, begun', 'than neigh'],
  ['frequent words that meet nowhere', 'quilt moth'],
  ['words in any order', 'tray fern 7'],
  ['no such word', 'xylophone'],
  ['a length', '5 3/8'],
  ['the commonest length', '12 in'],
  ['millimetres', '136.5 mm'],
  ['a pair', '5 3/8 x 4'],
  ['words and a length', 'striped offcut 5 3/8'],
  ['print and kind', 'striped offcut'],
  ['size and kind', 'mini envelope'],
  ['a kind alone', 'offcut'],
];

export async function benchFinding(): Promise<string> {
  const columns: Timing[][] = [];
  for (const projects of SIZES) columns.push(await timesIn(projects));
  const heads = SIZES.map((size) => `${size.toLocaleString('en')} projects: median, p99 ms`);
  return [
    `| question | ${heads.join(' | ')} | largest to smallest |`,
    `| --- |${' ---: |'.repeat(SIZES.length + 1)}`,
    ...QUESTIONS.map(([name, typed], row) => {
      const timings = columns.map((column) => column[row]!);
      const ratio = timings.at(-1)!.median / timings[0]!.median;
      const cells = timings.map(({ median, p99 }) => `${median.toFixed(1)}, ${p99.toFixed(1)}`);
      return `| ${name}: ${typed} | ${cells.join(' | ')} | ${ratio.toFixed(1)} |`;
    }),
  ].join('\n');
}

interface Timing {
  readonly median: number;
  readonly p99: number;
}

async function timesIn(projects: number): Promise<Timing[]> {
  const folder = mkdtempSync(path.join(tmpdir(), 'creasebook-bench-'));
  const file = path.join(folder, 'creasebook.db');
  const db = openDatabase(file);
  try {
    await migrate(db);
    fill(file, projects);
    if (projects === SIZES[0] && (await checkFinds(db)).length > 0)
      throw new Error('the index is not what it should be');
    const timings: Timing[] = [];
    for (const [, typed] of QUESTIONS) timings.push(await timing(db, typed));
    return timings;
  } finally {
    await closeDatabase(db);
    rmSync(folder, { recursive: true, force: true });
  }
}

async function timing(db: Database, typed: string): Promise<Timing> {
  const times: number[] = [];
  for (let run = 0; run < RUNS; run++) {
    const start = performance.now();
    await find(db, readQuery(typed, { unit: 'in', step: 16 }));
    times.push(performance.now() - start);
  }
  times.sort((a, b) => a - b);
  return { median: times[RUNS >> 1]!, p99: times[Math.ceil(RUNS * 0.99) - 1]! };
}

const NAMES = 'fern hare hem bramble wren haycock sloe wake fog moth candle quilt'.split(' ');
const MOTIFS = 'plain stripes checks dots sprigs waves stars script border'.split(' ');
const PADS = 'Meadow paper|Night ferry|Orchard ledger|Small hours|Field letters'.split('|');

/** In bulk and by plain SQL, from a fixed seed; the triggers index every row. */
function fill(file: string, projects: number): void {
  const raw = new SQLite(file);
  raw.pragma('synchronous = OFF');
  const { below } = chance(20261130);
  const side = () => 762_000 + below(181) * 63_500;
  const pad = raw.prepare(
    `INSERT INTO pads (name, kind, width, height, grammage, low_mark, source, note) VALUES (?, 'patterned', 12192000, 12192000, 160, 5, 'market', '')`,
  );
  const design = raw.prepare(
    `INSERT INTO designs (pad_id, name, direction, double_sided, swatch) VALUES (?, ?, 'any way', 0, ?)`,
  );
  const offcut = raw.prepare(
    `INSERT INTO offcuts (id, design_id, width, height, border, code, place, note) VALUES (?, ?, ?, ?, 0, ?, ?, ?)`,
  );
  const movement = raw.prepare(
    `INSERT INTO movements (at, kind, design_id, offcut_id, delta, note) VALUES ('${FIRST}', 'counted', ?, ?, 1, '')`,
  );
  const project = raw.prepare(
    `INSERT INTO projects (title, card_width, card_height, card_bulk, quantity, recipe, notes, lesson, created_at, changed_at)
     VALUES (?, ?, ?, 31750, 3, ?, ?, ?, '${FIRST}', '${FIRST}')`,
  );
  const envelope = raw.prepare(
    `INSERT INTO envelopes (project_id, number, state, trial) VALUES (?, ?, 'made', 1)`,
  );
  const outcome = raw.prepare(
    `INSERT INTO outcomes (envelope_id, at, felt, pocket_width, pocket_height, twin, wrong, saved_by) VALUES (?, '${FIRST}', 'easy', ?, ?, 0, ?, '')`,
  );
  raw.transaction(() => {
    for (const name of PADS) pad.run(name);
    for (let one = 0; one < 200; one += 1)
      design.run(
        1 + (one % PADS.length),
        `${NAMES[one % NAMES.length]} ${one}`,
        swatch(MOTIFS[one % MOTIFS.length]!),
      );
    for (let id = 1; id <= projects * OFFCUTS_EACH; id += 1) {
      const of = 1 + below(200);
      const [width, height] = id % 3 === 0 ? [12_192_000, side()] : [side(), side()];
      offcut.run(
        id,
        of,
        width,
        height,
        pencilCode(id),
        `tray ${below(40)}`,
        id % 10 === 0 ? 'a little paper torn' : '',
      );
      movement.run(of, id);
    }
    for (let id = 1; id <= projects; id += 1) {
      const [one, other] = [NAMES[below(12)]!, NAMES[below(12)]!];
      project.run(
        `Thank you, neighbours, ${one}`,
        side(),
        side(),
        JSON.stringify(RECIPE),
        `project${id} with ${other} and thin paper`,
        `Score ${other} twice.`,
      );
      for (let number = 1; number <= 2; number += 1) {
        const { lastInsertRowid } = envelope.run(id, number);
        outcome.run(lastInsertRowid, side(), side(), number === 1 ? 'The paper cracked along the fold.' : '');
      }
    }
  })();
  raw.close();
}

const swatch = (motif: string): string => JSON.stringify({ motif, ground: '#f4efe6', inks: ['#3f6b4f'] });
