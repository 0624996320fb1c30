/**
 * Bench section: the cut sheet of the craft orders and of the demo's batch, asked of the whole app and counted on its
 * pages: patterns drawn, settings of the fence, steps to tick, pages printed. `benchSheet()` answers with a table.
 */
import { checkPlan } from '#core/cutting/check.ts';
import { planCuts } from '#core/cutting/plan.ts';
import { inches } from '#shared/length.ts';
import { addDesign } from '#stores/designs.ts';
import { addOffcut } from '#stores/offcuts.ts';
import { addPad } from '#stores/pads.ts';
import { readPlan } from '#stores/plans.ts';
import { createProject } from '#stores/projects.ts';
import { type App, DIRECT, openApp } from '#tests/support/app.ts';
import { batchOf37, type FormFields } from '#tests/support/batch.ts';
import { FIRST } from '#tests/support/cast.ts';
import { browserPath } from '#tests/support/find-browser.ts';
import { pagesPrinted } from '#tests/support/print-page.ts';
import { type Case, craftOrders } from './orders.ts';

const LIMIT = 1000;

/** As the app's workers do, but in this thread. */
const PLANNER = {
  ...DIRECT,
  start: ({ order, pieces }: Parameters<typeof DIRECT.start>[0]) => ({
    plan: Promise.resolve(planCuts(order, pieces, { timeMs: LIMIT, seed: 1, now: () => performance.now() })),
    progress: () => undefined,
    stop: () => {},
  }),
};

export async function benchSheet(): Promise<string> {
  const rows: string[] = [];
  for (const one of craftOrders()) rows.push(await craftRow(one));
  rows.push(await demoRow());
  return [
    '| cut sheet | pieces placed | from | patterns | settings | steps | pages printed, Letter and A4 |',
    '| --- | ---: | ---: | ---: | ---: | ---: | ---: |',
    ...rows,
  ].join('\n');
}

const part = (number: number, fields: Record<string, string>): FormFields =>
  Object.entries(fields).map(([field, value]) => [`parts.${number}.${field}`, value]);

async function craftRow({ name, order, pieces }: Case): Promise<string> {
  const app = await openApp(PLANNER);
  for (const piece of pieces) {
    const pad = {
      kind: 'patterned',
      grammage: null,
      lowMark: 0,
      measured: {},
      strip: null,
      source: '',
      note: '',
    } as const;
    const sheet = { width: inches(piece.width / 16), height: inches(piece.height / 16) };
    const { id } = await addPad(app.db, { ...pad, name: piece.id, sheet });
    const swatch = { motif: 'plain', ground: '#e8e2d0', inks: ['#2b2622'] } as const;
    const look = { print: { direction: 'upright' }, doubleSided: false, swatch } as const;
    const sheets = piece.kind === 'sheet' ? piece.copies! : 0;
    const design = await addDesign(app.db, {
      pad: id,
      design: { name: piece.id, ...look },
      sheets,
      at: FIRST,
    });
    const offcut = { ...sheet, place: 'tray', note: '', border: false };
    if (piece.kind === 'offcut')
      await addOffcut(app.db, { design: design!.id, offcut, count: piece.copies!, at: FIRST });
  }
  const { id } = await createProject(app.db, { title: name }, FIRST);
  const parts = order.parts.flatMap(({ id: label, width, height, copies, upright }, number) =>
    part(number, {
      ...{ name: `Part ${label}`, width: `${width / 16}`, height: `${height / 16}`, copies: `${copies}` },
      ...{ print: upright ? 'upright' : 'any way', paper: 'kind-patterned' },
    }),
  );
  return row(app, name, id, parts);
}

async function demoRow(): Promise<string> {
  const app = await openApp(PLANNER);
  const { project, fields } = await batchOf37(app);
  return row(app, 'a batch of 37 from the demo’s shelf', project, fields);
}

async function row(app: App, name: string, project: number, fields: FormFields): Promise<string> {
  const asked = await app.post(`/projects/${project}/plans`, [...fields, ['do', 'plan']]);
  const path = asked.headers.get('Location');
  if (!path)
    throw new Error(`invalid batch: ${name}: ${(await asked.text()).match(/role="alert"[^<]*<?[^<]*/g)}`);
  const { plan, order, pieces } = (await readPlan(app.db, Number(path.split('/').at(-1))))!;
  if (!plan) throw new Error(`invalid plan: none for ${name}`);
  const [problem] = checkPlan(order, pieces, plan);
  if (problem) throw new Error(`invalid plan: ${problem.message}`);
  const html = await (await app.get(`${path}/sheet`)).text();
  const count = (pattern: RegExp): number => [...html.matchAll(pattern)].length;
  const pages = browserPath ? (await pagesPrinted(app, `${path}/sheet`)).join(', ') : '–';
  await app.db.destroy();
  const cells = [
    ...[name, plan.placed, `${plan.newSheets} + ${plan.used.length - plan.newSheets}`],
    ...[count(/ id="piece-\d/g), count(/<h2>\s*Set /g), count(/ class="step"/g), pages],
  ];
  return `| ${cells.join(' | ')} |`;
}
