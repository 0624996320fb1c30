/** The search box: its page, its answers as she types, and the list for whoever asks for JSON. */
import { beforeAll, describe, expect, it } from 'vitest';
import { takePiece } from '#stores/cuts.ts';
import { createProject } from '#stores/projects.ts';
import { type App, openApp } from '#tests/support/app.ts';
import { BLANK, type Cast, fillShelf, later, THANKS } from '#tests/support/cast.ts';
import { takeThree } from '#tests/support/projects.ts';
import { watchQueries } from '#tests/support/queries.ts';

let app: App;
let cast: Cast;
let project: number;

beforeAll(async () => {
  app = await openApp();
  cast = await fillShelf(app.db);
  ({ project } = await takeThree(app.db, cast, { ...THANKS, lesson: 'Score <twice> & fold.' }));
  for (let one = 1; one <= 30; one += 1)
    await createProject(app.db, { title: `Hare ${one}`, notes: 'long words '.repeat(300) }, later(one));
});

const page = async (query: string, headers = {}): Promise<string> =>
  (await app.get(`/find?${query}`, headers)).text();
const json = async (q: string) =>
  (await app.get(`/find?${new URLSearchParams({ q })}`, { Accept: 'application/json' })).json();

describe('as JSON', () => {
  it('is a list of kind, title and address, best first', async () => {
    expect(await json('neighbours')).toEqual([
      { kind: 'project', title: 'Thank you, neighbours', href: `/projects/${project}` },
      { kind: 'lesson', title: 'Thank you, neighbours', href: `/projects/${project}` },
    ]);
    expect((await json('5 7/8'))[0]).toMatchObject({ kind: 'project' });
    expect((await json(cast.corner.code))[0]).toMatchObject({ href: `/offcuts/${cast.corner.id}` });
    expect(await json('')).toEqual([]);
    expect(await json('nobody')).toEqual([]);
  });

  it('leads to pages that are there', async () => {
    const all = await Promise.all(['meadow', 'tray 1', 'fern', '8.5 x 8.5', 'thank'].map(json));
    const addresses = [...new Set(all.flat().map(({ href }) => href))];
    expect(addresses.length).toBeGreaterThan(5);
    for (const address of addresses) expect((await app.get(address)).status, address).toBe(200);
  });
});

describe('as a page', () => {
  it('groups what is found, marks the words and escapes the rest', async () => {
    const html = await page('q=twice');
    expect(html).toContain('<h2>Lessons</h2>');
    expect(html).toContain('Score &lt;<mark>twice</mark>&gt; &amp; fold.');
    expect(html).toContain('Found: 1 lesson.');
  });

  it('says which measure it found, and how near is near', async () => {
    const html = await page('q=5.875+x+3');
    expect(html).toContain('Lengths within ¹⁄₁₆″ of 5⅞ × 3″, nearest first.');
    expect(html).toContain('card 5⅞ × 3″');
  });

  it('keeps the question and what it is narrowed to, in the box and the choices', async () => {
    const html = await page('q=thank&fold=diagonal&month=2026-03&kind=project');
    expect(html).toMatch(/name="q"[^>]* value="thank"/);
    expect(html).toContain('<option value="diagonal" selected="">');
    expect(html).toContain('value="2026-03"');
    expect(html).toContain(`/projects/${project}`);
    expect(await page('q=thank&fold=side-seam')).toContain('Nothing is written down');
    expect(await page('q=thank&fold=side-seam')).toContain('href="/find?q=thank"');
  });

  it('keeps what it may be narrowed to one tap away, and open where it is', async () => {
    expect(await page('q=hare')).toMatch(/<details class="find-filters no-print">/);
    expect(await page('q=hare&kind=offcut')).toContain('<details class="find-filters no-print">');
    expect(await page('q=hare&paper=vellum')).toMatch(/<details class="find-filters no-print" open="">/);
  });

  it('helps where nothing is asked, and where nothing is found', async () => {
    expect(await page('')).toContain('Words in any order');
    expect(await page('q=7+x+19')).toContain('/envelopes?card=7+x+19');
    expect(await page('q=136')).toContain('136 mm if you mean');
  });

  it('shows more of one kind', async () => {
    const html = await page('q=hare');
    expect(html).toContain('more than 24 projects');
    expect(html.match(/href="\/projects\/\d+"/g)).toHaveLength(5);
    expect(html).toContain('href="/find?q=hare&amp;kind=project"');
    expect((await page('q=hare&kind=project')).match(/href="\/projects\/\d+"/g)).toHaveLength(24);
    expect((await page('q=hare&kind=project&more=24')).match(/href="\/projects\/\d+"/g)).toHaveLength(30);
  });

  it('says how large an offcut is, and names papers apart', async () => {
    const other = { design: cast.hare.id, offcut: null };
    await takePiece(app.db, { piece: other, wanted: BLANK, copies: 1, project, at: later(50) });
    expect(await page('q=fern+offcut')).toMatch(/>8½ × 8½″<\/span><span class="quiet">tray 1, Meadow walk</);
    expect(await page('q=neighbours')).toContain('Fern, Hare');
  });

  it.each([
    'q=%22',
    'q=%27+OR+1',
    'q=hare*',
    'q=AND+OR+NOT',
    'q=%00',
    'q=%ff%fe',
    'q=(((',
    'q=%F0%9F%90%87',
    'q=a&q=b',
    `q=${'x'.repeat(5000)}`,
    `q=${'5+3/8+'.repeat(40)}`,
    'q=x&kind=nonsense&size=9&month=13&more=-1&fit=%22',
    'q=title:x',
    'q=%EE%80%80',
    'q=1/0',
    'q=x+x+x',
    'q=99999999999999999999+x+1',
  ])('answers %s without a fault', async (query) => {
    for (const headers of [{}, { Accept: 'application/json' }, { 'HX-Request': 'true' }])
      expect((await app.get(`/find?${query}`, headers)).status).toBe(200);
  });
});

describe('as she types', () => {
  it('is a small part of the page, with few questions to the book', async () => {
    const queries = watchQueries(app.db);
    const html = await page('q=h', { 'HX-Request': 'true', 'HX-Current-URL': 'http://127.0.0.1:4870/stash' });
    expect(html).toMatch(/^<div id="finds" class="finds-below no-print"><p role="status">Found: /);
    expect(html.length).toBeLessThan(60_000);
    expect(html.match(/href="\/projects\/\d+"/g)).toHaveLength(3);
    expect(queries.take().length).toBeLessThanOrEqual(4);
  });

  it('is nothing for nothing', async () => {
    expect(await page('q=+', { 'HX-Request': 'true' })).toBe(
      '<div id="finds" class="finds-below no-print"></div>',
    );
  });
});

it('stands in the head of every page', async () => {
  for (const path of ['/', '/stash', '/projects', '/nowhere'])
    expect(await (await app.get(path)).text()).toMatch(/<form id="finder" action="\/find"/);
});
