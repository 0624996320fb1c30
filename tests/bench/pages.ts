/** How long the first page of each kind takes, asked of the whole app on the demo without a network. */
import { seedDemo } from '#seed/demo.ts';
import { openApp } from '#tests/support/app.ts';

const PAGES: readonly (readonly [string, string])[] = [
  ['table', '/'],
  ['envelopes, answered', '/envelopes?width=5.875&height=3'],
  ['stash', '/stash'],
  ['journal', '/projects'],
  ['project', '/projects/13'],
  ['making, one step', '/projects/13/make?envelope=3&step=3'],
  ['tools', '/tools'],
];
const TIMES = 20;

/** A markdown table: the first request, and the middle of the next twenty. */
export async function benchPages(): Promise<string> {
  const app = await openApp();
  await seedDemo(app.db, new Date('2026-11-25T12:00:00Z'));
  const rows: string[] = [];
  for (const [name, path] of PAGES) {
    const times: number[] = [];
    let bytes = 0;
    for (let round = 0; round <= TIMES; round += 1) {
      const before = performance.now();
      const answer = await app.get(path);
      bytes = (await answer.text()).length;
      times.push(performance.now() - before);
      if (answer.status !== 200) throw new Error(`invalid page: ${path} answered ${answer.status}`);
    }
    const [first, ...rest] = times;
    const middle = rest.sort((one, other) => one - other)[TIMES / 2]!;
    rows.push(`| ${name} | ${first!.toFixed(0)} | ${middle.toFixed(1)} | ${(bytes / 1024).toFixed(0)} |`);
  }
  await app.db.destroy();
  return ['| page | first, ms | then, ms | KiB |', '| --- | ---: | ---: | ---: |', ...rows].join('\n');
}
