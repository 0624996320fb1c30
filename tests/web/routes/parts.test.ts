/** The parts of a set through their pages: measures from a card, every refusal, and on to a project's order. */
import { beforeEach, describe, expect, test } from 'vitest';
import { PART_KINDS, partForms } from '#shared/schemas/parts.ts';
import { createProject } from '#stores/projects.ts';
import { type App, openApp } from '#tests/support/app.ts';
import { FIRST, fillShelf, THANKS } from '#tests/support/cast.ts';
import { rowCounts } from '#tests/support/shelf.ts';

let app: App;
beforeEach(async () => {
  app = await openApp();
});

const ask = (kind: string, fields: Record<string, string> = {}) =>
  app.get(`/parts${kind && `/${kind}`}?${new URLSearchParams(fields)}`);
const page = async (kind: string, fields: Record<string, string> = {}) => (await ask(kind, fields)).text();

const CARD = { width: '5', height: '7', bulk: '1/32' };

describe('a whole set', () => {
  test('asks for a card first, and shows what can be made', async () => {
    const html = await page('');
    expect(html).toContain('href="/parts/liner?"');
    expect(html).not.toContain('role="img"');
  });

  test('shows each part with its measures and a drawing', async () => {
    const html = await page('', CARD);
    expect(html).toContain('<strong>10 × 7″</strong> from card stock');
    expect(html).toContain('<strong>4¾ × 6¾″</strong>');
    expect(html).toContain('<strong>4½ × 6½″</strong>');
    expect(html).toContain('This ties the card shut: it must slip off over the top or the bottom.');
    expect(html.match(/role="img"/g)).toHaveLength(5);
  });

  test('starts from a project’s own card and envelope', async () => {
    await createProject(app.db, THANKS, FIRST);
    const html = await page('', { project: '1' });
    expect(html).toContain('value="5 7/8"');
    expect(html).toContain('Cut 3 of <strong>11¾ × 3″</strong>');
    expect((await ask('', { project: '9' })).status).toBe(404);
  });

  test('is reached from an envelope, with that very envelope', async () => {
    await fillShelf(app.db);
    const html = await (
      await app.get('/envelopes?width=5+7/8&height=3&square=7+1/2&start=2+3/4&show=post')
    ).text();
    const link = /href="(\/parts\?[^"]+)">The parts of its set/.exec(html)![1]!.replaceAll('&amp;', '&');
    expect(await (await app.get(link)).text()).toContain('name="square" value="7 1/2"');
  });
});

describe('one part', () => {
  test.each(PART_KINDS)(
    'a %s is asked for all that its form reads, and for a card only then',
    async (kind) => {
      const html = await page(kind, CARD);
      const fields = [...html.matchAll(/<(?:input|select)[^>]* name="([^"]+)"/g)].map((found) => found[1]!);
      const form = partForms({ unit: 'in', step: 16 })[kind];
      expect(Object.keys(form.shape).filter((name) => !fields.includes(name))).toEqual([]);
      expect(fields.includes('foldAt')).toBe('foldAt' in form.shape);
    },
  );

  // Common practice, no source: a base folding to 2½ × 3½ is cut 2½ × 7.
  test('a tent is cut twice as high and scored at its height', async () => {
    const html = await page('base', { width: '2 1/2', height: '3 1/2', foldAt: 'top' });
    expect(html).toContain('<strong>2½ × 7″</strong>');
    expect(html).toContain('Score at 3½″ from the top edge.');
  });

  // Common practice, no source: 5¼ × 2¼ notched at 1⅛ sits on 5½ × 2½ notched at 1¼.
  test('notches of panel and base lie in line: flip, don’t turn', async () => {
    const panel = { 'panel.width': '5 1/4', 'panel.height': '2 1/4', at: '1 1/8' };
    const html = await page('notches', { width: '5 1/2', height: '2 1/2', ...panel });
    expect(html).toContain('Notches <strong>1⅛″</strong> in');
    expect(html).toContain('Notches <strong>1¼″</strong> in');
    expect(html).toContain('flip the piece top over bottom');
    expect(html).toContain('Don’t turn it round');
  });

  test('a liner names the envelope that it is for', async () => {
    const html = await page('liner', { ...CARD, fold: 'diagonal', square: '9 3/4', start: '4 1/8' });
    expect(html).toMatch(/the card’s envelope<\/a>, diagonal, /);
    expect(html).toContain('Liner</h2>');
  });

  test.each([
    ['front leaf', 'across', 'A strip can’t pass through the fold'],
    ['front leaf', 'up', 'The strip shows on the inside of the front.'],
    ['inside back', 'up', 'The strip shows inside and on the card’s back.'],
    ['whole card', 'up', 'it must slip off to one side'],
  ])('a strip round the %s, running %s, says what it does to opening', async (path, run, words) => {
    const html = await page('wrap', { ...CARD, kind: 'ribbon', path, run });
    expect(html).toContain(words);
    expect(html).toContain('The way of the strip');
  });

  test('a band round the closed envelope has no fold to mind', async () => {
    const html = await page('wrap', { ...CARD, round: 'the closed envelope' });
    expect(html).toContain('It slips off over the top or the bottom.');
    expect(html).not.toContain('ties the card shut');
  });

  test('a tag and a box need no card', async () => {
    expect(await page('tag')).toContain('<strong>2 × 3½″</strong>');
    const box = await page('box');
    expect(box).toContain('Lid panel');
    expect(box).toContain('Body strip');
  });

  test('three layers shrink by their margins', async () => {
    const html = await page('front', { ...CARD, 'margins.0': '1/8', 'margins.1': '', 'margins.2': '1/16' });
    expect(html).toContain('Mat</h2>');
    expect(html).toContain('<strong>4⅝ × 6⅝″</strong>');
  });

  test.each([
    ['base', { width: '0' }, 'width', 'more than zero'],
    ['base', { foldAt: 'sides', gap: '6' }, 'gap', 'The gap is wider than the card.'],
    ['base', { copies: '0' }, 'copies', 'whole number from 1'],
    ['front', { 'margins.0': '3' }, 'margins.0', 'nothing is left of the layer'],
    [
      'front',
      { 'margins.0': '', 'margins.1': '', 'margins.2': '4' },
      'margins.2',
      'nothing is left of the layer',
    ],
    ['inside', { margin: '-1' }, 'margin', 'can’t be negative'],
    ['insert', { foldAt: 'top' }, 'foldAt', 'folded at the left'],
    ['liner', { glue: '9' }, 'glue', 'nothing of the flap is left'],
    ['liner', { side: '4' }, 'side', 'wider than the envelope'],
    ['wrap', { breadth: '8' }, 'breadth', 'wider than the card'],
    ['wrap', { round: 'the closed envelope', path: 'front leaf' }, 'path', 'there are no leaves'],
    ['notches', { 'panel.width': '6' }, 'panel.width', 'larger than its base'],
    ['notches', { at: '9' }, 'at', 'would leave the panel'],
    ['notches', { depth: '4' }, 'depth', 'would meet'],
    ['tag', { corner: '2' }, 'corner', 'would meet'],
    ['tag', { hole: '2' }, 'hole', 'Too little paper'],
    ['box', { lid: '2' }, 'lid', 'lower than the box'],
    ['box', { boxWidth: 'wide' }, 'boxWidth', 'isn’t a length'],
  ])('%s %j has its problem beside %s', async (kind, fields, field, message) => {
    const answer = await ask(kind, { ...CARD, ...(fields as Record<string, string>) });
    const html = await answer.text();
    expect(answer.status).toBe(422);
    expect(html).toMatch(
      new RegExp(`id="${field.replace('.', '\\.')}-note" class="problem"[^>]*>[^<]*${message}`),
    );
    expect(html).not.toContain('set-part');
  });

  test('an unknown part is not here', async () => {
    expect((await ask('hat', CARD)).status).toBe(404);
  });
});

describe('on to an order', () => {
  const order = (fields: Record<string, string>) => app.get(`/parts/order?${new URLSearchParams(fields)}`);
  const liner = {
    'parts.3.name': 'Liner',
    'parts.3.width': '7',
    'parts.3.height': '8',
    'parts.3.copies': '3',
  };
  const base = {
    'parts.0.name': 'Card base',
    'parts.0.width': '10',
    'parts.0.height': '7',
    'parts.0.copies': '3',
  };

  test('what is ticked stands in the form of the project’s next batch, and nothing is written', async () => {
    await fillShelf(app.db);
    await createProject(app.db, THANKS, FIRST);
    const before = await rowCounts(app.db);
    const sent = await order({ project: '1', ...base, ...liner, 'take.3': 'on' });
    const place = sent.headers.get('Location')!;
    expect(place).toMatch(/^\/projects\/1\/plans\/new\?/);
    const html = await (await app.get(place)).text();
    expect(html).toContain('value="Liner"');
    expect(html).not.toContain('value="Card base"');
    expect(await rowCounts(app.db)).toEqual(before);
  });

  test('a project that isn’t there is not here', async () => {
    expect((await order({ project: '9', ...liner, 'take.3': 'on' })).status).toBe(404);
    expect((await order({ ...liner })).status).toBe(404);
  });
});
