/**
 * `npm run bench` prints every benchmark as markdown tables, with the machine named; `npm run bench -- cutting fill` only
 * some. A section is a function that answers with a table; this knows nothing of what they measure.
 */
import { cpus, loadavg } from 'node:os';

const SECTIONS: Record<string, () => Promise<string>> = {
  cutting: async () => (await import('./cutting.ts')).benchCutting(),
  packers: async () => (await import('./packers.ts')).benchPackers(),
  fill: async () => (await import('./fill.ts')).benchFill(),
  solver: async () => (await import('./solver.ts')).solverTable(),
  search: async () => (await import('./search.ts')).benchSearch(),
  sheet: async () => (await import('./sheet.ts')).benchSheet(),
  learning: async () => (await import('./learning.ts')).benchLearning(),
  start: async () => (await import('./start.ts')).benchStart(),
  writes: async () => (await import('./writes.ts')).benchWrites(),
  pages: async () => (await import('./pages.ts')).benchPages(),
  finding: async () => (await import('./finding.ts')).benchFinding(),
};

const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !(name in SECTIONS));
if (unknown.length > 0) {
  process.stderr.write(
    `There is no section “${unknown.join('”, “')}”: choose from ${Object.keys(SECTIONS).join(', ')}.\n`,
  );
  process.exitCode = 2;
} else {
  const [cpu] = cpus();
  const load = loadavg()[0]!.toFixed(1);
  process.stdout.write(
    `${cpu?.model ?? 'unknown processor'}, ${cpus().length} cores, Node ${process.version}, load ${load} at the start.\n`,
  );
  for (const name of asked.length > 0 ? asked : Object.keys(SECTIONS)) {
    process.stdout.write(`\n## ${name}\n\n${await SECTIONS[name]!()}\n`);
  }
}
