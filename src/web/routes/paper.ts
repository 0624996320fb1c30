/**
 * Paper by its weight: pounds and grams, thickness, what a piece weighs; and a card by its layers, measured once it is
 * made.
 */
import { Hono } from 'hono';
import { jsx } from 'hono/jsx';
import type { z } from 'zod';
import { BULKS_NEEDED, bulkHabit, corrected } from '#core/paper/bulk-measured.ts';
import { describeLayers, type Layer } from '#core/paper/layers.ts';
import { readPaperWeight } from '#core/paper/read.ts';
import type { PaperWeight } from '#core/paper/weight.ts';
import type { Problem } from '#shared/checked.ts';
import { length, times } from '#shared/length.ts';
import { readField } from '#shared/schemas/fields.ts';
import { bulkForm, layersForm, paperForm } from '#shared/schemas/paper.ts';
import { addBulk, listBulks, removeBulk } from '#stores/bulks.ts';
import { editSettings } from '#stores/settings.ts';
import { CardPage } from '#views/paper/card.tsx';
import { PaperPage } from '#views/paper/page.tsx';
import { nowIn } from '../http/clock.ts';
import type { Env, Request } from '../http/env.ts';
import { check, entryOf, readForm, readQuery, type Typed } from '../http/form.ts';
import { newToken, once } from '../http/once.ts';
import { goTo, reply } from '../http/reply.ts';
import { rowId } from '../http/url.ts';

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

paper.get('/card', (c) => showCard(c, readQuery(c)));

/** How thick the card turned out whose layers were reckoned. */
paper.post('/card', async (c) => {
  const sent = await readForm(c);
  const { measured = '', once: _, ...typed } = sent;
  const layers = check(layersForm(c.get('units'), weightField), typed);
  const bulk = check(bulkForm(c.get('units')), { measured });
  if (!layers.ok || !bulk.ok) return showCard(c, { ...typed, measured }, bulk.ok ? [] : bulk.problems);
  const reckoned = describeLayers(layersOf(layers.value)).bulk;
  return once(c, sent, async (db) => {
    await addBulk(db, { ...reckoned, ...bulk.value }, nowIn(c));
    return { location: `/paper/card?${asQuery(typed)}` };
  });
});

paper.delete('/bulks/:id', async (c) => {
  await removeBulk(c.get('db'), rowId(c) ?? 0);
  return goTo(c, '/paper/card');
});

paper.post('/correction', async (c) => {
  const habit = bulkHabit(await listBulks(c.get('db')));
  if (habit && habit.cards >= BULKS_NEEDED)
    await editSettings(c.get('db'), { bulkCorrection: habit.thicker });
  return goTo(c, '/tools');
});

paper.delete('/correction', async (c) => {
  await editSettings(c.get('db'), { bulkCorrection: length(0) });
  return goTo(c, '/tools');
});

const asQuery = (typed: Typed): URLSearchParams =>
  new URLSearchParams(Object.entries(typed).map(([name, value = '']) => [name, value]));

async function showCard(c: Request, typed: Typed, wrong: readonly Problem[] = []): Promise<Response> {
  const units = c.get('units');
  const read = typed.width || typed.height ? check(layersForm(units, weightField), typed) : undefined;
  const problems: readonly Problem[] = [...(read && !read.ok ? read.problems : []), ...wrong];
  const correction = c.get('settings').bulkCorrection;
  const card = read?.ok ? describeLayers(layersOf(read.value)) : undefined;
  const body = jsx(CardPage, {
    ...{ units, correction, entry: entryOf(typed, problems) },
    card: read?.ok && card && { ...card, bulk: corrected(card.bulk, correction), size: read.value },
    measured: card ? await listBulks(c.get('db')) : [],
    token: newToken(c),
  });
  const status = problems.length > 0 ? 422 : 200;
  return reply(c, { title: 'A card by its layers', section: 'tools', body, status });
}

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
