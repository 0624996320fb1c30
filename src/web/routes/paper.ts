/** Paper by its weight: pounds and grams, thickness, what a piece weighs; and a card by its layers. Writes nothing. */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import type { z } from 'zod';
import { describeLayers, type Layer } from '#core/paper/layers.ts';
import { readPaperWeight } from '#core/paper/read.ts';
import type { PaperWeight } from '#core/paper/weight.ts';
import type { Problem } from '#shared/checked.ts';
import { times } from '#shared/length.ts';
import { readField } from '#shared/schemas/fields.ts';
import { layersForm, paperForm } from '#shared/schemas/paper.ts';
import { CardPage } from '#views/paper/card.tsx';
import { PaperPage } from '#views/paper/page.tsx';
import type { Env } from '../http/env.ts';
import { check, entryOf, readQuery } from '../http/form.ts';
import { reply } from '../http/reply.ts';

export const paper = new Hono<Env>();

const weightField = readField(readPaperWeight);

paper.get('/', (c) => {
  const [typed, units] = [readQuery(c), c.get('units')];
  const read = Object.keys(typed).length > 0 ? check(paperForm(units, weightField), typed) : undefined;
  const problems: readonly Problem[] = read && !read.ok ? read.problems : [];
  const answer = read?.ok ? read.value : undefined;
  return reply(c, {
    title: 'Paper',
    section: 'tools',
    body: jsx(PaperPage, { units, entry: entryOf(typed, problems), asked: answer }),
    status: problems.length > 0 ? 422 : 200,
  });
});

paper.get('/card', (c) => {
  const [typed, units] = [readQuery(c), c.get('units')];
  const read = typed.width || typed.height ? check(layersForm(units, weightField), typed) : undefined;
  const problems: readonly Problem[] = read && !read.ok ? read.problems : [];
  const card = read?.ok ? { ...describeLayers(layersOf(read.value)), size: read.value } : undefined;
  return reply(c, {
    title: 'A card by its layers',
    section: 'tools',
    body: jsx(CardPage, { units, entry: entryOf(typed, problems), card }),
    status: problems.length > 0 ? 422 : 200,
  });
});

type LayersAsked = z.infer<ReturnType<typeof layersForm<PaperWeight>>>;

/** From the base up; what stands out is told of the uppermost. */
function layersOf({ width, height, base, grain, inside, raisedBy, extra, ...fronts }: LayersAsked): Layer[] {
  const size = { width, height };
  const sheet = (name: string, weight: PaperWeight | undefined): Layer[] =>
    weight ? [{ name, size, paper: { weight } }] : [];
  const folded: Layer = {
    name: 'Base',
    size: { width: times(width, 2), height },
    paper: { weight: base },
    leaves: 2,
    fold: 'height',
    raisedBy,
    ...(extra !== undefined && { extra }),
    ...(grain !== 'not known' && { grain: grain === 'along the fold' ? 'height' : 'width' }),
  };
  return [
    folded,
    ...sheet('Inside panel', inside),
    ...sheet('First layer', fronts.layer1),
    ...sheet('Second layer', fronts.layer2),
    ...sheet('Third layer', fronts.layer3),
  ];
}
