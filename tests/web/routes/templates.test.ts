/** True-size templates through the app: their kinds of file, their names, and what is refused. */
import { beforeEach, describe, expect, test } from 'vitest';
import { FOLDS } from '#core/envelope/folds.ts';
import { inches } from '#shared/length.ts';
import { PART_KINDS } from '#shared/schemas/parts.ts';
import { changeStart, createProject } from '#stores/projects.ts';
import { type App, openApp } from '#tests/support/app.ts';
import { type Cast, fillShelf, later } from '#tests/support/cast.ts';
import { takeThree } from '#tests/support/projects.ts';

let app: App;
let cast: Cast;
beforeEach(async () => {
  app = await openApp();
  cast = await fillShelf(app.db);
});

const ASKED = 'width=5+7/8&height=3';
const SQUARE = `${ASKED}&square=7+1/2&start=2+3/4`;

const get = (path: string) => app.get(`/templates/${path}`);

/** The addresses in a page's row of links, as a browser reads them. */
const linksIn = (html: string): string[] =>
  [...html.matchAll(/href="(\/templates\/[^"]+)"/g)].map((found) => found[1]!.replaceAll('&amp;', '&'));

describe('an envelope asked for', () => {
  test.each(['letter', 'a4', '12x12'])('is a PDF for %s', async (paper) => {
    const answer = await get(`envelope/${paper}.pdf?${ASKED}`);
    expect(answer.status).toBe(200);
    expect(answer.headers.get('Content-Type')).toBe('application/pdf');
    expect(answer.headers.get('Content-Disposition')).toBe(
      `attachment; filename="envelope-5.875x3in-${paper}.pdf"`,
    );
    const body = Buffer.from(await answer.arrayBuffer()).toString('latin1');
    expect(body).toMatch(/^%PDF-[\s\S]*%%EOF\s*$/);
  });

  test('is an SVG in millimetres, of just the measures asked for', async () => {
    const answer = await get(`envelope/template.svg?${SQUARE}`);
    expect(answer.headers.get('Content-Type')).toBe('image/svg+xml; charset=utf-8');
    expect(answer.headers.get('Content-Disposition')).toBe('attachment; filename="envelope-5.875x3in.svg"');
    const svg = await answer.text();
    expect(svg).toContain('width="190.5mm" height="190.5mm"');
    expect(svg).toContain('L69.85 11.113L');
  });

  test('has its own trims', async () => {
    const plain = await (await get(`envelope/template.svg?${SQUARE}`)).text();
    const own = await (await get(`envelope/template.svg?${SQUARE}&dShape=straight&dDepth=2`)).text();
    expect(own).not.toBe(plain);
  });

  test('is linked from the page that answers it, and every link works', async () => {
    const html = await (await app.get(`/envelopes?${ASKED}`)).text();
    const links = linksIn(html);
    expect(links).toHaveLength(4);
    for (const link of links) expect((await app.get(link)).status).toBe(200);
  });

  test.each(Object.keys(FOLDS))('follows the %s fold where the page shows it', async (fold) => {
    const html = await (await app.get(`/envelopes?${ASKED}&fold=${fold}`)).text();
    const svg = linksIn(html).find((link) => link.includes('template.svg'))!;
    expect(new URL(svg, 'http://here').searchParams.get('fold')).toBe(fold);
    const cuts = /<g [^>]*id="cut"[^>]*>(.*?)<\/g>/s.exec(await (await app.get(svg)).text())![1]!;
    expect(cuts.match(/<path/g)).toHaveLength(fold === 'two-piece' ? 2 : 1);
  });
});

describe('a question that can’t be answered', () => {
  test.each([
    ['', 'Type a length'],
    ['width=6&height=', 'Type a length'],
    ['width=abc&height=3', 'isn’t a length'],
    [`${ASKED}&square=8`, 'Where does the first notch go?'],
    [`${ASKED}&square=8&start=7+7/8`, 'On this square the start has to lie between'],
    [`${SQUARE}&dShape=straight&dDepth=9`, 'within'],
  ])('comes back with its page and messages: %s', async (query, message) => {
    const answer = await get(`envelope/letter.pdf?${query}`);
    expect(answer.status).toBe(422);
    expect(answer.headers.get('Content-Type')).toContain('text/html');
    expect(await answer.text()).toContain(message);
  });

  test.each(['legal.pdf', 'letter.svg', 'template.pdf', 'letter'])('isn’t here: %s', async (file) => {
    expect((await get(`envelope/${file}?${ASKED}`)).status).toBe(404);
  });
});

describe('a project’s envelope', () => {
  test('is linked from its page, named after it, and cut with the start in use', async () => {
    const { project } = await takeThree(app.db, cast);
    const links = linksIn(await (await app.get(`/projects/${project}`)).text());
    expect(links).toHaveLength(4);
    for (const link of links) expect((await app.get(link)).status).toBe(200);
    const svg = links.find((link) => link.endsWith('.svg'))!;
    const before = await app.get(svg);
    expect(before.headers.get('Content-Disposition')).toContain(`project-${project}-envelope-5.875x3in.svg`);
    await changeStart(app.db, project, inches(3), later(9));
    expect(await (await app.get(svg)).text()).toContain('L76.2 11.113L');
    expect(await before.text()).not.toContain('L76.2 11.113L');
  });

  test.each(['999', 'x', '0', '-1', '1e3'])('isn’t here without the project: %s', async (id) => {
    expect((await get(`projects/${id}/letter.pdf`)).status).toBe(404);
  });

  test('isn’t here before the project has one', async () => {
    const idea = await createProject(app.db, { title: 'Only an idea' }, later(1));
    expect((await get(`projects/${idea.id}/letter.pdf`)).status).toBe(404);
  });
});

describe('a part of a set', () => {
  const CARD = 'width=5+7/8&height=3';

  test('is linked from its page, and every link works', async () => {
    const links = linksIn(await (await app.get(`/parts/liner?${CARD}`)).text());
    expect(links).toHaveLength(4);
    for (const link of links) expect((await app.get(link)).status).toBe(200);
  });

  test.each(PART_KINDS)('is an SVG as large as the part: %s', async (kind) => {
    const answer = await get(`parts/${kind}/template.svg?${CARD}`);
    expect(answer.headers.get('Content-Disposition')).toBe(`attachment; filename="${kind}.svg"`);
    expect(await answer.text()).toMatch(/<g [^>]*id="cut"[^>]*><path d="M/);
  });

  test('is scored where its page says', async () => {
    const svg = await (await get(`parts/base/template.svg?${CARD}`)).text();
    // A base of 11¾ × 3 folded in its middle.
    expect(svg).toContain('width="298.45mm" height="76.2mm"');
    expect(svg).toContain('M149.225 0L149.225 76.2"');
  });

  test('comes back with its page and messages where it can’t be made', async () => {
    for (const query of ['', 'width=x&height=3', `${CARD}&glue=9`]) {
      const answer = await get(`parts/liner/letter.pdf?${query}`);
      expect(answer.status).toBe(422);
      expect(await answer.text()).toContain('aria-invalid="true"');
    }
  });

  test('isn’t here for what is no part, and none is cut of ribbon', async () => {
    expect((await get(`parts/button/letter.pdf?${CARD}`)).status).toBe(404);
    expect((await get(`parts/wrap/letter.pdf?${CARD}&kind=ribbon`)).status).toBe(404);
    expect(linksIn(await (await app.get(`/parts/wrap?${CARD}&kind=ribbon`)).text())).toEqual([]);
  });
});
