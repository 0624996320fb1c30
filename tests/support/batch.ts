/**
 * A batch of 37 pieces of seven kinds from the demo's shelf, asked for as a browser would: what one tap each adds to seven
 * envelopes. Plans nothing itself.
 */
import { solveEnvelope } from '#core/envelope/recipes.ts';
import { seedDemo } from '#seed/demo.ts';
import { inches } from '#shared/length.ts';
import { chosenNotcher } from '#stores/notchers.ts';
import { createProject } from '#stores/projects.ts';
import type { App } from './app.ts';

export type FormFields = [field: string, value: string][];

const DAY = new Date('2026-11-25T12:00:00Z');

/** Fills an empty book with the demo and a project for a half-letter card; the fields of its batch, five of each part. */
export async function batchOf37(app: App): Promise<{ project: number; fields: FormFields }> {
  await seedDemo(app.db, DAY);
  const { notcher, tool } = await chosenNotcher(app.db);
  const card = { width: inches(5.5), height: inches(4.25), bulk: inches(1 / 32) };
  const recipe = solveEnvelope({ card, notcher })[0]!;
  const asked = { title: 'Thirty-seven', card, recipe, quantity: 7, notcher: tool.id };
  const { id } = await createProject(app.db, asked, DAY.toISOString());
  return { project: id, fields: await fieldsOf(app, id) };
}

async function fieldsOf(app: App, project: number): Promise<FormFields> {
  let fields: FormFields = [
    ['blanks', '7'],
    ['paper', 'kind-patterned'],
  ];
  for (const one of ['base', 'front', 'mat', 'inside', 'liner']) {
    const asked = await app.post(`/projects/${project}/plans`, [...fields, ['do', `add-${one}`]]);
    fields = fieldsIn(await asked.text()).map(([name, value]) => [
      name,
      name.endsWith('copies') ? '5' : value,
    ]);
  }
  return fields;
}

/** What a browser would send of the form, save what names its press. */
function fieldsIn(html: string): FormFields {
  const form = /<form method="post" action="\/projects\/\d+\/plans".*?<\/form>/s.exec(html)![0];
  const attribute = (tag: string, name: string): string =>
    new RegExp(` ${name}="([^"]*)"`).exec(tag)?.[1] ?? '';
  const inputs = [...form.matchAll(/<input[^>]*>/g)]
    .map(([tag]) => tag)
    .filter((tag) => !/type="(checkbox|radio|hidden)"/.test(tag) || / checked/.test(tag))
    .map((tag): FormFields[number] => [
      attribute(tag, 'name'),
      attribute(tag, 'value') || (/checkbox/.test(tag) ? 'on' : ''),
    ]);
  const selects = [...form.matchAll(/<select[^>]*>.*?<\/select>/gs)].map(([tag]): FormFields[number] => {
    const chosen = /<option[^>]* selected[^>]*>/.exec(tag)?.[0] ?? /<option[^>]*>/.exec(tag)![0];
    return [attribute(tag, 'name'), attribute(chosen, 'value')];
  });
  return [...inputs, ...selects].filter(([name]) => name !== 'once' && name !== 'do');
}
